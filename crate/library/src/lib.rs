//! Derives the built-in shelf.
