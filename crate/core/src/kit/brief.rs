//! Briefs: what a teacher asks of a class that opens their kit.

use crate::error::Error;
use crate::text::limits::counted;
use crate::text::words::{clean, short_line};

/// Longest note, in characters.
pub const LONGEST_BRIEF_NOTE: usize = 280;

/// Longest task, in characters.
pub const LONGEST_TASK: usize = 120;

/// Most tasks of a brief.
pub const MOST_TASKS: usize = 8;

/// A note and tasks that go along with a kit; perhaps empty. Built by [`Brief::new`], so that its limits hold.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Brief {
    note: String,
    tasks: Vec<String>,
}

impl Brief {
    /// A brief of this note and these tasks, in order. Texts are trimmed; control characters become spaces.
    ///
    /// # Errors
    ///
    /// [`Error::TooLong`] for a note longer than [`LONGEST_BRIEF_NOTE`], more
    /// tasks than [`MOST_TASKS`], a task that is empty or longer than
    /// [`LONGEST_TASK`].
    ///
    /// ```
    /// use washpath_core::Brief;
    /// let brief = Brief::new("Bring one brush.\n", &["find three greys"])?;
    /// assert_eq!((brief.note(), brief.tasks().len()), ("Bring one brush.", 1));
    /// assert!(Brief::new("", &[" "]).is_err());
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    pub fn new(note: &str, tasks: &[impl AsRef<str>]) -> Result<Self, Error> {
        counted(tasks.len(), 0..=MOST_TASKS, "tasks", "a kit brings")?;
        let note = short_line(note, "the note to the class", LONGEST_BRIEF_NOTE)?;
        let lines = tasks.iter().map(|task| short_line(task.as_ref(), "a task", LONGEST_TASK));
        let tasks: Vec<String> = lines.collect::<Result<_, _>>()?;
        if tasks.iter().any(String::is_empty) {
            return Err(Error::Missing("a task without words"));
        }
        Ok(Self { note, tasks })
    }

    /// Takes out of its texts what nobody sees; a task of nothing else goes.
    pub(crate) fn clean(&mut self) {
        clean(&mut self.note);
        self.tasks.iter_mut().for_each(clean);
        self.tasks.retain(|task| !task.is_empty());
    }

    /// The note, perhaps empty.
    #[must_use]
    pub fn note(&self) -> &str {
        &self.note
    }

    /// The tasks, in order; none is empty.
    #[must_use]
    pub fn tasks(&self) -> &[String] {
        &self.tasks
    }

    /// Whether it says nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.note.is_empty() && self.tasks.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_are_named() {
        let error = |note: &str, tasks: &[&str]| Brief::new(note, tasks).unwrap_err().to_string();
        assert!(Brief::new(&"é".repeat(280), &["水".repeat(120)]).is_ok());
        assert_eq!(error(&"é".repeat(281), &[]), "the note to the class is longer than 280 characters");
        assert_eq!(error("", &["x"; 9]), "9 tasks: a kit brings at most 8");
        assert_eq!(error("", &[&"x".repeat(121)]), "a task is longer than 120 characters");
        assert_eq!(error("", &["one", " \n"]), "a task without words");
        assert!(Brief::new(" \t", &[] as &[&str]).unwrap().is_empty());
    }
}
