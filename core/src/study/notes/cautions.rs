//! Cautions: where a drawing touches what can hurt people when it is wrong, and who decides there.
//!
//! A caution is no finding: it says what lies where, and names whom to ask. Local codes and licensed practice decide;
//! the thresholds here only choose when to speak.
//!
//! Only what is proposed is told: streets that stand, and parks and other open land where it floods, are as they should
//! be until somebody draws otherwise.
//!
//! Not told: sight lines, traffic, the reuse of water, and anything of slopes and water that nobody drew.

use super::Note;
use crate::fabric::constraints::{Constraint, HeldBy, LandSwitch};
use crate::fabric::land::Bounds;
use crate::fabric::regions::{Combined, combined};
use crate::measures::streets::dead_ends::dead_ends;
use crate::measures::streets::methods::place_of_largest;
use crate::measures::streets::site_streets::SiteStreets;
use crate::order;
use crate::plan::inside::goes_around;
use crate::plan::street::Status;
use crate::plan::{BuildingTypeId, MarkId, PlanPoint, StreetRole};
use crate::say;
use crate::study::Study;

/// Dead ends longer than this are asked about: a fire engine must be able to turn around in longer ones, 150 ft.
///
/// Source: International Fire Code, appendix D, D103.4, from memory. Codes for the length of a cul-de-sac allow 200 to
/// 1,000 ft and ask for the turning circle; this is where the question begins.
pub const TURNING_LENGTH_M: f64 = 45.72;

/// More homes than this on one way in are asked about.
///
/// Source: International Fire Code, appendix D, D107.1 (houses of one or two families), from memory.
pub const HOMES_ON_ONE_WAY: f64 = 30.0;

/// Less than this on held-back land is the rounding of drawn lines: 1 m of street, 1 m² of a block. Smaller speaks of
/// slivers where an outline was drawn along a street; larger misses a real corner.
const LEAST: f64 = 1.0;

/// What land is asked about.
const ASKED: [HeldBy; 4] = [HeldBy::Floodplain, HeldBy::Wetland, HeldBy::Steep, HeldBy::Water];

/// Whom to ask about blocks on such land. Open water is no land to paint, so only streets over it are told.
fn of_blocks(held_by: HeldBy, count: usize) -> Option<String> {
    Some(match held_by {
        HeldBy::Floodplain => say!("study-caution-block-floodplain", count = count),
        HeldBy::Wetland => say!("study-caution-block-wetland", count = count),
        HeldBy::Steep => say!("study-caution-block-steep", count = count),
        _ => return None,
    })
}

/// Whom to ask about streets on such land.
fn of_streets(held_by: HeldBy, count: usize) -> Option<String> {
    Some(match held_by {
        HeldBy::Floodplain => say!("study-caution-street-floodplain", count = count),
        HeldBy::Wetland => say!("study-caution-street-wetland", count = count),
        HeldBy::Steep => say!("study-caution-street-steep", count = count),
        HeldBy::Water => say!("study-caution-street-water", count = count),
        _ => return None,
    })
}

/// The cautions of a study, those for fire engines first.
///
/// Cost: every street that is new against the held-back outlines near it; where many homes are on one way, that of
/// [`Study::street_places`] as well.
pub(super) fn cautions(study: &Study) -> Vec<Note> {
    let mut notes = Vec::new();
    let exceeds = |figure: &str, most: f64| {
        let index = study.graph().index(figure);
        let value = index.and_then(|index| study.evaluation_for(index).value(figure)?.number());
        value.is_some_and(|value| value > most)
    };
    let has_long = exceeds("streets.longest_dead_end", TURNING_LENGTH_M);
    let has_many = exceeds("streets.most_homes_behind_one", HOMES_ON_ONE_WAY);
    if has_long {
        notes.extend(long_dead_ends(study));
    }
    if has_many {
        notes.extend(single_way(study));
    }
    let held_back: Vec<&Constraint> = study
        .fabric()
        .constraints
        .iter()
        .filter(|area| area.says_no_to(LandSwitch::Buildable))
        .collect();
    for held_by in ASKED {
        let areas = held_back.iter().filter(|area| area.held_by == held_by);
        let outlines: Vec<Vec<PlanPoint>> = areas.map(|area| area.outline.clone()).collect();
        if outlines.is_empty() {
            continue;
        }
        notes.extend(painted(study, held_by, &outlines));
        notes.extend(crossed(study, held_by, &outlines));
    }
    notes
}

fn caution(study: &Study, words: String, at: PlanPoint) -> Note {
    Note {
        words,
        at: Some(at),
        mark: None,
        is_caution: true,
        units: study.document().settings.units,
    }
}

/// The dead ends of new streets in which an engine has to turn, told at the longest.
fn long_dead_ends(study: &Study) -> Option<Note> {
    let streets = SiteStreets::of(&study.seen(), study.alternative(), study.fabric());
    let mut long = dead_ends(&streets);
    long.retain(|end| end.length_um as f64 / 1e6 > TURNING_LENGTH_M && new_street(study, end.street).is_some());
    let lengths: Vec<f64> = long.iter().map(|end| end.length_um as f64).collect();
    let longest = long.get(place_of_largest(&lengths)?)?;
    let words = say!("study-caution-dead-ends", count = long.len());
    Some(Note {
        mark: new_street(study, longest.street),
        ..caution(study, words, longest.head)
    })
}

/// The mark of a drawn line that is proposed; `None` for a street that stands.
fn new_street(study: &Study, line: u32) -> Option<MarkId> {
    let mark = study.fabric().lines.streets.get(line as usize)?.mark;
    let street = study.document().mark(study.alternative(), mark)?.as_street()?;
    (street.status == Status::New).then_some(mark)
}

fn single_way(study: &Study) -> Option<Note> {
    let places = study.street_places();
    let worst = places.worst_place()?;
    let words = say!(
        "study-caution-one-way",
        homes = format!("{:.0}", worst.count),
        most = HOMES_ON_ONE_WAY.to_string()
    );
    Some(caution(study, words, worst.at))
}

/// The blocks painted with buildings that reach onto land of one kind, told at the first.
fn painted(study: &Study, held_by: HeldBy, outlines: &[Vec<PlanPoint>]) -> Option<Note> {
    let types = &study.document().building_types;
    let is_built = |id: &BuildingTypeId| types.get(id).is_some_and(|held| !held.stories.is_empty());
    let touched = study.painted().iter().filter_map(|painted| {
        if !painted.land_m2.iter().any(|(id, _)| is_built(id)) {
            return None;
        }
        let face = study.fabric().face(painted.face)?;
        let mut held = face.land.constrained.says_no_to(LandSwitch::Buildable);
        let is_touched = held.any(|(other, twice_mm2)| other == held_by && twice_mm2 as f64 / 2e6 >= LEAST);
        is_touched.then_some((painted.mark, face))
    });
    let touched: Vec<_> = touched.collect();
    let (mark, face) = *touched.first()?;
    let words = of_blocks(held_by, touched.len())?;
    let pieces = combined(face.outline.iter(), Combined::Within, outlines);
    let at = pieces.first().and_then(|piece| PlanPoint::mean_of(piece.first()?));
    Some(Note {
        mark: Some(mark),
        ..caution(study, words, at.unwrap_or(face.anchor))
    })
}

/// The new streets that cross land of one kind, told at the first.
fn crossed(study: &Study, held_by: HeldBy, outlines: &[Vec<PlanPoint>]) -> Option<Note> {
    let areas: Vec<(Bounds, &Vec<PlanPoint>)> = outlines.iter().map(|area| (Bounds::of(area), area)).collect();
    let streets = (0..).zip(&study.fabric().lines.streets);
    let crossing = streets.filter_map(|(line, street)| {
        if street.is_outside || street.role == StreetRole::Path {
            return None;
        }
        let bounds = Bounds::of(&street.points);
        let mut near = areas.iter().filter(|(area, _)| area.meets(&bounds));
        let at = near.find_map(|(bounds, area)| first_inside(&street.points, bounds, area))?;
        Some((new_street(study, line)?, at))
    });
    let crossing: Vec<_> = crossing.collect();
    let (mark, at) = *crossing.first()?;
    Some(Note {
        mark: Some(mark),
        ..caution(study, of_streets(held_by, crossing.len())?, at)
    })
}

/// The middle of the first stretch of a line that runs inside an outline for a meter or more. Cost: the segments of the line in the box around the outline, times its sides.
fn first_inside(line: &[PlanPoint], around: &Bounds, outline: &[PlanPoint]) -> Option<PlanPoint> {
    let mut near = line.windows(2).filter(|ends| around.meets(&Bounds::of(*ends)));
    near.find_map(|ends| {
        let (from, to) = (wide(ends[0]), wide(ends[1]));
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let mut cuts = vec![0.0, 1.0];
        for (a, b) in sides(outline) {
            let (ex, ey) = (b.0 - a.0, b.1 - a.1);
            let turn = dx * ey - dy * ex;
            let along = ((a.0 - from.0) * ey - (a.1 - from.1) * ex) / turn;
            let across = ((a.0 - from.0) * dy - (a.1 - from.1) * dx) / turn;
            if turn != 0.0 && (0.0..=1.0).contains(&along) && (0.0..=1.0).contains(&across) {
                cuts.push(along);
            }
        }
        order::sort_by(&mut cuts, f64::total_cmp);
        let length_m = crate::number::length(dx, dy) / 1e3;
        cuts.windows(2).find_map(|cut| {
            let half = f64::midpoint(cut[0], cut[1]);
            let at = PlanPoint::new((from.0 + dx * half) as i32, (from.1 + dy * half) as i32);
            let is_long = (cut[1] - cut[0]) * length_m >= LEAST;
            (is_long && goes_around(outline, at)).then_some(at)
        })
    })
}

fn wide(point: PlanPoint) -> (f64, f64) {
    (f64::from(point.x_mm), f64::from(point.y_mm))
}

/// The sides of an outline, closed by itself.
fn sides(outline: &[PlanPoint]) -> impl Iterator<Item = ((f64, f64), (f64, f64))> + '_ {
    let next = outline.iter().cycle().skip(1);
    outline.iter().zip(next).map(|(a, b)| (wide(*a), wide(*b)))
}

#[cfg(test)]
mod tests;
