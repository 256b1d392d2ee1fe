//! What OpenStreetMap's tags mean for a plan: one table, to be edited.
//!
//! A row is looked for from the top: the first whose key and value a feature has (`*` is any value), and whose second
//! condition it meets, says what the feature is. So narrower rows stand above wider ones. Rows that say
//! `Nothing` keep what would be counted twice: a sidewalk mapped beside its street is part of that street's
//! section, a driveway is part of a lot.
//!
//! The keys and values are those of OpenStreetMap's wiki ("Map features"), from memory; what they become is common
//! practice, no source. To change what a tag becomes, change its row; to read another tag, add one. The same table is
//! used for features of other formats that carry such tags.

use crate::base::{ConstraintKind, PlaceKind, Street, StreetOwner, StreetRole, Suggestion};

/// A row of the table.
struct Row {
    key: &'static str,
    value: &'static str,
    also: Option<(&'static str, &'static str)>,
    meaning: Meaning,
}

/// What a row says.
#[derive(Clone, Copy)]
enum Meaning {
    /// A street: its role and a street section of the default palette.
    Street(StreetRole, &'static str),
    Place(PlaceKind),
    Land(ConstraintKind),
    Barrier,
    Building,
    Nothing,
}

use Meaning::{Barrier, Building, Land, Nothing, Place};
use StreetRole::{Alley, Lane, NeighborhoodStreet, Path, Thoroughfare};

const fn row(key: &'static str, value: &'static str, meaning: Meaning) -> Row {
    Row {
        key,
        value,
        also: None,
        meaning,
    }
}

const fn street(value: &'static str, role: StreetRole, section: &'static str) -> Row {
    row("highway", value, Meaning::Street(role, section))
}

const fn when(key: &'static str, value: &'static str, also: (&'static str, &'static str), meaning: Meaning) -> Row {
    Row {
        key,
        value,
        also: Some(also),
        meaning,
    }
}

const TABLE: &[Row] = &[
    // Places that carry a tag of streets as well come before the streets.
    row("highway", "bus_stop", Place(PlaceKind::TransitStop)),
    row("public_transport", "platform", Place(PlaceKind::TransitStop)),
    row("public_transport", "station", Place(PlaceKind::TransitStop)),
    row("railway", "station", Place(PlaceKind::TransitStop)),
    row("railway", "halt", Place(PlaceKind::TransitStop)),
    row("railway", "tram_stop", Place(PlaceKind::TransitStop)),
    // Parts of a street's section, and of lots.
    when("highway", "footway", ("footway", "sidewalk"), Nothing),
    when("highway", "footway", ("footway", "crossing"), Nothing),
    when("highway", "footway", ("footway", "traffic_island"), Nothing),
    when("highway", "cycleway", ("cycleway", "crossing"), Nothing),
    when("highway", "service", ("service", "driveway"), Nothing),
    when("highway", "service", ("service", "parking_aisle"), Nothing),
    when("highway", "service", ("service", "drive-through"), Nothing),
    // Streets.
    street("motorway", Thoroughfare, "state-highway"),
    street("motorway_link", Thoroughfare, "state-highway"),
    street("trunk", Thoroughfare, "state-highway"),
    street("trunk_link", Thoroughfare, "state-highway"),
    street("primary", Thoroughfare, "arterial"),
    street("primary_link", Thoroughfare, "arterial"),
    street("secondary", Thoroughfare, "collector"),
    street("secondary_link", Thoroughfare, "collector"),
    street("tertiary", NeighborhoodStreet, "collector"),
    street("tertiary_link", NeighborhoodStreet, "collector"),
    street("unclassified", NeighborhoodStreet, "neighborhood-street"),
    street("residential", NeighborhoodStreet, "neighborhood-street"),
    street("road", NeighborhoodStreet, "neighborhood-street"),
    street("busway", NeighborhoodStreet, "neighborhood-street"),
    street("living_street", Lane, "lane"),
    when(
        "highway",
        "service",
        ("service", "alley"),
        Meaning::Street(Alley, "alley"),
    ),
    street("service", Lane, "lane"),
    street("pedestrian", Path, "path-homes"),
    street("footway", Path, "path"),
    street("path", Path, "path"),
    street("cycleway", Path, "path"),
    street("bridleway", Path, "path"),
    street("steps", Path, "path"),
    street("track", Path, "path"),
    // Places.
    row("amenity", "school", Place(PlaceKind::School)),
    row("amenity", "kindergarten", Place(PlaceKind::School)),
    row("amenity", "clinic", Place(PlaceKind::Clinic)),
    row("amenity", "doctors", Place(PlaceKind::Clinic)),
    row("amenity", "hospital", Place(PlaceKind::Clinic)),
    row("healthcare", "clinic", Place(PlaceKind::Clinic)),
    row("healthcare", "doctor", Place(PlaceKind::Clinic)),
    row("healthcare", "centre", Place(PlaceKind::Clinic)),
    row("amenity", "townhall", Place(PlaceKind::CommunityHall)),
    row("amenity", "community_centre", Place(PlaceKind::CommunityHall)),
    row("amenity", "social_centre", Place(PlaceKind::CommunityHall)),
    row("amenity", "library", Place(PlaceKind::CommunityHall)),
    row("amenity", "marketplace", Place(PlaceKind::Shop)),
    row("amenity", "pharmacy", Place(PlaceKind::Shop)),
    row("shop", "no", Nothing),
    row("shop", "vacant", Nothing),
    row("shop", "*", Place(PlaceKind::Shop)),
    row("leisure", "park", Place(PlaceKind::Park)),
    row("leisure", "playground", Place(PlaceKind::Park)),
    row("place", "square", Place(PlaceKind::Park)),
    // Land.
    row("natural", "water", Land(ConstraintKind::Water)),
    row("waterway", "riverbank", Land(ConstraintKind::Water)),
    row("landuse", "basin", Land(ConstraintKind::Water)),
    row("landuse", "reservoir", Land(ConstraintKind::Water)),
    row("natural", "wetland", Land(ConstraintKind::Wetland)),
    row("leisure", "nature_reserve", Land(ConstraintKind::Conservation)),
    row("boundary", "protected_area", Land(ConstraintKind::Conservation)),
    // Barriers.
    when("railway", "rail", ("tunnel", "yes"), Nothing),
    row("railway", "rail", Barrier),
    row("railway", "light_rail", Barrier),
    row("waterway", "river", Barrier),
    row("waterway", "canal", Barrier),
    row("waterway", "stream", Barrier),
    row("barrier", "wall", Barrier),
    row("barrier", "fence", Barrier),
    row("barrier", "city_wall", Barrier),
    row("barrier", "retaining_wall", Barrier),
    // Texts of a drawing, so that they are a kind of their own.
    row("kind", "TEXT", Nothing),
    // Buildings last: a school's building is a school.
    row("building", "no", Nothing),
    row("building", "*", Building),
];

/// Tags as they come.
pub type Tags = [(String, String)];

fn value<'a>(tags: &'a Tags, key: &str) -> Option<&'a str> {
    tags.iter()
        .find(|(name, _)| name == key)
        .map(|(_, value)| value.as_str())
}

fn has(tags: &Tags, key: &str, wanted: &str) -> bool {
    value(tags, key).is_some_and(|value| wanted == "*" && !value.is_empty() || value == wanted)
}

fn row_for(tags: &Tags) -> Option<&'static Row> {
    TABLE
        .iter()
        .find(|row| has(tags, row.key, row.value) && row.also.is_none_or(|(key, value)| has(tags, key, value)))
}

/// The tag by which a feature with these tags has its row of the table: key and value. Features of one such tag can be
/// given another meaning together.
#[must_use]
pub fn row_of(tags: &Tags) -> Option<(&str, &str)> {
    let key = row_for(tags)?.key;
    Some((key, value(tags, key)?))
}

/// Names of columns that say what kind of thing a row of a table is. Common practice, no source.
const CATEGORIES: [&str; 5] = ["category", "type", "kind", "class", "use"];

/// What rows of these categories are. Common practice, no source.
const OF_CATEGORY: [(&str, PlaceKind); 20] = [
    ("school", PlaceKind::School),
    ("elementary school", PlaceKind::School),
    ("kindergarten", PlaceKind::School),
    ("library", PlaceKind::CommunityHall),
    ("community center", PlaceKind::CommunityHall),
    ("community centre", PlaceKind::CommunityHall),
    ("community hall", PlaceKind::CommunityHall),
    ("park", PlaceKind::Park),
    ("playground", PlaceKind::Park),
    ("square", PlaceKind::Park),
    ("clinic", PlaceKind::Clinic),
    ("doctor", PlaceKind::Clinic),
    ("hospital", PlaceKind::Clinic),
    ("shop", PlaceKind::Shop),
    ("store", PlaceKind::Shop),
    ("grocery", PlaceKind::Shop),
    ("supermarket", PlaceKind::Shop),
    ("pharmacy", PlaceKind::Shop),
    ("bus stop", PlaceKind::TransitStop),
    ("transit stop", PlaceKind::TransitStop),
];

/// The column and value that say what kind of thing a row of a table is.
#[must_use]
pub fn category_of(tags: &Tags) -> Option<(&str, &str)> {
    CATEGORIES.iter().find_map(|wanted| {
        let found = tags.iter().find(|(name, _)| name.eq_ignore_ascii_case(wanted));
        found.map(|(name, value)| (name.as_str(), value.as_str()))
    })
}

/// What a row of a table may become by its category.
#[must_use]
pub fn suggestion_by_category(tags: &Tags) -> Option<Suggestion> {
    let (_, category) = category_of(tags)?;
    let category = category.trim();
    let known = OF_CATEGORY
        .iter()
        .find(|(known, _)| known.eq_ignore_ascii_case(category));
    known.map(|(_, place)| Suggestion::Place { place: *place })
}

/// What a feature with these tags may become; `None` where the table has no row for it or leaves it out.
#[must_use]
pub fn suggestion(tags: &Tags) -> Option<Suggestion> {
    Some(match row_for(tags)?.meaning {
        Meaning::Street(role, section) => Suggestion::Street(Box::new(street_of(tags, role, section))),
        Place(place) => Suggestion::Place { place },
        Land(constraint) => Suggestion::Constraint { constraint },
        Barrier => Suggestion::Barrier,
        Building => Suggestion::Building,
        Nothing => return None,
    })
}

/// The layer a feature of OpenStreetMap goes to.
#[must_use]
pub fn layer(suggested: &Suggestion) -> &'static str {
    match suggested {
        Suggestion::Street(_) => "streets",
        Suggestion::Place { .. } => "places",
        Suggestion::Constraint { .. } => "constraints",
        Suggestion::Barrier => "barriers",
        Suggestion::Building => "buildings",
        Suggestion::Contour | Suggestion::Note | Suggestion::Unknown => "other",
    }
}

/// Whether a closed way with these tags is an area: all but streets and barriers are, and those that say so.
#[must_use]
pub fn is_area(tags: &Tags, suggested: &Suggestion) -> bool {
    match suggested {
        Suggestion::Street(_) | Suggestion::Barrier => has(tags, "area", "yes"),
        _ => true,
    }
}

fn street_of(tags: &Tags, role: StreetRole, section: &'static str) -> Street {
    let is_private = ["private", "no"].iter().any(|value| has(tags, "access", value));
    let owner = if section == "state-highway" {
        StreetOwner::State
    } else if is_private {
        StreetOwner::Private
    } else {
        StreetOwner::Town
    };
    let is_above = value(tags, "bridge").is_some_and(|value| value != "no");
    let is_below = value(tags, "tunnel").is_some_and(|value| value != "no");
    let named_level = value(tags, "layer").and_then(|text| text.parse::<i8>().ok());
    let usual_level = i8::from(is_above) - i8::from(is_below);
    Street {
        name: value(tags, "name").unwrap_or_default().to_owned(),
        role,
        section,
        owner,
        status: "existing",
        level: named_level.filter(|level| level.abs() <= 5).unwrap_or(usual_level),
        width_m: value(tags, "width").and_then(length_m),
        speed_km_h: value(tags, "maxspeed").and_then(speed_km_h),
        lanes: value(tags, "lanes").and_then(|text| text.parse().ok()),
    }
}

/// A number with what follows it.
fn number_and_unit(text: &str) -> Option<(f64, &str)> {
    let text = text.trim();
    let end = text
        .find(|letter: char| !letter.is_ascii_digit() && letter != '.')
        .unwrap_or(text.len());
    let number = text.get(..end)?.parse().ok()?;
    Some((number, text.get(end..)?.trim()))
}

/// A width: meters unless it says feet.
fn length_m(text: &str) -> Option<f64> {
    match number_and_unit(text)? {
        (number, "" | "m") => Some(number),
        (number, "'" | "ft") => Some(number * 0.3048),
        _ => None,
    }
}

/// A speed: kilometers per hour unless it says miles.
fn speed_km_h(text: &str) -> Option<f64> {
    match number_and_unit(text)? {
        (number, "" | "km/h") => Some(number),
        (number, "mph") => Some(number * 1.609_344),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn suggested(tags: &[(&str, &str)]) -> Option<Suggestion> {
        let tags: Vec<(String, String)> = tags
            .iter()
            .map(|(name, value)| ((*name).to_owned(), (*value).to_owned()))
            .collect();
        suggestion(&tags)
    }

    #[test]
    fn streets_get_a_role_a_section_and_what_their_tags_say() {
        let tags = [
            ("highway", "residential"),
            ("name", "Elm Street"),
            ("maxspeed", "25 mph"),
            ("width", "30'"),
            ("lanes", "2"),
            ("bridge", "yes"),
        ];
        let Some(Suggestion::Street(street)) = suggested(&tags) else {
            panic!("a residential street is a street");
        };
        assert_eq!(street.role, StreetRole::NeighborhoodStreet);
        assert_eq!(
            (street.section, street.name.as_str()),
            ("neighborhood-street", "Elm Street")
        );
        assert_eq!((street.level, street.lanes, street.status), (1, Some(2), "existing"));
        assert!((street.speed_km_h.unwrap() - 40.2336).abs() < 1e-9);
        assert!((street.width_m.unwrap() - 9.144).abs() < 1e-9);
    }

    #[test]
    fn the_first_row_that_fits_speaks() {
        assert_eq!(suggested(&[("highway", "footway"), ("footway", "sidewalk")]), None);
        assert_eq!(suggested(&[("highway", "service"), ("service", "driveway")]), None);
        let Some(Suggestion::Street(alley)) = suggested(&[("highway", "service"), ("service", "alley")]) else {
            panic!("an alley is a street");
        };
        assert_eq!(alley.role, StreetRole::Alley);
        let place = |place| Some(Suggestion::Place { place });
        assert_eq!(
            suggested(&[("building", "yes"), ("amenity", "school")]),
            place(PlaceKind::School)
        );
        assert_eq!(suggested(&[("shop", "bakery")]), place(PlaceKind::Shop));
        assert_eq!(suggested(&[("highway", "bus_stop")]), place(PlaceKind::TransitStop));
        assert_eq!(suggested(&[("building", "yes")]), Some(Suggestion::Building));
        assert_eq!(suggested(&[("highway", "proposed")]), None);
    }
}
