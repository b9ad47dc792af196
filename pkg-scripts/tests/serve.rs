//! The host, asked over a socket by hand.

use std::error::Error;
use std::fs;
use std::io::{self, BufRead, BufReader, Lines, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};
use std::time::Duration;

use flate2::read::GzDecoder;

type Tested = Result<(), Box<dyn Error>>;

/// A running host; it ends with the value.
struct Host {
    process: Child,
    address: String,
    /// What it says, read no further than its address.
    said: Option<Lines<BufReader<ChildStdout>>>,
}

impl Host {
    /// Serves a folder by a shell that first runs `before`.
    fn start(site: &Path, before: &str) -> Result<Host, Box<dyn Error>> {
        let script = format!("{before} exec \"$0\" serve --port 0 --site \"$1\"");
        let mut process = Command::new("sh")
            .args(["-c", &script, env!("CARGO_BIN_EXE_pkg-scripts")])
            .arg(site)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()?;
        let mut lines = BufReader::new(process.stdout.take().ok_or("no output")?).lines();
        loop {
            let line = lines.next().ok_or("the host ended before it said its address")??;
            if let Some((_, address)) = line.split_once("http://") {
                let address = address.trim_end_matches('/').to_owned();
                return Ok(Host { process, address, said: Some(lines) });
            }
        }
    }

    fn connect(&self) -> io::Result<TcpStream> {
        let stream = TcpStream::connect(&self.address)?;
        stream.set_read_timeout(Some(Duration::from_secs(20)))?;
        Ok(stream)
    }

    /// The head in small letters and the body of an answer.
    fn ask(&self, request: &str) -> Result<(String, Vec<u8>), Box<dyn Error>> {
        let mut stream = self.connect()?;
        stream.write_all(request.as_bytes())?;
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer)?;
        let end = answer.windows(4).position(|bytes| bytes == b"\r\n\r\n").ok_or("no head")?;
        Ok((String::from_utf8(answer[..end].to_vec())?.to_lowercase(), answer[end + 4..].to_vec()))
    }

    fn get(&self, path: &str) -> Result<(String, Vec<u8>), Box<dyn Error>> {
        self.ask(&format!("GET {path} HTTP/1.1\r\nhost: here\r\naccept-encoding: gzip, br\r\n\r\n"))
    }

    /// What the process spent of the processor, in hundredths of a second.
    fn spent(&self) -> Result<u64, Box<dyn Error>> {
        let line = fs::read_to_string(format!("/proc/{}/stat", self.process.id()))?;
        let after_name = line.rsplit(')').next().unwrap_or_default();
        let numbers = after_name.split_whitespace().skip(11).take(2).map(str::parse::<u64>);
        Ok(numbers.sum::<Result<u64, _>>()?)
    }

    /// Ends it; what it complained of.
    fn complaints(mut self) -> Result<String, Box<dyn Error>> {
        assert!(self.process.try_wait()?.is_none(), "the host ended by itself");
        self.process.kill()?;
        let mut text = String::new();
        if let Some(mut pipe) = self.process.stderr.take() {
            pipe.read_to_string(&mut text)?;
        }
        Ok(text)
    }
}

impl Drop for Host {
    fn drop(&mut self) {
        drop(self.process.kill());
        drop(self.process.wait());
    }
}

/// A small site below cargo's folder for tests.
fn site(name: &str) -> io::Result<PathBuf> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::create_dir_all(folder.join("js"))?;
    fs::write(folder.join("index.html"), PAGE)?;
    fs::write(folder.join("js/main.js"), SCRIPT)?;
    fs::write(folder.join("letters.woff2"), LETTERS)?;
    Ok(folder)
}

const PAGE: &str = "<!doctype html><title>A page</title>";
const SCRIPT: &str = "export const one = 1;";
const LETTERS: &str = "not really letters";

#[test]
fn files_come_as_they_are_or_as_gzip() -> Tested {
    let host = Host::start(&site("plain")?, "")?;
    let (head, body) = host.ask("GET /js/main.js?version=1 HTTP/1.1\r\nhost: here\r\n\r\n")?;
    assert!(head.starts_with("http/1.1 200 ok\r\n"), "{head}");
    for line in [
        "content-type: text/javascript; charset=utf-8",
        &format!("content-length: {}", SCRIPT.len()),
        "cache-control: no-cache",
        "vary: accept-encoding",
    ] {
        assert!(head.lines().any(|got| got == line), "no {line} in {head}");
    }
    assert_eq!(body, SCRIPT.as_bytes());

    let (head, body) = host.get("/")?;
    assert!(head.contains("content-encoding: gzip") && head.contains("content-type: text/html"), "{head}");
    let mut text = String::new();
    GzDecoder::new(body.as_slice()).read_to_string(&mut text)?;
    assert_eq!(text, PAGE);

    let (head, body) = host.get("/letters.woff2")?;
    assert!(!head.contains("content-encoding"), "{head}");
    assert_eq!(body, LETTERS.as_bytes());
    Ok(())
}

#[test]
fn what_is_not_there_or_not_asked_rightly_is_told() -> Tested {
    let host = Host::start(&site("refused")?, "")?;
    for (request, status) in [
        ("GET /missing HTTP/1.1\r\nhost: here\r\n\r\n", "404 not found"),
        ("GET /../../Cargo.toml HTTP/1.1\r\nhost: here\r\n\r\n", "404 not found"),
        ("GET /js HTTP/1.1\r\nhost: here\r\n\r\n", "404 not found"),
        ("POST / HTTP/1.1\r\nhost: here\r\ncontent-length: 0\r\n\r\n", "405 method not allowed"),
        ("no request\r\n\r\n", "400 bad request"),
    ] {
        let (head, _) = host.ask(request)?;
        assert!(head.starts_with(&format!("http/1.1 {status}")), "{request}: {head}");
    }
    let (head, body) = host.ask("HEAD /js/main.js HTTP/1.1\r\nhost: here\r\n\r\n")?;
    assert!(head.contains(&format!("content-length: {}", SCRIPT.len())) && body.is_empty(), "{head}");
    Ok(())
}

#[test]
fn a_host_whose_words_nobody_reads_serves_on() -> Tested {
    let mut host = Host::start(&site("unread")?, "")?;
    host.said = None;
    let (head, _) = host.get("/")?;
    assert!(head.starts_with("http/1.1 200"), "{head}");
    assert_eq!(host.complaints()?, "");
    Ok(())
}

#[test]
fn idle_connections_do_not_keep_others_waiting() -> Tested {
    let host = Host::start(&site("idle")?, "")?;
    let idle = (0..16).map(|_| host.connect()).collect::<io::Result<Vec<_>>>()?;
    let (head, _) = host.get("/")?;
    assert!(head.starts_with("http/1.1 200"), "{head}");
    drop(idle);
    Ok(())
}

/// More connections than descriptors: the host neither ends nor complains nor spins, and answers once there is room.
#[test]
#[cfg(target_os = "linux")]
fn a_host_without_descriptors_waits_for_some() -> Tested {
    let host = Host::start(&site("few")?, "ulimit -n 24;")?;
    let idle = (0..60).map(|_| host.connect()).collect::<io::Result<Vec<_>>>()?;
    // This one waits behind the others: only a spinning host spends anything meanwhile.
    let before = host.spent()?;
    let mut waiting = host.connect()?;
    waiting.write_all(b"GET / HTTP/1.1\r\nhost: here\r\n\r\n")?;
    waiting.set_read_timeout(Some(Duration::from_millis(500)))?;
    assert!(waiting.read(&mut [0; 1]).is_err(), "there was room after all: the test shows nothing");
    let spent = host.spent()? - before;
    // Half a second in which it did nothing but try again five times; a loop without a pause spends up to 50.
    assert!(spent <= 10, "{spent} hundredths of a second spent on waiting");
    drop(idle);
    waiting.set_read_timeout(Some(Duration::from_secs(20)))?;
    let mut answer = String::new();
    waiting.read_to_string(&mut answer)?;
    assert!(answer.starts_with("HTTP/1.1 200 OK"), "{answer}");
    assert_eq!(host.complaints()?, "");
    Ok(())
}

/// As little memory as it starts with, and more connections than a thread each could be had for.
#[test]
#[cfg(target_os = "linux")]
fn a_host_with_little_memory_serves_on() -> Tested {
    let host = Host::start(&site("small")?, "ulimit -v 300000;")?;
    let idle = (0..300).map(|_| host.connect()).collect::<io::Result<Vec<_>>>()?;
    drop(idle);
    let (head, _) = host.get("/")?;
    assert!(head.starts_with("http/1.1 200"), "{head}");
    assert_eq!(host.complaints()?, "");
    Ok(())
}
