//! What of a file a plan holds as words on the drawing: counts of traffic, and the zones and land uses of areas.
//!
//! Neither is counted in any figure. Words are put together here of the file's own names and numbers, so they are in no
//! language; [`Feature::noted`](crate::base::Feature::noted) carries them, [`crate::output`] asks for them.
//!
//! A count is a column named like one (`COUNTS`) with a number above 0; files write 0 or less where nobody counted. Of
//! several columns the newest year's counts. The year stands at the end of the column's name or in a column of years. A
//! zone is what an area's column named like one (`ZONES`) holds. Names are compared without regard to capitals, spaces
//! and underscores. All lists: common practice, no source.

use serde::Serialize;

use crate::fault::shortened;
use crate::osm::tags::Tags;
use crate::output::LONGEST_TAG;

/// What a feature says in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Noted {
    /// The words for the drawing.
    pub words: String,
    /// The column they are from, without a year at its end.
    pub column: String,
    /// The zone's code, where it is told apart from others; `None` of counts.
    pub zone: Option<String>,
}

/// Columns that count traffic: annual and weekday averages by their usual short names, and in words.
const COUNTS: [&str; 9] = [
    "aadt",
    "adt",
    "aawdt",
    "awdt",
    "trafficcount",
    "trafficvolume",
    "dailytraffic",
    "vehiclesperday",
    "carsperday",
];

/// Columns of the year of a count.
const YEARS: [&str; 10] = [
    "year",
    "yr",
    "countyear",
    "countyr",
    "yearcounted",
    "yearofcount",
    "aadtyear",
    "aadtyr",
    "adtyear",
    "adtyr",
];

/// Columns of the name of a street or a place of counting, the first of them that says one.
const NAMES: [&str; 8] = [
    "name",
    "streetname",
    "roadname",
    "street",
    "road",
    "rdname",
    "fullname",
    "location",
];

/// Columns of zones and of land uses, the first of them that says one.
const ZONES: [&str; 18] = [
    "zone",
    "zoning",
    "zonecode",
    "zoningcode",
    "zonetype",
    "zoneclass",
    "zonedist",
    "zonedistrict",
    "zoningdistrict",
    "zoningtype",
    "zoneabbr",
    "landuse",
    "landusecode",
    "lucode",
    "usecode",
    "futurelanduse",
    "futlanduse",
    "flu",
];

/// Columns that name a parcel: thousands of those are no zones, though each lies in one.
const PARCELS: [&str; 8] = [
    "parcel", "parcelid", "parcelno", "mapparid", "parid", "lot", "apn", "pin",
];

/// Whether a column has this name, which is given in small letters alone.
fn is_named(column: &str, wanted: &str) -> bool {
    let letters = column.chars().filter(|letter| !matches!(letter, ' ' | '_'));
    letters.map(|letter| letter.to_ascii_lowercase()).eq(wanted.chars())
}

fn is_one_of(column: &str, names: &[&str]) -> bool {
    names.iter().any(|wanted| is_named(column, wanted))
}

/// The first of these columns, in the order of the names, that says something.
fn said<'a>(tags: &'a Tags, names: &[&str]) -> Option<(&'a str, &'a str)> {
    names.iter().find_map(|wanted| {
        let found = tags.iter().filter(|(column, _)| is_named(column, wanted));
        let mut found = found.map(|(column, value)| (column.as_str(), value.trim()));
        found.find(|(_, value)| !value.is_empty())
    })
}

/// A column's name without what follows its words, and the year that does: four digits, or two for one from 1950 on.
fn without_year(column: &str) -> (&str, Option<u32>) {
    let stem = column.trim_end_matches(|letter: char| letter.is_ascii_digit());
    let digits = column.get(stem.len()..).unwrap_or_default();
    let year = match (digits.len(), digits.parse()) {
        (4, Ok(year)) if (1900..2100).contains(&year) => Some(year),
        (2, Ok(short)) => Some(if short < 50 { 2000 + short } else { 1900 + short }),
        _ => None,
    };
    let stem = stem.trim_end_matches(|letter: char| letter.is_ascii_digit() || letter == '_' || letter == ' ');
    (stem, year)
}

/// The year that a value begins with: of `2022`, of `2022.0`, of a date.
fn year_of(value: &str) -> Option<u32> {
    let end = value.find(|letter: char| !letter.is_ascii_digit());
    let digits = value.get(..end.unwrap_or(value.len()))?;
    let year = digits.parse().ok().filter(|_| digits.len() == 4)?;
    (1900..2100).contains(&year).then_some(year)
}

/// Whether a value is a number of vehicles: above 0, perhaps with commas between thousands.
fn is_counted(value: &str) -> bool {
    let digits: String = value.chars().filter(|letter| *letter != ',').collect();
    digits
        .parse::<f64>()
        .is_ok_and(|count| count > 0.0 && count.is_finite())
}

/// Whether a column counts traffic: by its name, which may end with a year.
#[must_use]
pub fn counts_traffic(column: &str) -> bool {
    is_one_of(without_year(column).0, &COUNTS)
}

/// The newest count of traffic: the feature's name where it has one, the column, the number as it is in the file, and the
/// year where the file says it.
#[must_use]
pub fn counted(tags: &Tags) -> Option<Noted> {
    let of_all = said(tags, &YEARS).and_then(|(_, value)| year_of(value));
    let mut newest: Option<(Option<u32>, &str, &str)> = None;
    for (column, value) in tags {
        let ((stem, year), value) = (without_year(column), value.trim());
        let year = year.or(of_all);
        let is_newer = newest.is_none_or(|(held, ..)| year > held);
        if is_newer && is_one_of(stem, &COUNTS) && is_counted(value) {
            newest = Some((year, stem, value));
        }
    }
    let (year, stem, value) = newest?;
    let [column, value] = [stem, value].map(|text| shortened(text, LONGEST_TAG));
    let mut words = format!("{column} {value}");
    if let Some(year) = year {
        words = format!("{words} ({year})");
    }
    if let Some((_, name)) = said(tags, &NAMES) {
        words = format!("{}: {words}", shortened(name, LONGEST_TAG));
    }
    let zone = None;
    Some(Noted { words, column, zone })
}

/// The zone or land use that an area says, by its code.
#[must_use]
pub fn zoned(tags: &Tags) -> Option<Noted> {
    let (column, code) = said(tags, &ZONES)?;
    let words = shortened(code, LONGEST_TAG);
    Some(Noted {
        zone: Some(words.clone()),
        words,
        column: shortened(column, LONGEST_TAG),
    })
}

/// Whether an area is a parcel by its columns.
#[must_use]
pub fn is_parcel(tags: &Tags) -> bool {
    tags.iter().any(|(column, _)| is_one_of(column, &PARCELS))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn list(tags: &[(&str, &str)]) -> Vec<(String, String)> {
        tags.iter()
            .map(|(name, value)| ((*name).to_owned(), (*value).to_owned()))
            .collect()
    }

    #[track_caller]
    fn check(tags: &[(&str, &str)], words: &str) {
        let found = counted(&list(tags));
        assert_eq!(found.map_or(String::new(), |noted| noted.words), words, "{tags:?}");
    }

    #[test]
    fn a_count_is_said_with_its_name_and_year_where_the_file_has_them() {
        check(
            &[("NAME", "Mill Road"), ("AADT", "4300"), ("YEAR", "2022")],
            "Mill Road: AADT 4300 (2022)",
        );
        check(&[("ADT_2019", "4,300")], "ADT 4,300 (2019)");
        check(
            &[("Street_Name", "Elm Lane"), ("Traffic Volume", "950.5")],
            "Elm Lane: Traffic Volume 950.5",
        );
        check(
            &[("name", " "), ("ROAD", "Ford Way"), ("awdt21", "77")],
            "Ford Way: awdt 77 (2021)",
        );
        check(&[("AADT", "12"), ("AADT_YR", "2020.0")], "AADT 12 (2020)");
        check(&[("AADT", "12"), ("Count_Year", "1998-06-30")], "AADT 12 (1998)");
        check(&[("AADT", "12"), ("year", "20220630")], "AADT 12");
        check(&[("AADT97", "12")], "AADT 12 (1997)");
        check(&[("AADT_3", "12")], "AADT 12");
    }

    #[test]
    fn of_several_years_the_newest_that_was_counted_is_said() {
        let years = [("AADT_2021", "4100"), ("AADT_2023", "4300"), ("AADT_2022", "4200")];
        check(&years, "AADT 4300 (2023)");
        check(&[years[0], ("AADT_2023", "0"), years[2]], "AADT 4200 (2022)");
        check(
            &[years[0], ("AADT_2023", "-1"), ("AADT_2022", "none")],
            "AADT 4100 (2021)",
        );
        check(&[("ADT", "10"), years[0]], "AADT 4100 (2021)");
        check(&[("ADT", "10"), ("AWDT", "11")], "ADT 10");
    }

    #[test]
    fn what_is_no_number_or_no_count_says_nothing() {
        for tags in [
            &[("AADT", "0")][..],
            &[("AADT", "")],
            &[("AADT", "inf")],
            &[("AADT", "NaN")],
            &[("AADT", "many")],
            &[("AADTEST", "5")],
            &[("name", "Mill Road"), ("year", "2022")],
            &[],
        ] {
            check(tags, "");
        }
    }

    #[test]
    fn a_zone_is_the_code_of_the_first_column_that_says_one() {
        let found = |tags: &[(&str, &str)]| zoned(&list(tags)).map(|noted| (noted.column, noted.words));
        let said = |column: &str, words: &str| Some((column.to_owned(), words.to_owned()));
        assert_eq!(
            found(&[("LAND_USE", "Farm"), ("Zone_Code", " R-1 ")]),
            said("Zone_Code", "R-1")
        );
        assert_eq!(found(&[("ZONING", ""), ("landuse", "Farm")]), said("landuse", "Farm"));
        assert_eq!(found(&[("FLD_ZONE", "A"), ("time_zone", "5")]), None);
        assert!(is_parcel(&list(&[("ZONE", "R-1"), ("PARCEL_ID", "7")])));
        assert!(!is_parcel(&list(&[("ZONE", "R-1"), ("lots", "7")])));
    }
}
