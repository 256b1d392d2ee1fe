//! The land that a figure or a part of the land bar counted: outlines to show on the drawing.
//!
//! Figures of homes, people, jobs, floor and lots point out the lots that have them; parts of the land bar the blocks,
//! places and land held back that they count. Of a block with several uses all of its land is shown for each, and of a
//! soft area all of it, also where blocks lie in it. Streets are shown by their lines along the land of the site. What is
//! counted along streets is found in `counted_streets`.

use hobnail_core::fabric::constraints::{Constraint, HELD_BY, LandSwitch};
use hobnail_core::fabric::lots::{LineBeside, Lot};
use hobnail_core::figures::graph::{LeafKind, NodeIndex, Operator};
use hobnail_core::measures::density::price_bands;
use hobnail_core::measures::form::phase_entry_id;
use hobnail_core::measures::land::count::{place_held_by, place_of_place, place_of_use};
use hobnail_core::measures::land::{constraint_kinds, parts};
use hobnail_core::measures::palette::type_entry_id;
use hobnail_core::plan::{BuildingType, Footprint, Mark, MarkId, PhaseId};
use hobnail_core::say;
use hobnail_core::study::Study;

use super::places::Place;
use super::{App, counted_streets, land_bar};
use crate::canvas::scene_of::{meters, run_of};

/// What of a lot is counted.
#[derive(Clone, Copy)]
enum What {
    Homes,
    Jobs,
    Floor,
    Lots,
}

/// What figures count on lots, by how their ids begin.
const ON_LOTS: [(What, &str); 4] = [
    (
        What::Homes,
        "homes. people. density.homes density.residential program.drawn.homes mix.reached sun.lots sun.solar_lots",
    ),
    (
        What::Jobs,
        "jobs. density.other_lot program.drawn.shop program.drawn.work",
    ),
    (
        What::Floor,
        "density.floor density.other_floor density.built density.parking mix.",
    ),
    (What::Lots, "lots. land.planted_in_lots"),
];

/// The parts of the land bar, as [`parts`] lists them.
const CIVIC: usize = 2;
const GREEN: usize = 3;
const STREETS: usize = 5;
const UNUSED: usize = 6;

/// What figures count of the site's land, by how their ids begin.
const OF_LAND: [(OfLand, &str); 12] = [
    (OfLand::Part(STREETS), "land.right_of_way land.standing_right_of_way"),
    (OfLand::Part(UNUSED), "land.without_use"),
    (OfLand::Part(CIVIC), "land.school program.school program.drawn.school"),
    (
        OfLand::Part(GREEN),
        "land.park land.squares land.open_space program.drawn.park",
    ),
    (OfLand::Held(None), "land.under_constraints land.constraints"),
    (OfLand::Held(Some(LandSwitch::Buildable)), "land.held_back"),
    (OfLand::Held(Some(LandSwitch::CountsInSite)), "land.not_in_site"),
    (
        OfLand::Held(Some(LandSwitch::CountsInBuildable)),
        "land.not_in_buildable",
    ),
    (OfLand::Held(Some(LandSwitch::Walkable)), "land.not_walkable"),
    (OfLand::Soft, "land.soft land.of_soft_areas land.lots_in_soft_areas"),
    (
        OfLand::Site,
        "land.site land.bar land.counted land.by_source density.site_land",
    ),
    (OfLand::Buildable, "land.buildable density.buildable_land"),
];

/// Land of the site.
#[derive(Clone, Copy)]
enum OfLand {
    /// What a part of the land bar counts.
    Part(usize),
    /// What something holds back that says no to this, or to anything.
    Held(Option<LandSwitch>),
    /// Soft areas.
    Soft,
    /// All of it.
    Site,
    /// What may be built upon.
    Buildable,
}

/// What a figure counts by such a table, whose beginnings are parted by spaces; the first that fits.
pub(super) fn what_of<T: Copy>(table: &[(T, &str)], figure: &str) -> Option<T> {
    let begins = |beginnings: &str| beginnings.split(' ').any(|begin| figure.starts_with(begin));
    table.iter().find(|(_, held)| begins(held)).map(|(what, _)| *what)
}

/// The id that stands for a part of the land bar where figures are pointed out.
#[must_use]
pub fn part_id(part: &str) -> String {
    [land_bar::FIGURE, "/", part].concat()
}

/// The id of one row of a figure's table, by its cell, where figures are pointed out.
#[must_use]
pub fn row_id(figure: &str, cell: usize) -> String {
    [figure, "#", &cell.to_string()].concat()
}

/// The figure of such an id, and the cell of its row; none for the figure as a whole.
#[must_use]
pub fn parted_row(asked: &str) -> (&str, Option<usize>) {
    let parts = asked.split_once('#');
    let row = parts.and_then(|(figure, cell)| Some((figure, Some(cell.parse().ok()?))));
    row.unwrap_or((asked, None))
}

/// Where a row stands: the id of each axis, and that of its entry there.
pub(super) type Entries = Vec<(String, String)>;

/// Where a row of a figure stands.
fn entries_of(study: &Study, index: NodeIndex, cell: usize) -> Entries {
    let graph = study.graph();
    let axes = graph.node(index).axes.iter().map(|axis| graph.axis(*axis).id.clone());
    let place = study.evaluation_for(index).place(index, cell);
    axes.zip(place.into_iter().map(|entry| entry.id)).collect()
}

/// Adds the land that a figure counted, or a row of it ([`row_id`]), or that a part of the land bar did ([`part_id`]);
/// nothing for others, nor for a row whose kind can not be told apart on the drawing.
pub fn show(study: &Study, asked: &str, place: &mut Place) {
    let (figure, cell) = parted_row(asked);
    let part = figure
        .strip_prefix(land_bar::FIGURE)
        .and_then(|rest| rest.strip_prefix('/'));
    if let Some(part) = part.and_then(|part| parts().iter().position(|(id, _)| *id == part)) {
        return show_part(study, part, place);
    }
    let Some(index) = study.graph().index(figure) else {
        return;
    };
    // A setting or a factor is none of the drawing's.
    let is_given = matches!(
        study.graph().node(index).operator,
        Operator::Leaf(LeafKind::Chosen | LeafKind::Factor)
    );
    if is_given {
        return;
    }
    let entries = cell.map(|cell| entries_of(study, index, cell)).unwrap_or_default();
    if let Some(what) = what_of(&ON_LOTS, figure) {
        return show_lots(study, what, &entries, place);
    }
    match what_of(&OF_LAND, figure) {
        Some(OfLand::Held(switch)) => {
            let says_no = |held: &Constraint| switch.is_none_or(|switch| held.says_no_to(switch));
            show_held(study, |held| says_no(held) && is_held_by(held, &entries), place);
        }
        None => counted_streets::show(study, figure, &entries, place),
        Some(_) if !entries.is_empty() => {
            let entry = entries.first().filter(|(axis, _)| axis == "land_part");
            let part = entry.and_then(|(_, entry)| parts().iter().position(|(id, _)| id == entry));
            if let Some(part) = part {
                show_part(study, part, place);
            }
        }
        Some(OfLand::Part(part)) => show_part(study, part, place),
        Some(OfLand::Soft) => show_soft(study, &|_, _, _| true, place),
        Some(OfLand::Site) => place.lands.push(meters(&study.document().site.boundary)),
        Some(OfLand::Buildable) => {
            let faces = study.fabric().faces.iter().filter(|face| face.is_in_site);
            let rings = faces.flat_map(|face| face.land.pieces.iter().flatten());
            place.lands.extend(rings.map(|ring| meters(ring)));
        }
    }
}

/// Whether a row stands for what this holds back.
fn is_held_by(held: &Constraint, entries: &Entries) -> bool {
    let kinds = constraint_kinds();
    let kind = HELD_BY.iter().position(|known| *known == held.held_by);
    let id = kind.and_then(|kind| kinds.get(kind)).map(|(id, _)| *id);
    entries
        .iter()
        .all(|(axis, entry)| axis == "constraint_kind" && id == Some(entry.as_str()))
}

/// Whether a row stands for lots of such a type in such a phase.
fn is_built_as(study: &Study, entries: &Entries, id: &str, held: &BuildingType, phase: Option<PhaseId>) -> bool {
    let first = || study.document().phases.keys().next().copied();
    entries.iter().all(|(axis, entry)| match axis.as_str() {
        "building_type" => entry == id,
        "price_band" => price_bands()
            .get(held.price_band as usize)
            .is_some_and(|(id, _)| id == entry),
        "phase" => phase.or_else(first).is_none_or(|phase| phase_entry_id(phase) == *entry),
        _ => false,
    })
}

impl App {
    /// The lots beside the line that is selected, where it asks something of them.
    #[must_use]
    pub fn lots_beside(&self) -> Option<Place> {
        let mark = self.selected_mark()?;
        let mut place = Place::default();
        let lots = lots_beside(&self.study, mark);
        place.lands.extend(lots.iter().map(|(_, lot)| meters(&lot.outline)));
        (place.count() > 0).then_some(place)
    }
}

/// The lots that stand beside a fence or a property line that asks something of them, each behind the mark whose use it is.
#[must_use]
pub fn lots_beside<'a>(study: &'a Study, mark: &Mark) -> Vec<(MarkId, &'a Lot)> {
    let Some(line) = LineBeside::all(&mut std::iter::once(mark)).pop() else {
        return Vec::new();
    };
    let faces = study.painted().iter();
    let lots = faces.flat_map(|face| face.laid.lots.iter().map(|lot| (face.mark, lot)));
    lots.filter(|(_, lot)| line.is_beside(&lot.outline)).collect()
}

/// What is to be heeded of lots whose building finds no room; nothing where all do.
#[must_use]
pub fn without_room<'a>(study: &Study, lots: impl Iterator<Item = &'a Lot>) -> Option<String> {
    let count = lots.filter(|lot| lot.lacks_room(study.document())).count();
    (count > 0).then(|| say!("page-lots-without-room", count = count))
}

fn has(study: &Study, what: What, held: &BuildingType) -> bool {
    match what {
        What::Homes => held.homes_per_lot > 0,
        What::Jobs => study.jobs_on_lot(held) > 0.0,
        What::Floor => !held.stories.is_empty(),
        What::Lots => true,
    }
}

fn show_lots(study: &Study, what: What, entries: &Entries, place: &mut Place) {
    let painted = study.painted();
    let is_such = |id: &str, held: &BuildingType, phase: Option<PhaseId>| {
        has(study, what, held) && is_built_as(study, entries, id, held, phase)
    };
    for face in painted.iter() {
        for (lot, built) in face.laid.lots.iter().zip(&face.built) {
            let held = painted.palette.built_type(*built);
            if held.is_some_and(|built| is_such(&built.entry_id, &built.held, face.phase)) {
                place.lands.push(meters(&lot.outline));
            }
        }
    }
    show_soft(study, &is_such, place);
}

/// Soft areas whose program has any such building type.
fn show_soft(study: &Study, is_such: &dyn Fn(&str, &BuildingType, Option<PhaseId>) -> bool, place: &mut Place) {
    let seen = study.seen();
    let marks = seen.alternatives.get(&study.alternative()).map(|found| &found.marks);
    for (_, mark) in marks.into_iter().flatten() {
        if let Mark::SoftArea(area) = mark {
            let types = area.program.iter().map(|portion| portion.building_type);
            let mut types = types.filter_map(|id| Some((id, seen.building_types.get(&id)?)));
            if types.any(|(id, held)| is_such(&type_entry_id(id), held, area.phase)) {
                place.lands.push(meters(&area.outline));
            }
        }
    }
}

/// Land that something holds back, where it is such.
fn show_held(study: &Study, is_such: impl Fn(&Constraint) -> bool, place: &mut Place) {
    let seen = study.seen();
    let is_left_out = |owner| study.scope().left_out_owners.contains(&owner);
    let marks = seen.alternatives.get(&study.alternative()).map(|found| &found.marks);
    for (_, mark) in marks.into_iter().flatten() {
        if let Some(held) = Constraint::of(mark, is_left_out).filter(&is_such) {
            place.lands.push(meters(&held.outline));
        }
    }
}

fn show_part(study: &Study, part: usize, place: &mut Place) {
    let (fabric, seen) = (study.fabric(), study.seen());
    for face in fabric.faces.iter().filter(|face| face.is_in_site) {
        if part == STREETS {
            for side in face.sides.iter().filter(|side| side.street.is_some()) {
                place.lines.push(meters(&run_of(fabric, &side.half_edges)));
            }
            continue;
        }
        let painted = study.painted().iter().find(|held| held.face == face.id);
        let is_here = painted.map_or(part == UNUSED, |held| {
            let mut types = held.land_m2.iter().filter_map(|(id, _)| seen.building_types.get(id));
            types.any(|held| place_of_use(held.land_use) == part)
        });
        if is_here {
            place
                .lands
                .extend(face.land.pieces.iter().flatten().map(|ring| meters(ring)));
        }
    }
    let marks = seen.alternatives.get(&study.alternative()).map(|found| &found.marks);
    for (_, mark) in marks.into_iter().flatten() {
        if let Mark::Place(drawn) = mark
            && let Footprint::Area(outline) = &drawn.footprint
            && part != UNUSED
            && place_of_place(drawn.kind) == part
        {
            place.lands.push(meters(outline));
        }
    }
    let is_of_part = |held: &Constraint| held.says_no_to(LandSwitch::Buildable) && place_held_by(held.held_by) == part;
    show_held(study, is_of_part, place);
    show_soft(study, &|_, held, _| place_of_use(held.land_use) == part, place);
}

#[cfg(test)]
mod tests {
    use super::super::places;
    use super::super::tests::with_homes;
    use super::*;

    fn lands(app: &App, figure: &str) -> usize {
        places::of_figure(app.study(), figure).map_or(0, |place| place.lands.len())
    }

    #[test]
    fn figures_of_homes_point_out_as_many_lots_as_hold_them() {
        let app = with_homes();
        let painted = app.study().painted();
        let homes: f64 = painted.iter().map(|face| painted.homes_on(face)).sum();
        let each = painted
            .iter()
            .flat_map(|face| &face.built)
            .filter_map(|id| painted.palette.get(*id));
        let each = each.map(|held| f64::from(held.homes_per_lot)).fold(0.0, f64::max);
        for figure in [
            "homes.count",
            "homes.of_asked",
            "density.homes_per_buildable",
            "people.count",
        ] {
            let found = lands(&app, figure) as f64;
            assert!(
                found > 0.0 && (found * each - homes).abs() < 0.5,
                "{figure}: {found} lots, {homes} homes"
            );
        }
        assert_eq!(lands(&app, "homes.per_lot"), 0, "a setting");
        assert_eq!(lands(&app, "people.household_scale"), 0, "a factor");
        assert_eq!(lands(&app, "walk.center_5min_homes_share"), 0);
    }

    #[test]
    fn parts_of_the_land_bar_point_out_the_land_they_count() {
        let app = with_homes();
        let part = |id: &str| places::of_figure(app.study(), &part_id(id)).unwrap_or_default();
        assert_eq!(
            (part("homes").lands.len(), part("homes").lines.len()),
            (1, 0),
            "the block"
        );
        let streets = part("streets");
        assert!(streets.lands.is_empty() && streets.lines.len() >= 4, "its four sides");
        for (x_m, y_m) in streets.lines.iter().flatten() {
            let off_m = (x_m.abs() - 100.0).abs().min((y_m.abs() - 40.0).abs());
            assert!(off_m < 1e-9, "on a street: {x_m} {y_m}");
        }
        assert_eq!(
            part("unused").lands.len(),
            2,
            "the rest of the site: its boundary, and a hole in it"
        );
        for none in ["shops_and_work", "civic", "green", "water", "no such part"] {
            assert_eq!(part(none), Place::default(), "{none}");
        }
        let bar = super::land_bar::land_bar(app.study(), app.drawn());
        for shown in &bar.parts {
            assert!(
                part(&shown.id).count() > 0,
                "what the bar shows is somewhere: {}",
                shown.id
            );
        }
    }

    #[test]
    fn every_part_of_a_drawn_village_is_somewhere() {
        let text = include_str!("../../../sample-sketches/compact-village.geojson");
        let opened = hobnail_core::exchange::plan_file::read(text.as_bytes()).expect("a sample");
        let app = App::open(opened.document).expect("it opens");
        let bar = super::land_bar::land_bar(app.study(), app.drawn());
        assert!(bar.parts.len() > 4, "it has many");
        for shown in &bar.parts {
            let place = places::of_figure(app.study(), &part_id(&shown.id));
            assert!(place.is_some_and(|place| place.count() > 0), "{}", shown.id);
        }
        for figure in [
            "homes.count",
            "jobs.count",
            "density.floor_area",
            "lots.by_building_type",
        ] {
            assert!(lands(&app, figure) > 0, "{figure}");
        }
        assert!(lands(&app, "jobs.count") < lands(&app, "density.floor_area"));
    }
}
