//! The editor of the use of a piece of land: its program by building type, what that yields now, and its sides.

use hobnail_core::fabric::sides::{Side, middle_of, section_lets_front, side_spoken_of};
use hobnail_core::fabric::{Fabric, FaceOfLand};
use hobnail_core::figures::display::grouped;
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::land::{Fronting, Hand, Portion};
use hobnail_core::plan::{BuildingTypeId, Document, MarkId, PlanPoint, SideUse, UseMark};
use hobnail_core::study::Study;
use hobnail_core::{message, say};

use super::edits::refuse;
use super::lines::{Key, Line, Part};
use super::quantity::{self, Bounded};
use super::{Change, EditorShown, beside};
use crate::app::counted_land;
use crate::app::words::{self, Words};
use crate::canvas::scene_of::run_of;

/// From here on what lines beside it ask.
const BESIDE: u16 = 100;
/// Fields of the land whole.
const ADD: u8 = 0;
const FILL: u8 = 1;
/// Fields of a portion.
const TYPE: u8 = 0;
const SHARE: u8 = 1;
const REMOVE: u8 = 2;
/// Fields of a side.
pub(super) const OPEN: u8 = 0;
const FRONTING: u8 = 1;
const OWN_TYPE: u8 = 2;
const SHOPFRONT: u8 = 3;
const STORIES: u8 = 4;
const SETBACK: u8 = 5;

const WHOLE_PPM: u32 = 1_000_000;

fn share_field() -> Bounded {
    Bounded {
        label: say!("page-land-share"),
        quantity: &quantity::PARTS_PER_MILLION,
        bounds: [0.0, WHOLE_PPM as f64],
    }
}

fn stories_field() -> Bounded {
    Bounded {
        label: say!("page-land-most-stories"),
        quantity: &quantity::COUNT,
        bounds: [1.0, 60.0],
    }
}

pub(super) fn setback_field() -> Bounded {
    Bounded {
        label: say!("page-land-setback"),
        quantity: &quantity::WIDTH,
        bounds: [0.0, 60_960.0],
    }
}

/// Where less or more begins on a side that says nothing: the usual setback of core, 10 feet.
const USUAL_SETBACK_MM: f64 = 3_048.0;

const FRONTINGS: [(Option<Fronting>, Words); 5] = [
    (None, message!("page-front-street")),
    (Some(Fronting::Front), message!("page-front-front")),
    (Some(Fronting::Side), message!("page-front-side")),
    (Some(Fronting::Rear), message!("page-front-rear")),
    (Some(Fronting::None), message!("page-front-none")),
];

/// The selected land as the fabric has it.
struct Found<'a> {
    mark: &'a UseMark,
    face: Option<&'a FaceOfLand>,
    fabric: &'a Fabric,
    document: &'a Document,
}

fn find(study: &Study, id: MarkId) -> Option<Found<'_>> {
    let (document, fabric) = (study.document(), study.fabric());
    let face = fabric.face_of_mark.get(&id).and_then(|face| fabric.face(*face));
    Some(Found {
        mark: document.mark(study.alternative(), id)?.as_use()?,
        face,
        fabric,
        document,
    })
}

impl<'a> Found<'a> {
    /// The sides along streets, by their place among the face's sides.
    fn sides(&self) -> impl Iterator<Item = (u16, &'a Side)> + use<'a> {
        let sides = self.face.map_or(&[][..], |face| face.sides.as_slice());
        (0..).zip(sides).filter(|(_, side)| side.street.is_some())
    }

    /// The place among the mark's sides of what it says of a side; the first said counts.
    fn said(&self, index: u16) -> Option<usize> {
        let sides = &self.face?.sides;
        let (arrangement, lines) = (&self.fabric.arrangement, &self.fabric.lines);
        self.mark
            .sides
            .iter()
            .position(|said| side_spoken_of(arrangement, lines, sides, said) == Some(usize::from(index)))
    }
}

/// The editor; `None` where there is no such use.
pub(super) fn shown(study: &Study, id: MarkId, open: Option<u16>) -> Option<EditorShown> {
    let found = find(study, id)?;
    let units = found.document.settings.units;
    let types: Vec<(BuildingTypeId, &str)> = found
        .document
        .building_types
        .iter()
        .map(|(id, held)| (*id, held.name.as_str()))
        .collect();
    let place = |id: BuildingTypeId| types.iter().position(|(known, _)| *known == id);
    let names = || types.iter().map(|(_, name)| (*name).to_owned());
    let mut lines = vec![Line::title(0, say!("page-land"))];
    for (index, portion) in (0..).zip(&found.mark.program) {
        let key = |field| Key::new(Part::Portion, index, field);
        let name = found.document.building_types.get(&portion.building_type);
        let name = name.map_or("", |held| held.name.as_str());
        let share = f64::from(portion.share_ppm);
        lines.push(
            Line::choice(
                key(TYPE),
                "",
                names().collect(),
                place(portion.building_type).unwrap_or_default(),
            )
            .in_row(say!("page-land-type", number = index + 1)),
        );
        lines.push(
            Line::number(key(SHARE), &share_field(), share, units).in_row(say!("page-land-share-of", name = name)),
        );
        lines.push(Line::sign(key(REMOVE), "×", say!("page-land-remove", name = name)));
    }
    let whole = |field| Key::new(Part::Land, 0, field);
    let total: u32 = found.mark.program.iter().map(|portion| portion.share_ppm).sum();
    let rest = WHOLE_PPM.saturating_sub(total);
    let percent = |ppm: u32| share_field().quantity.words(f64::from(ppm), units);
    let together = if rest > 0 {
        say!("page-land-without-use", total = percent(total), rest = percent(rest))
    } else {
        percent(total)
    };
    lines.push(Line::fact(1, say!("page-land-together"), together));
    lines.push(Line::command(whole(ADD), say!("page-land-add-type")).off_if(found.mark.program.len() >= types.len()));
    if rest > 0 && total > 0 {
        lines.push(Line::command(whole(FILL), say!("page-land-fill-up")));
    }
    lines.push(Line::title(2, say!("page-land-yields")));
    if found.face.is_none() {
        lines.push(Line::warning(3, say!("page-land-asleep")));
    }
    let yields = yields(study, id, units);
    lines.extend(
        (10..)
            .zip(yields)
            .map(|(index, (label, value))| Line::fact(index, label, value)),
    );
    let faces = study.painted().iter().filter(|face| face.mark == id);
    let room = counted_land::without_room(study, faces.flat_map(|face| &face.laid.lots));
    lines.extend(room.map(|room| Line::warning(5, room)));
    lines.push(Line::title(4, say!("page-land-sides")));
    for (index, side) in found.sides() {
        let said = found.said(index).and_then(|place| found.mark.sides.get(place));
        let is_open = open == Some(index);
        let mut toggle = Line::command(Key::new(Part::Side, index, OPEN), side_name(&found, side));
        toggle.is_on = Some(is_open);
        toggle.more = said.map_or_else(String::new, |said| said_words(found.document, said, units));
        lines.push(toggle);
        if is_open {
            let own = said.and_then(|said| said.building_type).and_then(place);
            let names = std::iter::once(say!("page-land-as-the-land").to_owned())
                .chain(names())
                .collect();
            add_side_lines(&mut lines, index, said, (names, own.map_or(0, |own| own + 1)), units);
        }
    }
    lines.extend(beside::lines(study, id, BESIDE));
    Some(EditorShown {
        name: "land",
        drawing: None,
        lines,
        profile: None,
    })
}

fn add_side_lines(
    lines: &mut Vec<Line>,
    index: u16,
    said: Option<&SideUse>,
    (names, chosen): (Vec<String>, usize),
    units: UnitSystem,
) {
    let key = |field| Key::new(Part::Side, index, field);
    let fronting = said.map(|said| said.fronting);
    let stands = FRONTINGS.iter().position(|(known, _)| *known == fronting);
    let options = FRONTINGS.iter().map(|(_, words)| words.words().to_owned()).collect();
    let unsaid = |field: u8, bounded: &Bounded, stored: Option<f64>, hint: &str| {
        let mut line = Line::number(key(field), bounded, stored.unwrap_or_default(), units);
        if stored.is_none() {
            line.value.clear();
        }
        line.with_hint(hint.to_owned())
    };
    let stories = said.and_then(|said| said.stories).map(f64::from);
    let setback = said.and_then(|said| said.setback_mm).map(f64::from);
    lines.extend([
        Line::choice(
            key(FRONTING),
            say!("page-land-lots-stand"),
            options,
            stands.unwrap_or_default(),
        ),
        Line::choice(key(OWN_TYPE), say!("page-building-type"), names, chosen),
        Line::check(
            key(SHOPFRONT),
            say!("page-land-shopfront"),
            said.is_some_and(|said| said.shopfront),
        ),
        unsaid(STORIES, &stories_field(), stories, say!("page-land-unsaid-stories")),
        unsaid(SETBACK, &setback_field(), setback, say!("page-land-unsaid-setback")),
    ]);
}

/// What the land holds as it is laid now: a name and a value each.
fn yields(study: &Study, id: MarkId, units: UnitSystem) -> Vec<(&'static str, String)> {
    let painted = study.painted();
    let mut sums = [0.0; 5];
    let mut stories: Option<(usize, usize)> = None;
    for (building_type, lots) in painted
        .iter()
        .filter(|face| face.mark == id)
        .flat_map(|face| &face.lots)
    {
        let Some(held) = painted.palette.get(*building_type) else {
            continue;
        };
        let floor_m2: u64 = held.stories.iter().map(|story| u64::from(story.floor_area_m2)).sum();
        let per_lot = [
            1.0,
            f64::from(held.homes_per_lot),
            study.jobs_on_lot(held),
            floor_m2 as f64,
            f64::from(held.parking_per_lot_hundredths) / 100.0,
        ];
        for (sum, amount) in sums.iter_mut().zip(per_lot) {
            *sum += lots * amount;
        }
        let count = held.stories.len();
        let (least, most) = stories.unwrap_or((count, count));
        stories = Some((least.min(count), most.max(count)));
    }
    let [lots, homes, jobs, floor_m2, parking] = sums;
    let count = |value: f64| grouped(value.round(), 0);
    let floor = quantity::FLOOR.shown(units);
    let stories = match stories {
        None => 0.to_string(),
        Some((least, most)) if least == most => least.to_string(),
        Some((least, most)) => say!("page-to", least = least, most = most),
    };
    vec![
        (say!("page-yield-lots"), count(lots)),
        (say!("page-yield-homes"), count(homes)),
        (say!("page-yield-jobs"), count(jobs)),
        (
            say!("page-yield-floor"),
            count(floor_m2 / floor.scale) + " " + (floor.unit)(),
        ),
        (say!("page-yield-stories"), stories),
        (say!("page-yield-parking"), count(parking)),
    ]
}

/// The side of the land with this mark: its run and how far from it in meters the land begins.
pub(super) fn side(study: &Study, id: MarkId, index: u16) -> Option<(Vec<PlanPoint>, f64)> {
    let found = find(study, id)?;
    let side = found.face?.sides.get(usize::from(index))?;
    let first = side.half_edges.first()?;
    let run = run_of(found.fabric, &side.half_edges);
    Some((run, found.fabric.half_width_mm(*first) / 1000.0))
}

/// Where a side lies and what street it faces.
fn side_name(found: &Found<'_>, side: &Side) -> String {
    let middle = middle_of(&found.fabric.arrangement, side);
    let center = found.face.and_then(|face| PlanPoint::mean_of(face.outline.first()?));
    let toward = center
        .zip(middle)
        .map_or(say!("page-side"), |(center, middle)| compass(center, middle));
    let street = side.street.and_then(|(street, hand)| {
        let line = found.fabric.lines.streets.get(street as usize)?;
        let mut alternatives = found.document.alternatives.values();
        let street = alternatives.find_map(|held| held.marks.get(&line.mark)?.as_street())?;
        let street = words::street_name(street);
        Some(match hand {
            Hand::Left => say!("page-side-on-left", street = street),
            Hand::Right => say!("page-side-on-right", street = street),
        })
    });
    [toward, ": ", &street.unwrap_or_default()].concat()
}

/// Toward which of the eight winds a point lies.
fn compass(from: PlanPoint, to: PlanPoint) -> &'static str {
    let x = f64::from(to.x_mm) - f64::from(from.x_mm);
    let y = f64::from(to.y_mm) - f64::from(from.y_mm);
    // Between the winds at tan 22.5°.
    const HALF_WIND: f64 = 0.414;
    let is_across = x.abs() > y.abs() * HALF_WIND;
    let is_along = y.abs() > x.abs() * HALF_WIND;
    match (is_along, is_across, y > 0.0, x > 0.0) {
        (true, false, true, _) => say!("page-side-north"),
        (true, false, false, _) => say!("page-side-south"),
        (false, _, _, true) => say!("page-side-east"),
        (false, _, _, false) => say!("page-side-west"),
        (true, true, true, true) => say!("page-side-northeast"),
        (true, true, true, false) => say!("page-side-northwest"),
        (true, true, false, true) => say!("page-side-southeast"),
        (true, true, false, false) => say!("page-side-southwest"),
    }
}

fn said_words(document: &Document, said: &SideUse, units: UnitSystem) -> String {
    let stands = FRONTINGS.iter().find(|(known, _)| *known == Some(said.fronting));
    let name = said.building_type.and_then(|id| document.building_types.get(&id));
    let mut words: Vec<String> = vec![stands.map_or("", |(_, words)| words.words()).to_owned()];
    words.extend(name.map(|held| held.name.clone()));
    words.extend(said.shopfront.then(|| say!("page-said-shopfront").to_owned()));
    words.extend(said.stories.map(|stories| say!("page-said-stories", count = stories)));
    words.extend(said.setback_mm.map(|setback| {
        say!(
            "page-said-setback",
            setback = setback_field().quantity.words(f64::from(setback), units)
        )
    }));
    words.join(", ")
}

/// The use after a line was changed.
pub(super) fn changed(study: &Study, id: MarkId, key: Key, change: &Change) -> Result<UseMark, String> {
    let found = find(study, id).ok_or_else(String::new)?;
    let units = found.document.settings.units;
    let mut after = found.mark.clone();
    let place = usize::from(key.index);
    let types = || found.document.building_types.keys();
    match (key.part, key.field) {
        (Part::Land, ADD) => {
            let is_free = |id: &&BuildingTypeId| after.program.iter().all(|portion| portion.building_type != **id);
            let free = types().find(is_free).copied();
            let building_type = free.ok_or_else(|| refuse(say!("page-land-all-types")))?;
            let held: u32 = after.program.iter().map(|portion| portion.share_ppm).sum();
            let rest = WHOLE_PPM.saturating_sub(held);
            // Where nothing is left over, the new type takes as much as each of the others has on average.
            let equal = WHOLE_PPM / (after.program.len() as u32 + 1);
            after.program.push(Portion {
                building_type,
                share_ppm: 0,
            });
            let last = after.program.len() - 1;
            set_share(&mut after.program, last, if rest > 0 { rest } else { equal });
        }
        (Part::Land, _) => fill(&mut after.program),
        (Part::Portion, REMOVE) => {
            if place < after.program.len() {
                after.program.remove(place);
            }
        }
        (Part::Portion, TYPE) => {
            if let (Change::Pick(chosen), Some(portion)) = (change, after.program.get_mut(place)) {
                portion.building_type = types().nth(*chosen).copied().unwrap_or(portion.building_type);
            }
            join(&mut after.program);
        }
        (Part::Portion, SHARE) => {
            if let Some(portion) = after.program.get(place) {
                let share = share_field().read(f64::from(portion.share_ppm), change, units)?;
                set_share(&mut after.program, place, share as u32);
            }
        }
        _ => change_side(&found, &mut after, key, change, units)?,
    }
    Ok(after)
}

/// Gives a portion a share. What it takes beyond what is left without use, the others give in proportion; what it gives
/// up is left without use.
pub(super) fn set_share(program: &mut [Portion], place: usize, share_ppm: u32) {
    let share_ppm = share_ppm.min(WHOLE_PPM);
    if let Some(portion) = program.get_mut(place) {
        portion.share_ppm = share_ppm;
    }
    let sum: u32 = program.iter().map(|portion| portion.share_ppm).sum();
    if sum > WHOLE_PPM {
        scale(program, Some(place), sum - share_ppm, WHOLE_PPM - share_ppm);
    }
}

/// Fills the program up to the whole, all in proportion.
pub(super) fn fill(program: &mut [Portion]) {
    let sum = program.iter().map(|portion| portion.share_ppm).sum();
    scale(program, None, sum, WHOLE_PPM);
}

/// Scales shares that sum to `sum`, but for one, so that they sum to `to` exactly: rounded down, and what that leaves
/// over goes to the first.
fn scale(program: &mut [Portion], but: Option<usize>, sum: u32, to: u32) {
    let mut left = to;
    let mut first = None;
    for (place, portion) in program.iter_mut().enumerate() {
        if Some(place) == but {
            continue;
        }
        let scaled = (u64::from(portion.share_ppm) * u64::from(to)).checked_div(u64::from(sum));
        portion.share_ppm = scaled.unwrap_or_default() as u32;
        left = left.saturating_sub(portion.share_ppm);
        first = first.or(Some(place));
    }
    if let Some(portion) = first.and_then(|first| program.get_mut(first)) {
        portion.share_ppm += left;
    }
}

/// Joins portions of one building type.
fn join(program: &mut Vec<Portion>) {
    let mut joined: Vec<Portion> = Vec::with_capacity(program.len());
    for portion in program.drain(..) {
        match joined
            .iter_mut()
            .find(|held| held.building_type == portion.building_type)
        {
            Some(held) => held.share_ppm += portion.share_ppm,
            None => joined.push(portion),
        }
    }
    *program = joined;
}

fn change_side(
    found: &Found<'_>,
    after: &mut UseMark,
    key: Key,
    change: &Change,
    units: UnitSystem,
) -> Result<(), String> {
    let Some(side) = found.face.and_then(|face| face.sides.get(usize::from(key.index))) else {
        return Ok(());
    };
    let place = match found.said(key.index) {
        Some(place) => place,
        None => {
            let fresh = fresh_side(found, side);
            after.sides.extend(fresh);
            after.sides.len().saturating_sub(1)
        }
    };
    if let (FRONTING, Change::Pick(0)) = (key.field, change) {
        if place < after.sides.len() {
            after.sides.remove(place);
        }
        return Ok(());
    }
    let Some(said) = after.sides.get_mut(place) else {
        return Ok(());
    };
    let is_cleared = matches!(change, Change::Text(text) if text.trim().is_empty());
    match (key.field, change) {
        (FRONTING, Change::Pick(chosen)) => {
            let chosen = FRONTINGS.get(*chosen).and_then(|(fronting, _)| *fronting);
            said.fronting = chosen.unwrap_or(said.fronting);
        }
        (OWN_TYPE, Change::Pick(chosen)) => {
            let mut types = found.document.building_types.keys();
            said.building_type = chosen.checked_sub(1).and_then(|chosen| types.nth(chosen)).copied();
        }
        (SHOPFRONT, Change::Pick(is_on)) => said.shopfront = *is_on == 1,
        (STORIES, _) if is_cleared => said.stories = None,
        (STORIES, _) => {
            let stored = f64::from(said.stories.unwrap_or(0));
            said.stories = Some(stories_field().read(stored, change, units)? as u8);
        }
        (SETBACK, _) if is_cleared => said.setback_mm = None,
        (SETBACK, _) => {
            let stored = said.setback_mm.map_or(USUAL_SETBACK_MM, f64::from);
            said.setback_mm = Some(setback_field().read(stored, change, units)? as u32);
        }
        _ => {}
    }
    Ok(())
}

/// What a side would say that changes nothing yet: lots front on it as the street's section lets them.
fn fresh_side(found: &Found<'_>, side: &Side) -> Option<SideUse> {
    let (street, hand) = side.street?;
    let fronts = section_lets_front(&found.fabric.lines, side);
    Some(SideUse {
        street: found.fabric.lines.streets.get(street as usize)?.mark,
        hand,
        at: middle_of(&found.fabric.arrangement, side)?,
        fronting: if fronts { Fronting::Front } else { Fronting::None },
        building_type: None,
        shopfront: false,
        stories: None,
        setback_mm: None,
    })
}
