//! The page's sources as they are, and news of their changes.

use std::path::PathBuf;
use std::sync::mpsc::{self, Receiver};
use std::time::Duration;
use std::{fs, thread};

use anyhow::Result;
use notify::{EventKind, RecursiveMode, Watcher};
use tokio::sync::watch;
use tokio::time;

use crate::{build, workspace};

/// The address that answers the number of changes once it is another than the one asked with.
pub(crate) const NEWS: &str = "/changes";

/// The address of the script that listens to it.
pub(crate) const SCRIPT: &str = "/changes.js";

/// The script itself.
pub(crate) const LISTENER: &str = include_str!("changes.js");

/// What makes a page listen; browsers take it for the end of the body.
pub(crate) const TAG: &str = "<script type=\"module\" src=\"./changes.js\"></script>\n";

/// How many changes there were so far.
pub(crate) struct Changes(watch::Receiver<u64>);

/// How long a question waits before it is answered without news: less than the host keeps a connection.
const LONGEST_WAIT: Duration = Duration::from_secs(30);

impl Changes {
    /// The number of changes: at once if it is not the one `known`, else after the next.
    pub(crate) async fn after(&self, known: Option<&str>) -> String {
        let mut changes = self.0.clone();
        let is_news = |count: &u64| known != Some(count.to_string().as_str());
        drop(time::timeout(LONGEST_WAIT, changes.wait_for(is_news)).await);
        changes.borrow().to_string()
    }
}

/// Begins to watch. Answers the folders that make up the page, the first before the next.
pub(crate) fn start() -> Result<(Vec<PathBuf>, Changes)> {
    let (count, changes) = watch::channel(0);
    let (tell, events) = mpsc::channel();
    let mut watcher = notify::recommended_watcher(tell)?;
    let crates = workspace::root().join("crate");
    for folder in [&workspace::www(), &crates] {
        watcher.watch(folder, RecursiveMode::Recursive)?;
    }
    thread::spawn(move || {
        // It watches for as long as it is kept.
        let _watcher = watcher;
        while let Some(paths) = next(&events) {
            if paths.iter().any(|path| path.starts_with(&crates))
                && let Err(error) = compile()
            {
                eprintln!("error: {error:#}");
                continue;
            }
            count.send_modify(|count| *count += 1);
        }
    });
    Ok((vec![workspace::www(), workspace::sources()], Changes(changes)))
}

/// An editor writes in several steps: what follows within this time belongs to one change.
const REST: Duration = Duration::from_millis(50);

/// The paths of the next change; nothing once nobody watches.
fn next(events: &Receiver<notify::Result<notify::Event>>) -> Option<Vec<PathBuf>> {
    loop {
        let mut paths = changed(events.recv().ok()?);
        while let Ok(event) = events.recv_timeout(REST) {
            paths.extend(changed(event));
        }
        if !paths.is_empty() {
            return Some(paths);
        }
    }
}

/// What an event changed; nothing if somebody only read.
fn changed(event: notify::Result<notify::Event>) -> Vec<PathBuf> {
    match event {
        Ok(event) if !matches!(event.kind, EventKind::Access(_)) => event.paths,
        _ => Vec::new(),
    }
}

/// One core answers both the page and its worker, as one is compiled sooner than two.
pub(crate) fn compile() -> Result<()> {
    let wasm = build::whole(&workspace::sources())?;
    let other = wasm.with_file_name(format!("{}_bg.wasm", build::HALVES[1]));
    fs::copy(&wasm, other)?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use notify::Event;
    use notify::event::{AccessKind, ModifyKind};

    use super::*;

    #[test]
    fn steps_of_one_change_are_told_once_and_reading_is_none() {
        let (tell, events) = mpsc::channel();
        let event = |kind, path| Ok(Event::new(kind).add_path(PathBuf::from(path)));
        tell.send(event(EventKind::Access(AccessKind::Any), "read")).unwrap();
        for path in ["a", "b"] {
            tell.send(event(EventKind::Modify(ModifyKind::Any), path)).unwrap();
        }
        drop(tell);
        assert_eq!(next(&events), Some(vec![PathBuf::from("a"), PathBuf::from("b")]));
        assert_eq!(next(&events), None);
    }

    #[test]
    fn news_waits_for_the_next_change() {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_time().build().unwrap();
        let (count, changes) = watch::channel(4);
        let changes = Changes(changes);
        runtime.block_on(async {
            assert_eq!(changes.after(None).await, "4");
            assert_eq!(changes.after(Some("3")).await, "4");
            thread::spawn(move || count.send_modify(|count| *count += 1));
            assert_eq!(changes.after(Some("4")).await, "5");
        });
    }
}
