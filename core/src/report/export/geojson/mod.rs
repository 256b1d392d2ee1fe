//! All that is derived from a plan, as GeoJSON (RFC 7946): for geographic information systems.
//!
//! One feature for each thing, its `kind` first among its properties, then its figures with their units in their names:
//!
//! | kind | geometry | what it is |
//! |---|---|---|
//! | `site` | the land the figures count as the site | [`land`] |
//! | `constraint` | land that something holds back, as drawn | [`marks`] |
//! | `block` | along the right-of-way where streets go all round, else the enclosed land | [`land`] |
//! | `land` | buildable land of one enclosed area, with its use | [`land`] |
//! | `lot`, `building` | as laid | [`lots`] |
//! | `segment` | a street, alley or path between intersections | [`streets`] |
//! | `intersection` | where they meet or end, with the rules that count it | [`streets`] |
//! | `front` | a stretch of street that lots front on | [`streets`] |
//! | `walk_shed` | streets within a walk of the center, their hull, and the land beside them | [`walks`] |
//! | `place` | as drawn | [`marks`] |
//!
//! Positions are longitude and latitude of WGS84 with nine decimals, which give every millimeter back; outer rings run
//! counterclockwise and holes clockwise; rings are closed. Areas and lengths are those of the plan's own plane, the ones
//! the figures sum, and not what the degrees come to on some other plane. Numbers in ids are good for this file alone.
//! Words in the file are English and stable, as in plan files; names are the plan's own.
//!
//! Not in it: land of soft areas, which no street divides yet, and base data.

mod land;
mod lots;
mod marks;
mod streets;
mod walks;
mod write;

use crate::exchange::json::Json;
use crate::exchange::stored::Writing;
use crate::plan::projection::OriginFault;
use crate::study::Study;

use write::Features;

/// Everything derived, one feature to a line.
///
/// Cost: a boolean operation for the site and for each block, that of [`Study::street_places`], and the length of the
/// text: about a megabyte for a village of 700 homes.
///
/// # Errors
/// [`OriginFault`] where the plan's origin is no place on Earth.
pub fn geojson(study: &Study) -> Result<String, OriginFault> {
    let mut features = Features::about(study.document().heading.projection()?);
    land::add_site(study, &mut features);
    marks::add_constraints(study, &mut features);
    let block_of = land::add_blocks(study, &mut features);
    land::add_land(study, &block_of, &mut features);
    lots::add_lots(study, &block_of, &mut features);
    streets::add_segments(study, &mut features);
    streets::add_intersections(study, &mut features);
    streets::add_fronts(study, &mut features);
    walks::add_sheds(study, &mut features);
    marks::add_places(study, &mut features);
    Ok(features.done(&about(study)))
}

/// What was exported, beside the features.
fn about(study: &Study) -> Json {
    let document = study.document();
    let held = document.alternatives.get(&study.alternative());
    let mut about = Writing::default();
    about.put("plan", &document.heading.name);
    about.put("about", &document.heading.about);
    about.put_word("alternative", held.map_or("", |held| held.name.as_str()));
    if let Some(scope) = study.scope().in_words(document) {
        about.put_word("scope", &scope);
    }
    about.done()
}

/// A number, or `null` where it can not be worked out.
fn number(value: impl Into<Option<f64>>) -> Json {
    value.into().map_or(Json::Null, Json::Number)
}

/// A whole number.
const fn whole(value: u32) -> Json {
    Json::Integer(value as i64)
}
