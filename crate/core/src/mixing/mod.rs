//! Paints mixed: by parts, along a path, on a sheet, and what is to be expected of it.

pub(crate) mod doubt;
pub(crate) mod load;
pub(crate) mod mixture;
pub(crate) mod part;
pub(crate) mod partners;
pub(crate) mod path;
pub(crate) mod ratio;
pub(crate) mod recipe;
pub(crate) mod sheet;
pub(crate) mod shift;
