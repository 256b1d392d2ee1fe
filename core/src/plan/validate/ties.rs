//! Ties of one alternative: to streets that are there, at places they have, on their feet, and in no circle.

use crate::order::OrderedMap;

use super::{FaultKind, FaultPlace, Findings};
use crate::plan::ids::{AlternativeId, MarkId};
use crate::plan::mark::Mark;
use crate::plan::tie::{WHOLE_PPB, circle_closing_holds, foot, ties_of};

pub(super) fn check(alternative: AlternativeId, marks: &OrderedMap<MarkId, Mark>, findings: &mut Findings) {
    let street = |id: MarkId| marks.get(&id).and_then(Mark::as_street);
    for (&id, mark) in marks {
        let Some(body) = mark.as_street() else { continue };
        for vertex in &body.line {
            let Some(tie) = vertex.tie else { continue };
            let place = FaultPlace::Mark(alternative, id, Some(vertex.point));
            let Some(held) = street(tie.street) else {
                findings.add(place, FaultKind::TiedToNothing(tie.street));
                continue;
            };
            let is_there = held.line.len() > 1 + tie.segment as usize && tie.along_ppb <= WHOLE_PPB;
            if !is_there {
                findings.add(place, FaultKind::TiedBeyondStreet(tie.street));
            } else if held.line.iter().all(|vertex| vertex.point.is_legal())
                && foot(&held.line, tie.segment, tie.along_ppb) != Some(vertex.point)
            {
                findings.add(place, FaultKind::OffItsTie(tie.street));
            }
        }
    }
    let ids: Vec<MarkId> = marks.keys().copied().filter(|&id| street(id).is_some()).collect();
    for (from, to) in circle_closing_holds(&ids, |id| street(id).map_or_else(Vec::new, ties_of)) {
        findings.add(FaultPlace::Mark(alternative, from, None), FaultKind::TiedInCircle(to));
    }
}
