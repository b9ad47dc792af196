//! A host for this machine only.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, anyhow};
use lexopt::{Arg, Parser, ValueExt};
use percent_encoding::percent_decode_str;
use tiny_http::{Header, Method, Request, Response, Server, StatusCode};

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

fn serve(site: &Path, port: u16) -> Result<()> {
    let site = site.canonicalize().context("no target/site: build first")?;
    let server = Server::http(("127.0.0.1", port))
        .map_err(|error| anyhow!("cannot use port {port} ({error}): choose another by --port"))?;
    let address = server.server_addr();
    let packed = workspace::packed();
    println!("\nWashpath is at  http://{address}/\nAs one file     {}\nStop with Ctrl-C.", packed.display());
    io::stdout().flush()?;
    for request in server.incoming_requests() {
        // A browser that hangs up early is its own affair.
        let _ = answer(&site, request);
    }
    Ok(())
}

fn answer(site: &Path, request: Request) -> io::Result<()> {
    if !matches!(request.method(), Method::Get | Method::Head) {
        return request.respond(Response::empty(StatusCode(405)));
    }
    let Some(file) = find(site, request.url()) else {
        return request.respond(Response::from_string("not found\n").with_status_code(StatusCode(404)));
    };
    let response = Response::from_data(fs::read(&file)?)
        .with_header(header("content-type", content_type(&file))?)
        // The browser asks again each time: what was built last is what shows.
        .with_header(header("cache-control", "no-cache")?);
    request.respond(response)
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

fn header(name: &str, value: &str) -> io::Result<Header> {
    Header::from_bytes(name, value).map_err(|()| io::Error::other(format!("bad header {name}")))
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
    fn wasm_has_its_own_type() {
        assert_eq!(content_type(Path::new("a/b_bg.wasm")), "application/wasm");
    }
}
