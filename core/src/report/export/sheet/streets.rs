//! Streets at true width: rights-of-way, planting, carriageways between curbs, lanes, center lines, trees.

use super::{FINE_MM, HEAVY_MM, Item, LayerId, Look, MEDIUM_MM, Sheet, Turn, filled, lined, rings};
use crate::fabric::land::land_key;
use crate::fabric::regions::{Ring, twice_area_mm2, united};
use crate::fabric::{FaceId, Outliner};
use crate::number;
use crate::plan::flatten::arc_at;
use crate::plan::street::{Status, Vertex};
use crate::plan::{Mark, PlanPoint};
use crate::report::drawing::offset::{beside, shortened, spaced};
use crate::report::drawing::profile::{Band, Profile};
use crate::report::drawing::tones;
use crate::report::drawing::ways::{Line, Standing, Way, ways};
use crate::study::Study;

/// Usual spacing of street trees, in meters (common practice, no source), and the radius a crown is drawn with.
const TREES_M: (f64, f64) = (9.0, 2.3);

/// Corners of the circle that joins carriageways where streets meet.
const JOINT_CORNERS: u32 = 48;

/// All streets, undermost first.
pub(super) fn add_streets(study: &Study, sheet: &mut Sheet) {
    let edged = |color: u32, edge: (u32, f64)| Look {
        stroke: Some(edge),
        ..filled(color)
    };
    let right_of_ways = rings(&right_of_ways(study));
    if !right_of_ways.is_empty() {
        let look = edged(tones::WALK, (tones::INK, MEDIUM_MM));
        sheet.add(LayerId::RightOfWay, look, vec![Item::Rings(right_of_ways)]);
    }
    let document = study.seen();
    let profiles: Vec<Profile> = document.street_sections.values().map(Profile::of).collect();
    let laid = ways(&document, study.alternative(), study.fabric(), &profiles);
    let mut carriageways: Vec<Ring> = Vec::new();
    let (mut planting, mut bicycle, mut medians) = (Vec::new(), Vec::new(), Vec::new());
    let (mut lanes, mut paths) = (Vec::new(), Vec::new());
    for (way, profile) in built(&laid.ways, &profiles) {
        let clear = shortened(&way.line, way.clear_start_m, way.clear_end_m);
        let strip = |band: &Band| Item::Band(beside(&clear, band.left_m), band.width_m);
        let Some(paved) = profile.carriageway else {
            paths.push(Item::Line(way.line.clone()));
            continue;
        };
        carriageways.extend(ring_of_band(&way.line, paved));
        if clear.is_empty() {
            continue;
        }
        let is_inside = |band: &&Band| (band.left_m - paved.left_m).abs() < paved.width_m / 2.0;
        planting.extend(profile.planted.iter().filter(|band| !is_inside(band)).map(strip));
        medians.extend(profile.planted.iter().filter(is_inside).map(strip));
        bicycle.extend(profile.bicycle.iter().map(strip));
        lanes.extend(
            profile
                .lane_lines_m
                .iter()
                .map(|left_m| Item::Line(beside(&clear, *left_m))),
        );
    }
    let joints = laid
        .joints
        .iter()
        .filter_map(|joint| ring_of_circle(joint.at, joint.paved_m?));
    carriageways.extend(joints);
    sheet.add(LayerId::Planting, filled(tones::PLANTED), planting);
    let carriageways = rings(&united(&carriageways));
    if !carriageways.is_empty() {
        let look = edged(tones::PAVED, (tones::SOFT_INK, FINE_MM));
        sheet.add(LayerId::Carriageway, look, vec![Item::Rings(carriageways)]);
    }
    sheet.add(LayerId::Lanes, filled(tones::BICYCLE), bicycle);
    sheet.add(LayerId::Lanes, filled(tones::PLANTED), medians);
    sheet.add(LayerId::Lanes, lined(0xFF_FF_FF, FINE_MM, "1.6 1.6"), lanes);
    let (mut lines, mut removed) = (Vec::new(), Vec::new());
    super::land::for_each(study, &document, |mark| {
        if let Mark::Street(street) = mark {
            let is_removed = street.status == Status::Removed;
            let items = if is_removed { &mut removed } else { &mut lines };
            items.push(Item::Arcs(turns(&street.line)));
        }
    });
    sheet.add(
        LayerId::CenterLines,
        lined(tones::SOFT_INK, FINE_MM / 2.0, "3 .8 .5 .8"),
        lines,
    );
    sheet.add(LayerId::CenterLines, lined(tones::SOFT_INK, MEDIUM_MM, ".3 1"), paths);
    sheet.add(
        LayerId::Removed,
        lined(tones::REMOVED, HEAVY_MM / 2.0, ".8 1.3"),
        removed,
    );
}

/// Street trees.
pub(super) fn add_trees(study: &Study, sheet: &mut Sheet) {
    let document = study.seen();
    let profiles: Vec<Profile> = document.street_sections.values().map(Profile::of).collect();
    let laid = ways(&document, study.alternative(), study.fabric(), &profiles);
    let mut crowns = Vec::new();
    for (way, profile) in built(&laid.ways, &profiles) {
        let clear = shortened(&way.line, way.clear_start_m, way.clear_end_m);
        for left_m in &profile.tree_rows_m {
            let row = spaced(&beside(&clear, *left_m), TREES_M.0);
            crowns.extend(row.into_iter().map(|at| Item::Circle(at, TREES_M.1)));
        }
    }
    let look = Look {
        fill: Some((tones::CROWN, 0.8)),
        stroke: Some((tones::CROWN_LINE, FINE_MM / 2.0)),
        ..Look::default()
    };
    sheet.add(LayerId::Trees, look, crowns);
}

/// The streets that are there once the plan is built, each with its profile.
fn built<'a>(ways: &'a [Way], profiles: &'a [Profile]) -> impl Iterator<Item = (&'a Way, &'a Profile)> {
    let held = ways.iter().filter(|way| way.standing != Standing::Removed);
    held.filter_map(|way| Some((way, profiles.get(way.profile)?)))
}

/// The land under rights-of-way: what is taken of every enclosed area and of the land around them all.
fn right_of_ways(study: &Study) -> Vec<Vec<Ring>> {
    let fabric = study.fabric();
    let arrangement = &fabric.arrangement;
    let mut outliner = Outliner::new(arrangement);
    let mut strips: Vec<Ring> = Vec::new();
    for face in arrangement.bounded_faces().chain([FaceId::OUTSIDE]) {
        let half_width_mm = |half_edge| fabric.half_width_mm(half_edge);
        let key = land_key(arrangement, &mut outliner, face, half_width_mm, &[]);
        strips.extend(key.strips().iter().cloned().map(counterclockwise));
    }
    united(&strips)
}

fn counterclockwise(mut ring: Ring) -> Ring {
    if twice_area_mm2(&ring) < 0 {
        ring.reverse();
    }
    ring
}

/// The ring around a band along a line, on the grid.
fn ring_of_band(line: &Line, band: Band) -> Option<Ring> {
    let mut around = beside(line, band.left_m - band.width_m / 2.0);
    around.extend(beside(line, band.left_m + band.width_m / 2.0).into_iter().rev());
    on_grid(around)
}

fn ring_of_circle((x_m, y_m): (f64, f64), radius_m: f64) -> Option<Ring> {
    let corner = |corner: u32| {
        let angle_rad = std::f64::consts::TAU * f64::from(corner) / f64::from(JOINT_CORNERS);
        (
            x_m + radius_m * number::cos(angle_rad),
            y_m + radius_m * number::sin(angle_rad),
        )
    };
    on_grid((0..JOINT_CORNERS).map(corner).collect())
}

fn on_grid(line: Line) -> Option<Ring> {
    let points: Option<Ring> = line.into_iter().map(|(x, y)| PlanPoint::checked_from_m(x, y)).collect();
    points.map(counterclockwise)
}

/// A centerline with its rounded corners as arcs.
fn turns(line: &[Vertex]) -> Vec<Turn> {
    let mut turns = Vec::with_capacity(line.len());
    for (place, vertex) in line.iter().enumerate() {
        let (x, y) = vertex.point.to_m();
        let arc = arc_at(line, place).map(|arc| (arc.points.first().copied(), arc.points.last().copied()));
        let Some((Some(first), Some(last))) = arc else {
            turns.push((x, y, 0.0));
            continue;
        };
        let ((from_x, from_y), (to_x, to_y)) = (first.to_m(), last.to_m());
        let (ux, uy, vx, vy) = (x - from_x, y - from_y, to_x - x, to_y - y);
        let turn_rad = number::atan2(ux * vy - uy * vx, ux * vx + uy * vy);
        turns.push((from_x, from_y, number::tan(turn_rad / 4.0)));
        turns.push((to_x, to_y, 0.0));
    }
    turns
}
