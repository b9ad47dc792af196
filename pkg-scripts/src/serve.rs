//! A host for this machine only.
//!
//! One answer a connection, one thread a connection: browsers open some ahead
//! and leave them idle, on which a pool of threads runs dry.

use std::fs;
use std::io::{self, BufRead, BufReader, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::thread;
use std::time::Duration;

use anyhow::{Context, Result};
use lexopt::{Arg, Parser, ValueExt};
use percent_encoding::percent_decode_str;

use crate::{Command, build, pack, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "serve",
    summary: "build everything and open it to the browsers of this machine",
    help: "
  --port N     the port, 8017 if not said; 0 takes a free one
  --no-build   serve target/site as it is

Adds what rustc lacks, builds target/site and target/washpath.html, then serves
the site on 127.0.0.1 until it is stopped.
",
    run,
};

fn run(words: &[String]) -> Result<()> {
    let mut port = 8017u16;
    let mut fresh = true;
    let mut words = Parser::from_args(words);
    while let Some(word) = words.next()? {
        match word {
            Arg::Long("port") => port = words.value()?.parse()?,
            Arg::Long("no-build") => fresh = false,
            _ => return Err(word.unexpected().into()),
        }
    }
    if fresh {
        build::build()?;
        pack::pack()?;
    }
    serve(&workspace::site(), port)
}

/// Longest head of a request that is read, in bytes.
const LONGEST_HEAD: u64 = 16_384;

/// How long a connection may stay idle.
const PATIENCE: Duration = Duration::from_secs(60);

fn serve(site: &Path, port: u16) -> Result<()> {
    let site = site.canonicalize().context("no target/site: build first")?;
    let listener = TcpListener::bind(("127.0.0.1", port))
        .with_context(|| format!("cannot use port {port}: choose another by --port"))?;
    let address = listener.local_addr()?;
    let packed = workspace::packed();
    println!("\nWashpath is at  http://{address}/\nAs one file     {}\nStop with Ctrl-C.", packed.display());
    io::stdout().flush()?;
    serve_on(&site, &listener);
    Ok(())
}

fn serve_on(site: &Path, listener: &TcpListener) {
    thread::scope(|scope| {
        for stream in listener.incoming().flatten() {
            // A browser that hangs up early is its own affair.
            scope.spawn(|| drop(answer(site, stream)));
        }
    });
}

fn answer(site: &Path, mut stream: TcpStream) -> io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let mut first = None;
    for line in BufReader::new((&stream).take(LONGEST_HEAD)).lines() {
        let line = line?;
        if line.is_empty() {
            let response = respond(site, first.as_deref().unwrap_or_default())?;
            return stream.write_all(&response);
        }
        first.get_or_insert(line);
    }
    Ok(())
}

/// The whole response to a request's first line.
fn respond(site: &Path, request: &str) -> io::Result<Vec<u8>> {
    let mut words = request.split(' ');
    let (method, url) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    let (status, kind, body) = match (method, find(site, url)) {
        ("GET" | "HEAD", Some(file)) => ("200 OK", content_type(&file), fs::read(file)?),
        ("GET" | "HEAD", None) => ("404 Not Found", "text/plain", b"not found\n".to_vec()),
        _ => ("405 Method Not Allowed", "text/plain", b"only GET and HEAD\n".to_vec()),
    };
    let length = body.len();
    // "no-cache": the browser asks again each time, so what was built last is what shows.
    let head = format!(
        "HTTP/1.1 {status}\r\ncontent-type: {kind}\r\ncontent-length: {length}\r\n\
         cache-control: no-cache\r\nconnection: close\r\n\r\n"
    );
    let body = if method == "HEAD" { Vec::new() } else { body };
    Ok([head.into_bytes(), body].concat())
}

/// The file an address means; none outside the site, whatever the address says.
fn find(site: &Path, url: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?;
    let path = percent_decode_str(path).decode_utf8().ok()?;
    let mut file = site.join(path.trim_start_matches('/'));
    if file.is_dir() {
        file.push("index.html");
    }
    // Resolves "..", and links too.
    let file = file.canonicalize().ok()?;
    (file.starts_with(site) && file.is_file()).then_some(file)
}

fn content_type(file: &Path) -> &'static str {
    match file.extension().and_then(|extension| extension.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        // Without this type the browser will not compile while it loads.
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("woff2") => "font/woff2",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_outside_the_site_is_found() {
        let site = workspace::root().join("pkg-scripts/src").canonicalize().unwrap();
        assert_eq!(find(&site, "/main.rs?x=1"), Some(site.join("main.rs")));
        for url in
            ["/../Cargo.toml", "/%2e%2e/Cargo.toml", "/..%2fCargo.toml", "//etc/passwd", "/%2fetc/passwd"]
        {
            assert_eq!(find(&site, url), None, "{url}");
        }
        assert_eq!(find(&site, "/"), None, "no index.html here");
        assert_eq!(find(&site, "/%ff"), None, "not UTF-8");
    }

    #[test]
    fn responses_have_a_type_a_length_and_a_fresh_body() {
        let site = workspace::root().join(".ci").canonicalize().unwrap();
        let response = |request| String::from_utf8(respond(&site, request).unwrap()).unwrap();
        let script = fs::read_to_string(site.join("run")).unwrap();
        let got = response("GET /run HTTP/1.1");
        assert!(got.starts_with("HTTP/1.1 200 OK\r\n") && got.ends_with(&format!("\r\n\r\n{script}")));
        assert!(got.contains(&format!("content-length: {}\r\n", script.len())));
        assert!(got.contains("cache-control: no-cache\r\n"));
        assert!(response("HEAD /run HTTP/1.1").ends_with("\r\n\r\n"));
        assert!(response("GET /missing HTTP/1.1").starts_with("HTTP/1.1 404 "));
        assert!(response("POST /run HTTP/1.1").starts_with("HTTP/1.1 405 "));
        assert!(response("").starts_with("HTTP/1.1 405 "));
    }

    #[test]
    fn a_server_answers_while_idle_connections_are_held() {
        let site = workspace::root().join(".ci").canonicalize().unwrap();
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap();
        thread::spawn(move || serve_on(&site, &listener));
        let _idle: Vec<_> = (0..16).map(|_| TcpStream::connect(address).unwrap()).collect();
        let mut stream = TcpStream::connect(address).unwrap();
        stream.set_read_timeout(Some(Duration::from_secs(10))).unwrap();
        stream.write_all(b"GET /run HTTP/1.1\r\nhost: here\r\n\r\n").unwrap();
        let mut got = String::new();
        stream.read_to_string(&mut got).unwrap();
        assert!(got.starts_with("HTTP/1.1 200 OK"), "{got}");
    }

    #[test]
    fn wasm_has_its_own_type() {
        assert_eq!(content_type(Path::new("a/b_bg.wasm")), "application/wasm");
    }
}
