//! Glue between core and page.
