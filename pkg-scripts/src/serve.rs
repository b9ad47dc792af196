//! A host for this machine only.
//!
//! One thread, one answer a connection. Descriptors and memory may run out:
//! then what comes waits for what is there to end.

use std::convert::Infallible;
use std::fs;
use std::io::{self, ErrorKind, Read, Write};
use std::net;
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::sync::Arc;
use std::time::Duration;

use anyhow::{Context, Result};
use flate2::Compression;
use flate2::bufread::GzEncoder;
use http_body_util::Full;
use hyper::body::Bytes;
use hyper::header::{
    ACCEPT_ENCODING, ALLOW, CACHE_CONTROL, CONNECTION, CONTENT_ENCODING, CONTENT_TYPE, HeaderMap,
    HeaderValue, VARY,
};
use hyper::server::conn::http1;
use hyper::service::service_fn;
use hyper::{Method, Request, Response, StatusCode};
use hyper_util::rt::TokioIo;
use lexopt::{Arg, Parser, ValueExt};
use percent_encoding::percent_decode_str;
use tokio::net::{TcpListener, TcpStream};
use tokio::runtime;
use tokio::sync::Semaphore;
use tokio::task::{self, LocalSet};
use tokio::time;

use crate::watch::{self, Changes};
use crate::{Command, build, pack, page, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "serve",
    summary: "build everything and open it to the browsers of this machine",
    help: "
  --port N     the port, 8017 if not said; 0 takes a free one
  --no-build   serve what was built last
  --site PATH  serve that folder as it is
  --watch      serve the sources as they are, at port 8018 if not said

Adds what rustc lacks, builds target/site and target/washpath.html, then serves
the site on 127.0.0.1 until it is stopped. With --watch nothing is bundled: pages
load anew once a script changed, and once the core is compiled if that changed.
",
    run,
};

fn run(words: &[String]) -> Result<()> {
    let mut port = None;
    let (mut fresh, mut watching) = (true, false);
    let mut site = workspace::site();
    let mut words = Parser::from_args(words);
    while let Some(word) = words.next()? {
        match word {
            Arg::Long("port") => port = Some(words.value()?.parse()?),
            Arg::Long("watch") => watching = true,
            Arg::Long("no-build") => fresh = false,
            Arg::Long("site") => {
                site = words.value()?.into();
                fresh = false;
            }
            _ => return Err(word.unexpected().into()),
        }
    }
    if watching {
        if fresh {
            watch::compile()?;
        }
        let (folders, changes) = watch::start()?;
        return serve(folders, Some(changes), port.unwrap_or(WATCH_PORT));
    }
    if fresh {
        build::build()?;
        pack::pack()?;
    }
    serve(vec![site], None, port.unwrap_or(PORT))
}

/// The ports if none is said. Sources have their own, so that no browser shows them what it keeps of the built page.
const PORT: u16 = 8017;
const WATCH_PORT: u16 = 8018;

/// What is served: files of some folders, the first that has one, and news of their changes.
struct Host {
    folders: Vec<PathBuf>,
    changes: Option<Changes>,
}

/// How long a connection may take, idle ones too: browsers open some ahead.
const PATIENCE: Duration = Duration::from_secs(60);

/// How long to wait where the machine has no descriptor or no memory left.
const PAUSE: Duration = Duration::from_millis(100);

/// Connections at a time; more wait to be accepted. A browser opens six.
const CONNECTIONS: usize = 256;

fn serve(folders: Vec<PathBuf>, changes: Option<Changes>, port: u16) -> Result<()> {
    let absolute = |folder: PathBuf| {
        folder.canonicalize().with_context(|| format!("no {}: build first", folder.display()))
    };
    let folders = folders.into_iter().map(absolute).collect::<Result<_>>()?;
    let host = Host { folders, changes };
    let listener = net::TcpListener::bind(("127.0.0.1", port))
        .with_context(|| format!("cannot use port {port}: choose another by --port"))?;
    listener.set_nonblocking(true)?;
    let address = listener.local_addr()?;
    let runtime = runtime::Builder::new_current_thread().enable_io().enable_time().build()?;
    let packed = match host.changes {
        Some(_) => String::new(),
        None => format!("As one file     {}\n", workspace::packed().display()),
    };
    let words = format!("\nWashpath is at  http://{address}/\n{packed}Stop with Ctrl-C.\n");
    // Whoever started it may have stopped reading.
    drop(io::stdout().write_all(words.as_bytes()));
    LocalSet::new().block_on(&runtime, serve_on(host, listener))
}

async fn serve_on(host: Host, listener: net::TcpListener) -> Result<()> {
    let listener = TcpListener::from_std(listener)?;
    let host = Rc::new(host);
    let places = Arc::new(Semaphore::new(CONNECTIONS));
    loop {
        let place = Arc::clone(&places).acquire_owned().await?;
        match listener.accept().await {
            Ok((stream, _)) => {
                let host = Rc::clone(&host);
                task::spawn_local(async move {
                    // A browser that hangs up early or stays too long is its own affair.
                    drop(time::timeout(PATIENCE, answer(&host, stream)).await);
                    drop(place);
                });
            }
            // It would fail at once again, and again.
            Err(_) => time::sleep(PAUSE).await,
        }
    }
}

async fn answer(host: &Host, stream: TcpStream) -> hyper::Result<()> {
    let service = service_fn(async |request| Ok::<_, Infallible>(respond(host, &request).await));
    http1::Builder::new().serve_connection(TokioIo::new(stream), service).await
}

type Answer = Response<Full<Bytes>>;

/// Answers a request by its head; its body, if any, is not read.
async fn respond<B>(host: &Host, request: &Request<B>) -> Answer {
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        let mut answer = plain(StatusCode::METHOD_NOT_ALLOWED, "only GET and HEAD\n");
        answer.headers_mut().insert(ALLOW, HeaderValue::from_static("GET, HEAD"));
        return answer;
    }
    let (path, gzip) = (request.uri().path(), takes_gzip(request.headers()));
    if let Some(changes) = &host.changes {
        match path {
            watch::NEWS => {
                return found("text/plain", changes.after(request.uri().query()).await.into(), false);
            }
            watch::SCRIPT => return found("text/javascript; charset=utf-8", watch::LISTENER.into(), gzip),
            _ => {}
        }
    }
    let Some(file) = host.folders.iter().find_map(|folder| find(folder, path)) else {
        return plain(StatusCode::NOT_FOUND, "not found\n");
    };
    match read(&file).await {
        Ok(mut body) => {
            if host.changes.is_some() && file.ends_with(page::INDEX) {
                body.extend_from_slice(watch::TAG.as_bytes());
            }
            found(&content_type(&file), body, gzip)
        }
        Err(error) if error.kind() == ErrorKind::NotFound => plain(StatusCode::NOT_FOUND, "not found\n"),
        Err(_) => plain(StatusCode::INTERNAL_SERVER_ERROR, "cannot be read\n"),
    }
}

/// A file's bytes, once the machine has a descriptor and the memory for them; the connection's time bounds the wait.
async fn read(file: &Path) -> io::Result<Vec<u8>> {
    loop {
        match fs::read(file) {
            Err(error) if !matches!(error.kind(), ErrorKind::NotFound | ErrorKind::PermissionDenied) => {
                time::sleep(PAUSE).await;
            }
            done => return done,
        }
    }
}

fn plain(status: StatusCode, words: &'static str) -> Answer {
    let mut answer = found("text/plain; charset=utf-8", words.into(), false);
    *answer.status_mut() = status;
    answer
}

fn found(kind: &str, body: Vec<u8>, gzip: bool) -> Answer {
    let mut head = HeaderMap::new();
    let octets = HeaderValue::from_static("application/octet-stream");
    head.insert(CONTENT_TYPE, HeaderValue::from_str(kind).unwrap_or(octets));
    // The browser asks again each time, so what was built last is what shows.
    head.insert(CACHE_CONTROL, HeaderValue::from_static("no-cache"));
    head.insert(CONNECTION, HeaderValue::from_static("close"));
    let mut body = body;
    if shrinks(kind) {
        head.insert(VARY, HeaderValue::from_static("accept-encoding"));
        if let Some(packed) = gzip.then(|| packed(&body)).flatten() {
            head.insert(CONTENT_ENCODING, HeaderValue::from_static("gzip"));
            body = packed;
        }
    }
    let mut answer = Response::new(Full::new(body.into()));
    *answer.headers_mut() = head;
    answer
}

fn packed(body: &[u8]) -> Option<Vec<u8>> {
    let mut packed = Vec::new();
    GzEncoder::new(body, Compression::default()).read_to_end(&mut packed).ok()?;
    Some(packed)
}

/// Letters and pictures but for drawings are packed already.
fn shrinks(kind: &str) -> bool {
    kind.starts_with("text/")
        || ["application/wasm", "application/json", "application/manifest+json", "image/svg+xml"]
            .contains(&kind)
}

/// "gzip" or "*" among what a client takes, unless its weight is 0.
fn takes_gzip(head: &HeaderMap) -> bool {
    let coded = head.get_all(ACCEPT_ENCODING).iter().filter_map(|value| value.to_str().ok());
    coded.flat_map(|value| value.split(',')).any(|coding| {
        let mut words = coding.split(';').map(str::trim);
        let name = words.next().unwrap_or_default();
        let weight = words.find_map(|word| word.strip_prefix("q=")).map_or(Ok(1.0), str::parse::<f32>);
        (name == "*" || name.eq_ignore_ascii_case("gzip")) && weight.is_ok_and(|weight| weight > 0.0)
    })
}

/// The file a path means; none outside the site, whatever the path says.
fn find(site: &Path, path: &str) -> Option<PathBuf> {
    let path = percent_decode_str(path).decode_utf8().ok()?;
    let mut file = site.join(path.trim_start_matches('/'));
    if file.is_dir() {
        file.push("index.html");
    }
    // Resolves "..", and links too.
    let file = file.canonicalize().ok()?;
    (file.starts_with(site) && file.is_file()).then_some(file)
}

/// By the file's name. WebAssembly needs its own, or the browser will not compile while it loads.
fn content_type(file: &Path) -> String {
    let kind = mime_guess::from_path(file).first_or_octet_stream();
    if kind.type_() == mime_guess::mime::TEXT { format!("{kind}; charset=utf-8") } else { kind.to_string() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_outside_the_site_is_found() {
        let site = workspace::root().join("pkg-scripts/src").canonicalize().unwrap();
        assert_eq!(find(&site, "/main.rs"), Some(site.join("main.rs")));
        for url in
            ["/../Cargo.toml", "/%2e%2e/Cargo.toml", "/..%2fCargo.toml", "//etc/passwd", "/%2fetc/passwd"]
        {
            assert_eq!(find(&site, url), None, "{url}");
        }
        assert_eq!(find(&site, "/"), None, "no index.html here");
        assert_eq!(find(&site, "/%ff"), None, "not UTF-8");
    }

    #[test]
    fn types_are_what_browsers_insist_on() {
        for (name, kind) in [
            ("index.html", "text/html; charset=utf-8"),
            ("js/main.js", "text/javascript; charset=utf-8"),
            ("style.css", "text/css; charset=utf-8"),
            ("a/b_bg.wasm", "application/wasm"),
            ("kit.json", "application/json"),
            ("manifest.webmanifest", "application/manifest+json"),
            ("icon.svg", "image/svg+xml"),
            ("letters.woff2", "font/woff2"),
            ("LICENCE", "application/octet-stream"),
        ] {
            assert_eq!(content_type(Path::new(name)), kind, "{name}");
        }
    }

    #[test]
    fn gzip_is_taken_where_it_is_named_and_not_refused() {
        let takes = |value| {
            let mut head = HeaderMap::new();
            head.insert(ACCEPT_ENCODING, HeaderValue::from_static(value));
            takes_gzip(&head)
        };
        for value in ["gzip", "br, GZIP;q=0.5", "*", "gzip, deflate, br, zstd"] {
            assert!(takes(value), "{value}");
        }
        for value in ["", "br", "gzip;q=0", "gzip; q=0.0", "gzip;q=x", "xgzip"] {
            assert!(!takes(value), "{value}");
        }
        assert!(!takes_gzip(&HeaderMap::new()));
    }
}
