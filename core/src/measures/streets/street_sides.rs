//! What streets are like for whoever walks along or across them: buildings that enclose them, rows of trees, the widest
//! crossing, and how steep the ground is.
//!
//! - A side is *enclosed* along the lots whose building is at least two thirds as high as its front is far from the
//!   centerline. Heights are those of the building types' stories; roofs are not known. Lots at the head of a dead end
//!   are left out.
//! - A side is *lined with trees* where its street section has planting between the walk and the traffic, and trees stand
//!   50 feet apart at most ([`TREE_SPACING`]); driveways and what grows badly are not known.
//! - The widest crossing is the widest carriageway of a street inside: from the first strip for parking, bicycles or
//!   traffic to the last, medians with them. A signal's times follow from it.
//! - Grades are those of the ground along streets, alleys and paths, on pieces of at most 20 m; earthworks and bridges
//!   are not known.

use super::site_streets::{SiteStreets, Way, faces_in_site, points_of};
use crate::fabric::Fabric;
use crate::figures::expression::{constant, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::leaf::Cell;
use crate::figures::unit;
use crate::measures::frontage::Painted;
use crate::measures::walk_network::ground::Ground;
use crate::measures::worked::{self, Worked};
use crate::message;
use crate::number;
use crate::plan::land::Hand;
use crate::plan::{BuildingType, Document, PlanPoint, StreetRole, StreetSection, StripKind};
use crate::say;

/// How many [`grades`] there are.
pub const GRADES: usize = 3;

/// Classes of grade: the most of a walk that needs no ramp, the most of a ramp, and more.
///
/// Source: ICC A117.1, 403.3, a walking surface rises 1 in 20 at most; 2010 ADA Standards, 405.2, a ramp 1 in 12 (both
/// read). A sidewalk may follow its street's grade.
#[must_use]
pub fn grades() -> [(&'static str, &'static str); GRADES] {
    [
        ("up_to_1_in_20", say!("measures-grade-20")),
        ("up_to_1_in_12", say!("measures-grade-12")),
        ("steeper", say!("measures-grade-steeper")),
    ]
}

/// The setting of how far apart street trees stand, in meters.
pub const TREE_SPACING: &str = "streets.tree_spacing";

/// As far apart as the drawing shows them.
pub const TREE_SPACING_M: f64 = 9.0;

/// The farthest that trees along a street may stand apart: 50 feet, whatever is printed beside it in meters.
///
/// Source: LEED v4 for Neighborhood Development, credit Tree-lined and shaded streetscapes, as a page on the credit tells
/// (read).
const MOST_TREE_SPACING_M: f64 = 15.24;

/// Grades are taken over pieces no longer than this, as walking times are: 20 m. Longer levels out a short ramp; shorter
/// reads the steps between samples of the ground.
const LONGEST_PIECE_M: f64 = 20.0;

/// What is counted here.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StreetSides {
    /// Frontage that buildings enclose, in meters.
    pub enclosed_m: f64,
    /// Frontage lined with trees, in meters.
    pub lined_m: f64,
    /// The widest crossing in meters; `None` without a street.
    pub widest_crossing_m: Option<f64>,
    /// Length by grade in meters, in the order of [`grades`]; `None` where the ground is not known.
    pub by_grade_m: Option<[f64; GRADES]>,
}

impl StreetSides {
    /// Counts the streets of a site. Cost: linear in lots, links and pieces of 20 m.
    #[must_use]
    pub fn of(document: &Document, fabric: &Fabric, streets: &SiteStreets, painted: &Painted) -> Self {
        let ground = document.topography.as_ref().and_then(Ground::of);
        let by_grade_m = ground.map(|ground| {
            let mut by_grade_m = [0.0; GRADES];
            for (place, _) in streets.inside() {
                add_grades(fabric, place, &ground, &mut by_grade_m);
            }
            by_grade_m
        });
        let widths_mm = streets
            .inside()
            .filter(|(_, link)| link.way == Way::Street)
            .filter_map(|(_, link)| {
                let section = document
                    .street_sections
                    .get(&fabric.lines.streets[link.street as usize].section)?;
                Some(carriageway_mm(section))
            });
        Self {
            enclosed_m: enclosed_m(fabric, painted),
            lined_m: lined_m(document, fabric, streets),
            widest_crossing_m: widths_mm.max().map(|width_mm| f64::from(width_mm) / 1e3),
            by_grade_m,
        }
    }

    /// Sets the leaves of this file.
    pub(super) fn set(&self, inputs: &mut Inputs) {
        let unknown = |reason: &str| Cell::Unknown(reason.to_owned());
        inputs.set_counted("streets.enclosed", numbers(&[self.enclosed_m]), Some("frontage"));
        inputs.set_counted("streets.tree_lined", numbers(&[self.lined_m]), Some("frontage"));
        let widest = self.widest_crossing_m;
        let widest = widest.map_or_else(|| unknown(say!("measures-no-street-inside")), Cell::Number);
        inputs.set_counted("streets.carriageway", vec![widest], Some("streets"));
        let by_grade = self.by_grade_m.map_or_else(
            || vec![unknown(say!("measures-no-ground")); GRADES],
            |by_grade_m| numbers(&by_grade_m),
        );
        inputs.set_counted("streets.graded", by_grade, Some("streets"));
    }
}

const BY_GRADE: &[&str] = &["grade"];

const WORKED: [Worked; 6] = [
    Worked::quotient(
        "streets.enclosed_share",
        message!("measures-enclosed-share"),
        unit::SHARE,
        "streets.enclosed",
        "streets.frontage_total",
    ),
    Worked::quotient(
        "streets.tree_lined_share",
        message!("measures-tree-lined-share"),
        unit::SHARE,
        "streets.tree_lined",
        "streets.frontage_total",
    ),
    Worked::quotient(
        "streets.grade_share",
        message!("measures-grade-share"),
        unit::SHARE,
        "streets.graded",
        "streets.graded_total",
    )
    .over(BY_GRADE),
    Worked::quotient(
        "walk.crossing_clearance",
        message!("measures-crossing-clearance"),
        unit::SECONDS,
        "streets.carriageway",
        "walking.crossing_design_speed",
    ),
    Worked::sum(
        "walk.crossing_length",
        message!("measures-crossing-length"),
        unit::LENGTH,
        "streets.carriageway",
        "walking.push_button",
    ),
    Worked::quotient(
        "walk.crossing_whole",
        message!("measures-crossing-whole"),
        unit::SECONDS,
        "walk.crossing_length",
        "walking.crossing_check_speed",
    ),
];

/// The least time a signal says walk before it clears.
///
/// Source: questions and answers of the Federal Highway Administration on section 4E.06 of the Manual on Uniform Traffic
/// Control Devices, 2009, as a road forum quotes them (read).
const LEAST_WALK_S: f64 = 7.0;

/// Declares what is counted here. Needs the frontage of [`super::declare`].
pub(super) fn declare(graph: &mut GraphBuilder) {
    graph.fixed_axis("grade", say!("measures-grade"), &grades());
    for (id, title) in [
        ("streets.enclosed", say!("measures-enclosed")),
        ("streets.tree_lined", say!("measures-tree-lined")),
        ("streets.carriageway", say!("measures-carriageway")),
    ] {
        let _ = graph.counted(id, title, unit::LENGTH);
    }
    let _ = graph
        .counted("streets.graded", say!("measures-graded"), unit::LENGTH)
        .over(BY_GRADE);
    for (id, title, unit) in [
        (
            "walking.crossing_design_speed",
            say!("measures-crossing-speed"),
            unit::WALKING_SPEED,
        ),
        (
            "walking.crossing_check_speed",
            say!("measures-crossing-check-speed"),
            unit::WALKING_SPEED,
        ),
        ("walking.push_button", say!("measures-push-button"), unit::LENGTH),
    ] {
        let _ = graph.factor(id, title, unit);
    }
    graph
        .figure("streets.length_by_grade", say!("measures-length-grade"), unit::LENGTH)
        .over(BY_GRADE)
        .formula(figure("streets.graded"));
    graph
        .figure("streets.graded_total", say!("measures-graded-total"), unit::LENGTH)
        .sum("streets.graded", BY_GRADE);
    worked::declare(graph, &WORKED);
    graph
        .figure("walk.crossing_walk", say!("measures-crossing-walk"), unit::SECONDS)
        .formula(
            (figure("walk.crossing_whole") - figure("walk.crossing_clearance"))
                .at_least(constant(LEAST_WALK_S, unit::SECONDS)),
        );
}

/// Whether a building of this height encloses a street whose centerline is so far from its front: at least 1 to 1.5, to
/// the millimeter that lots are laid on.
///
/// Source: LEED v4 for Neighborhood Development, prerequisite Walkable streets (read in a draft and in slides).
fn encloses(height_mm: f64, distance_mm: f64) -> bool {
    height_mm * 1.5 >= distance_mm - 1.0
}

fn enclosed_m(fabric: &Fabric, painted: &Painted) -> f64 {
    let mut enclosed_um = 0_u64;
    for painted_face in painted.iter() {
        let Some(face) = fabric.face(painted_face.face) else {
            continue;
        };
        for (lot, built) in painted_face.laid.lots.iter().zip(&painted_face.built) {
            let side = face.sides.get(lot.side as usize).and_then(|side| side.street);
            let line = side.and_then(|(street, _)| fabric.lines.streets.get(street as usize));
            let Some(line) = line.filter(|line| !line.is_outside && is_street(line.role)) else {
                continue;
            };
            if lot.is_at_head || lot.footprint.is_empty() {
                continue;
            }
            // How far outline and footprint reach toward the street.
            let (x, y) = (f64::from(lot.faces[0]), f64::from(lot.faces[1]));
            let reach = |points: &[PlanPoint]| {
                let along = points.iter().map(|at| f64::from(at.x_mm) * x + f64::from(at.y_mm) * y);
                along.fold(f64::NEG_INFINITY, f64::max)
            };
            let setback_mm = (reach(&lot.outline) - reach(&lot.footprint)) / number::length(x, y);
            let height_mm = painted.palette.get(*built).map_or(0.0, height_mm);
            if encloses(height_mm, f64::from(line.right_of_way_mm) / 2.0 + setback_mm) {
                enclosed_um += lot.front_um[1].saturating_sub(lot.front_um[0]);
            }
        }
    }
    enclosed_um as f64 / 1e6
}

const fn is_street(role: StreetRole) -> bool {
    !matches!(role, StreetRole::Alley | StreetRole::Path)
}

fn height_mm(held: &BuildingType) -> f64 {
    held.stories.iter().map(|story| f64::from(story.height_mm)).sum()
}

fn lined_m(document: &Document, fabric: &Fabric, streets: &SiteStreets) -> f64 {
    let chosen = document.settings.chosen.get(TREE_SPACING).copied();
    if chosen.unwrap_or(TREE_SPACING_M) > MOST_TREE_SPACING_M + 1e-9 {
        return 0.0;
    }
    let in_site = faces_in_site(fabric);
    let mut lined_um = 0_u64;
    for (place, link) in streets.inside().filter(|(_, link)| link.way == Way::Street) {
        let line = &fabric.lines.streets[link.street as usize];
        let Some(section) = document.street_sections.get(&line.section) else {
            continue;
        };
        let first = fabric.links.links[place as usize].half_edges.first();
        for side in first.into_iter().flat_map(|first| [*first, first.twin()]) {
            let carrier = fabric.carriers[side.edge().0 as usize];
            let hand = carrier.map(|carrier| carrier.hand_of_face(side));
            if in_site[fabric.arrangement.face(side).0 as usize] && hand.is_some_and(|hand| is_lined(section, hand)) {
                lined_um += link.length_um;
            }
        }
    }
    lined_um as f64 / 1e6
}

/// Whether a section has planting between the walk and the traffic on one hand.
fn is_lined(section: &StreetSection, hand: Hand) -> bool {
    let count = section.strips.len();
    let from_edge = (0..count).map(|place| if hand == Hand::Left { place } else { count - 1 - place });
    let mut has_walk = false;
    for strip in from_edge.filter_map(|place| section.strips.get(place)) {
        match strip.kind {
            StripKind::Walk => has_walk = true,
            StripKind::Planting if has_walk => return true,
            StripKind::Travel => return false,
            _ => {}
        }
    }
    false
}

/// From the first strip for vehicles to the last.
fn carriageway_mm(section: &StreetSection) -> u32 {
    let is_driven = |kind: StripKind| matches!(kind, StripKind::Parking | StripKind::Bicycle | StripKind::Travel);
    let first = section.strips.iter().position(|strip| is_driven(strip.kind));
    let last = section.strips.iter().rposition(|strip| is_driven(strip.kind));
    let within = first
        .zip(last)
        .and_then(|(first, last)| section.strips.get(first..=last));
    let strips = within.into_iter().flatten();
    strips.fold(0, |sum, strip| sum.saturating_add(strip.width_mm))
}

fn add_grades(fabric: &Fabric, link: u32, ground: &Ground<'_>, by_grade_m: &mut [f64; GRADES]) {
    let mut before: Option<(f64, f64)> = None;
    for to in points_of(fabric, link).map(PlanPoint::to_m) {
        let Some(from) = before.replace(to) else { continue };
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length_m = number::length(dx, dy);
        let pieces = (length_m / LONGEST_PIECE_M).ceil().max(1.0);
        let height_m = |piece: f64| ground.height_m((from.0 + dx * piece / pieces, from.1 + dy * piece / pieces));
        let (mut piece, mut low_m) = (0.0, height_m(0.0));
        while piece < pieces {
            piece += 1.0;
            let high_m = height_m(piece);
            by_grade_m[grade_of(high_m - low_m, length_m / pieces)] += length_m / pieces;
            low_m = high_m;
        }
    }
}

/// The class of a rise over a run, by its place in [`grades`]; the last bits of either do not tip it.
fn grade_of(rise_m: f64, run_m: f64) -> usize {
    let most_m = run_m * (1.0 + 1e-9);
    if rise_m.abs() * 20.0 <= most_m {
        0
    } else if rise_m.abs() * 12.0 <= most_m {
        1
    } else {
        2
    }
}

#[cfg(test)]
mod tests;
