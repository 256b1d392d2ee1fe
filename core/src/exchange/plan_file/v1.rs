//! Plan files of version 1.

mod read;
mod write;

pub(super) use read::read;
pub(super) use write::write;
pub(crate) use write::write_position;

/// Word of the site's feature.
const SITE: &str = "site";

/// Property that says how the points of a place belong together, where the geometry alone could mislead.
const FOOTPRINT: &str = "footprint";

/// Property of an outline that was drawn clockwise.
const CLOCKWISE: &str = "clockwise";
