//! What can be typed or chosen about a thing: fields as plain data, read from a mark and put back into it.

use hobnail_core::figures::unit::{ACRE_M2, SQUARE_FOOT_M2};
use hobnail_core::plan::document::{Alternative, Heading, TargetKind, UnitSystem};
use hobnail_core::plan::land::{Barrier, OutsideContext, OwnerGroup, Parcel, SiteAccess};
use hobnail_core::plan::projection::ORIGIN_LATITUDE_LIMIT_NDEG;
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::{Certainty, ConstraintArea, Document, Mark, PhaseId, Place, SoftArea, Street, UseMark};
use hobnail_core::say;

mod beside;

use super::editor::quantity::signed_number;
use crate::canvas::layers::marks;
use crate::canvas::palette;
use crate::tools::drafts::{self, CONSTRAINTS, PLACES};
use crate::tools::usual_role;

/// What can be typed or chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is documented at the part of the plan of the same name")]
pub enum Field {
    Name,
    Kind,
    Certainty,
    Phase,
    MinimumSize,
    /// Whether the next place gets land of its own.
    HasLand,
    OutsideTrips,
    Wait,
    Buildable,
    InSite,
    InBuildable,
    Walkable,
    Owners,
    StoriesBeside,
    ClearBeside,
    ReachBeside,
    Use,
    Intensity,
    Homes,
    Jobs,
    ShopFloor,
    Text,
    Author,
    Votes,
    Present,
    StreetSection,
    Status,
    StreetOwner,
    Outside,
    PlanName,
    About,
    Latitude,
    Longitude,
    PhaseName(PhaseId),
    /// Name of the alternative in view, and who drew it.
    AlternativeName,
    AlternativeTable,
    Asked(TargetKind),
}

/// A field as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldShown {
    /// Which it is.
    pub field: Field,
    /// What it is called.
    pub words: String,
    /// What it holds.
    pub value: Value,
    /// What stands beside it.
    pub beside: [String; 2],
}

/// What a field holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// Words.
    Text(String),
    /// A number and its unit; empty where nothing is said.
    Number(String, &'static str),
    /// One of several.
    Choice(Vec<String>, usize),
    /// Yes or no.
    Flag(bool),
}

/// What a number is stored in, and shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// A count.
    Count,
    /// Floor area, in square meters.
    Floor,
    /// Land, in square meters.
    Land,
    /// A length, in millimeters.
    Length,
    /// A share, in parts per million.
    Share,
    /// Time, in tenths of a second.
    Wait,
    /// An angle, in billionths of a degree.
    Degrees,
}

const CERTAINTIES: [Certainty; 3] = [Certainty::Existing, Certainty::Committed, Certainty::HopedFor];
pub(super) const OWNERS: [OwnerGroup; 4] = [
    OwnerGroup::Public,
    OwnerGroup::Willing,
    OwnerGroup::Unknown,
    OwnerGroup::Unwilling,
];
const STATUSES: [Status; 4] = [Status::Existing, Status::Kept, Status::Removed, Status::New];
pub(super) const STREET_OWNERS: [StreetOwner; 3] = [StreetOwner::State, StreetOwner::Town, StreetOwner::Private];

impl Field {
    /// What it is called.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Name => say!("page-field-name"),
            Self::Kind => say!("page-field-kind"),
            Self::Certainty => say!("page-field-certainty"),
            Self::Phase => say!("page-field-phase"),
            Self::MinimumSize => say!("page-field-minimum-size"),
            Self::HasLand => say!("page-field-has-land"),
            Self::OutsideTrips => say!("page-field-outside-trips"),
            Self::Wait => say!("page-field-wait"),
            Self::Buildable => say!("page-field-buildable"),
            Self::InSite => say!("page-field-in-site"),
            Self::InBuildable => say!("page-field-in-buildable"),
            Self::Walkable => say!("page-field-walkable"),
            Self::Owners => say!("page-field-owners"),
            Self::StoriesBeside => say!("page-field-stories-beside"),
            Self::ClearBeside => say!("page-field-clear-beside"),
            Self::ReachBeside => say!("page-field-reach-beside"),
            Self::Use => say!("page-field-use"),
            Self::Intensity => say!("page-field-intensity"),
            Self::Homes => say!("page-field-homes"),
            Self::Jobs => say!("page-field-jobs"),
            Self::ShopFloor => say!("page-field-shop-floor"),
            Self::Text => say!("page-field-text"),
            Self::Author => say!("page-field-author"),
            Self::Votes => say!("page-field-votes"),
            Self::Present => say!("page-field-present"),
            Self::StreetSection => say!("page-field-street-section"),
            Self::Status => say!("page-field-status"),
            Self::StreetOwner => say!("page-field-street-owner"),
            Self::Outside => say!("page-field-outside"),
            Self::PlanName => say!("page-field-plan-name"),
            Self::AlternativeName => say!("page-field-alternative-name"),
            Self::AlternativeTable => say!("page-field-alternative-table"),
            Self::About => say!("page-field-about"),
            Self::Latitude => say!("page-field-latitude"),
            Self::Longitude => say!("page-field-longitude"),
            Self::PhaseName(_) => say!("page-field-phase-name"),
            Self::Asked(_) => say!("page-field-asked"),
        }
    }

    /// The field with what it holds.
    #[must_use]
    pub fn shown(self, value: Value) -> FieldShown {
        FieldShown {
            field: self,
            words: self.words().to_owned(),
            value,
            beside: [String::new(), String::new()],
        }
    }
}

impl Unit {
    /// How much of what is stored is one of what is shown, its word, and how many decimals are.
    #[must_use]
    pub fn shown(self, units: UnitSystem) -> (f64, &'static str, f64) {
        let is_metric = matches!(units, UnitSystem::Metric);
        match self {
            Self::Count => (1.0, "", 1.0),
            Self::Floor if is_metric => (1.0, "m²", 1.0),
            Self::Floor => (SQUARE_FOOT_M2, say!("page-unit-square-feet"), 1.0),
            Self::Land if is_metric => (10_000.0, "ha", 1000.0),
            Self::Land => (ACRE_M2, say!("page-unit-acres"), 1000.0),
            Self::Length if is_metric => (1000.0, "m", 10.0),
            Self::Length => (304.8, say!("page-unit-feet"), 10.0),
            Self::Share => (10_000.0, "%", 10.0),
            Self::Wait => (10.0, "s", 10.0),
            Self::Degrees => (1e9, "°", 100_000.0),
        }
    }

    /// What is stored, as a number to show.
    #[must_use]
    pub fn number(self, stored: f64, units: UnitSystem) -> Value {
        let (one, word, decimals) = self.shown(units);
        Value::Number(((stored / one * decimals).round() / decimals).to_string(), word)
    }

    /// What was typed, as it is stored; nothing is zero. `None` where it is no number, or out of bounds.
    #[must_use]
    pub fn read(self, text: &str, units: UnitSystem) -> Option<f64> {
        let typed = match text.trim() {
            "" => 0.0,
            text => signed_number(text)?,
        };
        let stored = (typed * self.shown(units).0).round();
        let most = match self {
            Self::Share => 1e6,
            Self::Degrees => 1.8e11,
            _ => f64::from(u32::MAX),
        };
        let least = if self == Self::Degrees { -most } else { 0.0 };
        (least..=most).contains(&stored).then_some(stored)
    }
}

fn text(words: &str) -> Value {
    Value::Text(words.to_owned())
}

fn one_of(words: &[&str], chosen: usize) -> Value {
    Value::Choice(words.iter().map(|word| (*word).to_owned()).collect(), chosen)
}

/// The sections of the palette, and which of them a street is built to; one that the palette lacks is no name after them.
fn section(document: &Document, street: &Street) -> Value {
    let mut names = Vec::new();
    let mut place = document.street_sections.len();
    for (id, section) in &document.street_sections {
        if *id == street.section {
            place = names.len();
        }
        names.push(section.name.clone());
    }
    if place == names.len() {
        names.push(String::new());
    }
    Value::Choice(names, place)
}

/// What a mark is called, as a heading.
#[must_use]
pub fn title(mark: &Mark) -> &'static str {
    match mark {
        Mark::Street(_) => say!("page-title-street"),
        Mark::Use(_) => say!("page-title-block"),
        Mark::SoftArea(_) => say!("page-title-soft-area"),
        Mark::Constraint(area) => palette::constraint_word(area.kind),
        Mark::Place(place) => marks::word(place.kind),
        Mark::SiteAccess(_) => say!("page-title-site-access"),
        Mark::Parcel(_) => say!("page-title-parcel"),
        Mark::Barrier(_) => say!("page-title-barrier"),
        Mark::Crossing(_) => say!("page-title-crossing"),
        Mark::Outside(_) => say!("page-title-outside"),
        Mark::Note(_) => say!("page-title-note"),
    }
}

/// The fields of a mark.
#[must_use]
pub fn of_mark(document: &Document, mark: &Mark) -> Vec<FieldShown> {
    of_marks(document, mark, &[])
}

/// Whether a mark selected with others takes part only in what it has: blocks come along with the streets around them.
pub const fn is_left_out(mark: &Mark) -> bool {
    matches!(mark, Mark::Use(_))
}

/// The fields of a mark; with others only the choices that all of them have but those left out. Where they differ, that
/// is chosen, after what can be.
#[must_use]
pub fn of_marks(document: &Document, mark: &Mark, others: &[&Mark]) -> Vec<FieldShown> {
    let units = document.settings.units;
    let number = |field: Field, unit: Unit, stored: u32| field.shown(unit.number(f64::from(stored), units));
    let flag = |field: Field, is_on: bool| field.shown(Value::Flag(is_on));
    let phase = |phase: Option<PhaseId>| {
        let (mut names, mut place) = (Vec::new(), 0);
        for (id, held) in &document.phases {
            if phase == Some(*id) {
                place = names.len();
            }
            names.push(held.name.clone());
        }
        Field::Phase.shown(Value::Choice(names, place))
    };
    let mut fields = match mark {
        Mark::Street(street) => vec![
            Field::Name.shown(text(&street.name)),
            Field::StreetSection.shown(section(document, street)),
            Field::Status.shown(one_of(
                &[
                    say!("page-status-existing"),
                    say!("page-status-kept"),
                    say!("page-status-removed"),
                    say!("page-status-new"),
                ],
                street.status as usize,
            )),
            Field::StreetOwner.shown(one_of(
                &[
                    say!("page-owner-state"),
                    say!("page-owner-town"),
                    say!("page-owner-private"),
                ],
                street.owner as usize,
            )),
            Field::Outside.shown(one_of(
                &[say!("page-inside"), say!("page-outside")],
                usize::from(street.is_outside),
            )),
            phase(street.phase),
        ],
        Mark::Use(held) => vec![phase(held.phase)],
        Mark::SoftArea(area) => {
            let first = area.program.first().map(|portion| portion.building_type);
            let (mut names, mut place) = (Vec::new(), 0);
            for (id, held) in &document.building_types {
                if first == Some(*id) {
                    place = names.len();
                }
                names.push(held.name.clone());
            }
            vec![
                Field::Use.shown(Value::Choice(names, place)),
                number(Field::Intensity, Unit::Share, area.intensity_ppm),
                phase(area.phase),
            ]
        }
        Mark::Constraint(area) => vec![
            Field::Name.shown(text(&area.name)),
            Field::Kind.shown(one_of(&CONSTRAINTS.map(palette::constraint_word), area.kind as usize)),
            flag(Field::Buildable, area.is_buildable),
            flag(Field::InSite, area.counts_in_site),
            flag(Field::InBuildable, area.counts_in_buildable),
            flag(Field::Walkable, area.is_walkable),
        ],
        Mark::Place(place) => vec![
            Field::Name.shown(text(&place.name)),
            Field::Kind.shown(one_of(&PLACES.map(marks::word), place.kind as usize)),
            Field::Certainty.shown(one_of(
                &[
                    say!("page-certainty-existing"),
                    say!("page-certainty-committed"),
                    say!("page-certainty-hoped"),
                ],
                place.certainty as usize,
            )),
            number(Field::MinimumSize, Unit::Land, place.minimum_size_m2),
            phase(place.phase),
        ],
        Mark::SiteAccess(access) => {
            let share = access.outside_trips_ppm;
            let nothing = Value::Number(String::new(), "%");
            vec![
                Field::Name.shown(text(&access.name)),
                Field::OutsideTrips.shown(share.map_or(nothing, |ppm| Unit::Share.number(f64::from(ppm), units))),
            ]
        }
        Mark::Parcel(parcel) => vec![
            Field::Name.shown(text(&parcel.label)),
            Field::Owners.shown(one_of(&OWNERS.map(palette::owner_word), parcel.owner as usize)),
        ],
        Mark::Barrier(barrier) => vec![Field::Name.shown(text(&barrier.name))],
        Mark::Crossing(crossing) => vec![number(Field::Wait, Unit::Wait, crossing.delay_tenths_s)],
        Mark::Outside(outside) => vec![
            Field::Name.shown(text(&outside.name)),
            number(Field::Homes, Unit::Count, outside.homes),
            number(Field::Jobs, Unit::Count, outside.jobs),
            number(Field::ShopFloor, Unit::Floor, outside.shop_floor_m2),
        ],
        Mark::Note(note) => vec![
            Field::Text.shown(text(&note.text)),
            Field::Author.shown(text(&note.author)),
            number(Field::Votes, Unit::Count, note.votes),
            number(Field::Present, Unit::Count, note.present),
        ],
    };
    if let Some(held) = mark.beside() {
        fields.extend(beside::fields(*held, units));
    }
    fields.retain_mut(|shown| {
        let field = shown.field;
        // One phase is no choice.
        if field == Field::Phase && document.phases.len() < 2 {
            return false;
        }
        if others.is_empty() {
            return true;
        }
        let Value::Choice(names, place) = &mut shown.value else {
            return false;
        };
        let chosen = place.to_string();
        let mut differs = false;
        for other in others {
            let mut after = (*other).clone();
            let is_put = put(document, &mut after, field, &chosen).is_some();
            // Unlike things have kinds of unlike lists.
            if field == Field::Kind || !(is_put || is_left_out(other)) {
                return false;
            }
            differs |= after != **other;
        }
        if differs {
            *place = names.len();
            names.push(say!("page-different").to_owned());
        }
        true
    });
    if let (Mark::Parcel(_), Some(label)) = (mark, fields.first_mut()) {
        say!("page-field-parcel-label").clone_into(&mut label.words);
    }
    fields
}

/// Puts what was typed or chosen into a mark. `None` where the mark has no such field or the text says nothing legal.
pub fn put(document: &Document, mark: &mut Mark, field: Field, text: &str) -> Option<()> {
    let units = document.settings.units;
    let number = |unit: Unit| Some(unit.read(text, units)? as u32);
    let place = || text.parse::<usize>().ok();
    let is_on = text == "true";
    let words = text.trim();
    if field == Field::Phase {
        // The first phase is where everything is that names none.
        let place = place()?;
        let chosen = *document.phases.keys().nth(place)?;
        let phase = phase_of(mark)?;
        if phase.map_or(place > 0, |held| held != chosen) {
            *phase = Some(chosen).filter(|_| place > 0);
        }
        return Some(());
    }
    if field == Field::Name {
        let (Mark::Street(Street { name, .. })
        | Mark::Constraint(ConstraintArea { name, .. })
        | Mark::Place(Place { name, .. })
        | Mark::SiteAccess(SiteAccess { name, .. })
        | Mark::Parcel(Parcel { label: name, .. })
        | Mark::Barrier(Barrier { name, .. })
        | Mark::Outside(OutsideContext { name, .. })) = mark
        else {
            return None;
        };
        words.clone_into(name);
        return Some(());
    }
    if let Some(held) = mark.beside_mut()
        && beside::put(held, field, text, units).is_some()
    {
        return Some(());
    }
    match (mark, field) {
        (Mark::Street(street), Field::StreetSection) => {
            let (id, section) = document.street_sections.iter().nth(place()?)?;
            // What it does in the network follows its section, as when it is drawn.
            if street.section != *id {
                street.section = *id;
                street.role = usual_role(section);
            }
        }
        (Mark::Street(street), Field::Status) => street.status = *STATUSES.get(place()?)?,
        (Mark::Street(street), Field::StreetOwner) => street.owner = *STREET_OWNERS.get(place()?)?,
        (Mark::Street(street), Field::Outside) => street.is_outside = place()? == 1,
        (Mark::SoftArea(area), Field::Use) => {
            let id = document.building_types.keys().nth(place()?).copied();
            drafts::give_use(area, id, document);
        }
        (Mark::SoftArea(area), Field::Intensity) => area.intensity_ppm = number(Unit::Share)?,
        (Mark::Constraint(area), Field::Kind) => area.kind = *CONSTRAINTS.get(place()?)?,
        (Mark::Constraint(area), Field::Buildable) => area.is_buildable = is_on,
        (Mark::Constraint(area), Field::InSite) => area.counts_in_site = is_on,
        (Mark::Constraint(area), Field::InBuildable) => area.counts_in_buildable = is_on,
        (Mark::Constraint(area), Field::Walkable) => area.is_walkable = is_on,
        (Mark::Place(held), Field::Kind) => held.kind = *PLACES.get(place()?)?,
        (Mark::Place(held), Field::Certainty) => held.certainty = *CERTAINTIES.get(place()?)?,
        (Mark::Place(held), Field::MinimumSize) => held.minimum_size_m2 = number(Unit::Land)?,
        (Mark::SiteAccess(access), Field::OutsideTrips) => {
            access.outside_trips_ppm = if words.is_empty() {
                None
            } else {
                Some(number(Unit::Share)?)
            };
        }
        (Mark::Parcel(parcel), Field::Owners) => parcel.owner = *OWNERS.get(place()?)?,
        (Mark::Crossing(crossing), Field::Wait) => crossing.delay_tenths_s = number(Unit::Wait)?,
        (Mark::Outside(outside), Field::Homes) => outside.homes = number(Unit::Count)?,
        (Mark::Outside(outside), Field::Jobs) => outside.jobs = number(Unit::Count)?,
        (Mark::Outside(outside), Field::ShopFloor) => outside.shop_floor_m2 = number(Unit::Floor)?,
        (Mark::Note(note), Field::Text) => words.clone_into(&mut note.text),
        (Mark::Note(note), Field::Author) => words.clone_into(&mut note.author),
        (Mark::Note(note), Field::Votes) => note.votes = number(Unit::Count)?,
        (Mark::Note(note), Field::Present) => note.present = number(Unit::Count)?,
        _ => return None,
    }
    Some(())
}

/// The phase a mark is in, where it is in any.
pub const fn phase_of(mark: &mut Mark) -> Option<&mut Option<PhaseId>> {
    match mark {
        Mark::Street(Street { phase, .. })
        | Mark::Use(UseMark { phase, .. })
        | Mark::SoftArea(SoftArea { phase, .. })
        | Mark::Place(Place { phase, .. }) => Some(phase),
        _ => None,
    }
}

/// The fields of the plan's heading, and the names of its phases.
#[must_use]
pub fn of_plan(document: &Document) -> Vec<FieldShown> {
    let heading = &document.heading;
    let degrees = |field: Field, ndeg: i64| field.shown(Unit::Degrees.number(ndeg as f64, UnitSystem::Metric));
    let mut fields = vec![
        Field::PlanName.shown(text(&heading.name)),
        Field::About.shown(text(&heading.about)),
        degrees(Field::Latitude, heading.origin_latitude_ndeg),
        degrees(Field::Longitude, heading.origin_longitude_ndeg),
    ];
    let phases = document.phases.iter();
    fields.extend(phases.map(|(id, phase)| Field::PhaseName(*id).shown(text(&phase.name))));
    fields
}

/// What can be typed about an alternative.
#[must_use]
pub fn of_alternative(held: &Alternative) -> Vec<FieldShown> {
    vec![
        Field::AlternativeName.shown(text(&held.name)),
        Field::AlternativeTable.shown(text(&held.table)),
    ]
}

/// The heading with what was typed; `None` where that says nothing legal.
#[must_use]
pub fn heading_with(heading: &Heading, field: Field, text: &str) -> Option<Heading> {
    let mut heading = heading.clone();
    let degrees = || Some(Unit::Degrees.read(text, UnitSystem::Metric)? as i64);
    match field {
        Field::PlanName if text.trim().is_empty() => return None,
        Field::PlanName => text.trim().clone_into(&mut heading.name),
        Field::About => text.trim().clone_into(&mut heading.about),
        Field::Latitude => {
            heading.origin_latitude_ndeg = degrees().filter(|ndeg| ndeg.abs() <= ORIGIN_LATITUDE_LIMIT_NDEG)?
        }
        Field::Longitude => heading.origin_longitude_ndeg = degrees()?,
        _ => return None,
    }
    Some(heading)
}

#[cfg(test)]
mod tests;
