//! Marks of one alternative: shapes, and what they refer to.

use crate::order::OrderedMap;

use super::outline::{are_legal, check_line, check_outline};
use super::{FaultKind, FaultPlace, Findings, Measure, Palettes};
use crate::plan::coordinates::PlanPoint;
use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::land::{Beside, Footprint, Portion, SoftArea, UseMark};
use crate::plan::mark::Mark;

/// Parts per million in a whole.
const WHOLE_PPM: u64 = 1_000_000;

pub(super) fn check(
    alternative: AlternativeId,
    marks: &OrderedMap<MarkId, Mark>,
    palettes: &Palettes<'_>,
    findings: &mut Findings,
) {
    let mut outside_trips_ppm: u64 = 0;
    for (&id, mark) in marks {
        let at = |point: Option<PlanPoint>| FaultPlace::Mark(alternative, id, point);
        let place = at(None);
        match mark {
            Mark::Street(street) => {
                let points: Vec<PlanPoint> = street.line.iter().map(|vertex| vertex.point).collect();
                check_line(&points, at, findings);
                palettes.check_section(street.section, &place, findings);
                palettes.check_phase(street.phase, &place, findings);
            }
            Mark::Use(held) => check_use(held, marks, palettes, at, findings),
            Mark::SoftArea(area) => check_soft_area(area, palettes, at, findings),
            Mark::Constraint(area) => check_outline(&area.outline, at, findings),
            Mark::Place(held) => {
                check_footprint(&held.footprint, at, findings);
                palettes.check_phase(held.phase, &place, findings);
            }
            Mark::SiteAccess(access) => {
                are_legal(&[access.at], at, findings);
                outside_trips_ppm += u64::from(access.outside_trips_ppm.unwrap_or(0));
            }
            Mark::Parcel(parcel) => {
                check_outline(&parcel.outline, at, findings);
                check_beside(parcel.beside, &place, findings);
            }
            Mark::Barrier(barrier) => {
                check_line(&barrier.line, at, findings);
                check_beside(barrier.beside, &place, findings);
            }
            Mark::Crossing(crossing) => drop(are_legal(&[crossing.at], at, findings)),
            Mark::Outside(outside) => check_footprint(&outside.footprint, at, findings),
            Mark::Note(note) => {
                are_legal(&[note.at], at, findings);
                // Nobody present means that nobody was counted.
                let is_fine = note.present == 0 || note.votes <= note.present;
                findings.expect(is_fine, &place, FaultKind::MoreVotesThanPeople);
            }
        }
    }
    findings.expect(
        outside_trips_ppm <= WHOLE_PPM,
        &FaultPlace::Alternative(alternative),
        FaultKind::OverWhole(Measure::OutsideTrips),
    );
}

fn check_use(
    held: &UseMark,
    marks: &OrderedMap<MarkId, Mark>,
    palettes: &Palettes<'_>,
    at: impl Fn(Option<PlanPoint>) -> FaultPlace,
    findings: &mut Findings,
) {
    let place = at(None);
    are_legal(&[held.anchor], &at, findings);
    check_program(&held.program, palettes, &place, findings);
    palettes.check_phase(held.phase, &place, findings);
    for side in &held.sides {
        let side_place = at(Some(side.at));
        are_legal(&[side.at], &at, findings);
        let is_street = marks.get(&side.street).and_then(Mark::as_street).is_some();
        findings.expect(is_street, &side_place, FaultKind::SideOfNoStreet(side.street));
        if let Some(building_type) = side.building_type {
            palettes.check_building_type(building_type, &side_place, findings);
        }
        findings.expect(side.stories != Some(0), &side_place, FaultKind::Zero(Measure::Stories));
    }
}

fn check_beside(beside: Option<Beside>, place: &FaultPlace, findings: &mut Findings) {
    let stories = beside.and_then(|beside| beside.stories);
    findings.expect(stories != Some(0), place, FaultKind::Zero(Measure::Stories));
}

fn check_soft_area(
    area: &SoftArea,
    palettes: &Palettes<'_>,
    at: impl Fn(Option<PlanPoint>) -> FaultPlace,
    findings: &mut Findings,
) {
    let place = at(None);
    check_outline(&area.outline, at, findings);
    check_program(&area.program, palettes, &place, findings);
    let is_share = u64::from(area.intensity_ppm) <= WHOLE_PPM;
    findings.expect(is_share, &place, FaultKind::OverWhole(Measure::Intensity));
    palettes.check_phase(area.phase, &place, findings);
}

fn check_program(program: &[Portion], palettes: &Palettes<'_>, place: &FaultPlace, findings: &mut Findings) {
    for portion in program {
        palettes.check_building_type(portion.building_type, place, findings);
    }
    let total_ppm: u64 = program.iter().map(|portion| u64::from(portion.share_ppm)).sum();
    findings.expect(
        total_ppm <= WHOLE_PPM,
        place,
        FaultKind::OverWhole(Measure::ProgramShares),
    );
}

fn check_footprint(footprint: &Footprint, at: impl Fn(Option<PlanPoint>) -> FaultPlace, findings: &mut Findings) {
    match footprint {
        Footprint::Point(point) => drop(are_legal(&[*point], at, findings)),
        Footprint::Line(points) => check_line(points, at, findings),
        Footprint::Area(points) => check_outline(points, at, findings),
    }
}
