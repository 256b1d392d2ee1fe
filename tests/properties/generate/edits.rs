//! Random edits: what the tools do, and what they never would.

use hobnail_core::plan::document::Phase;
use hobnail_core::plan::{
    Alternative, AlternativeId, BuildingTypeId, Document, Edit, Mark, MarkId, PhaseId, Street, StreetSectionId, Vertex,
};

use super::marks;
use crate::random::Random;

/// Edits for one gesture on `document`, each made for the document the earlier ones leave.
pub fn gesture(random: &mut Random, document: &Document) -> Vec<Edit> {
    let mut end = document.clone();
    let mut edits = Vec::new();
    for _ in 0..=random.below(4) {
        let edit = edit(random, &end);
        edit.apply(&mut end).unwrap();
        edits.push(edit);
        if end.alternatives.is_empty() {
            // No tool goes on from here, and history refuses.
            break;
        }
    }
    edits
}

/// One edit that fits `document`.
pub fn edit(random: &mut Random, document: &Document) -> Edit {
    let alternatives: Vec<AlternativeId> = document.alternatives.keys().copied().collect();
    let alternative = *random.pick(&alternatives);
    let others = &document.alternatives[&alternative].marks;
    let streets: Vec<(MarkId, &Street)> = others
        .iter()
        .filter_map(|(&id, mark)| Some((id, mark.as_street()?)))
        .collect();
    match random.below(24) {
        0 => Edit::Heading {
            before: document.heading.clone(),
            after: super::heading(random, &document.heading),
        },
        1 => {
            let after = hobnail_core::plan::document::Site {
                boundary: random.points(6),
            };
            Edit::Site {
                before: document.site.clone(),
                after,
            }
        }
        2 => Edit::Program {
            before: document.program.clone(),
            after: (0..random.below(3)).map(|_| super::target(random)).collect(),
        },
        3 => Edit::Settings {
            before: Box::new(document.settings.clone()),
            after: Box::new(super::settings(random)),
        },
        4 => {
            let id = StreetSectionId(random.below(14) as u32);
            let before = document.street_sections.get(&id).cloned();
            Edit::StreetSection {
                id,
                before,
                after: random.perhaps(marks::section),
            }
        }
        5 => {
            let id = BuildingTypeId(random.below(20) as u32);
            let before = document.building_types.get(&id).cloned().map(Box::new);
            let after = random.perhaps(marks::building_type).map(Box::new);
            Edit::BuildingType { id, before, after }
        }
        6 => {
            let id = PhaseId(random.below(4) as u32);
            let before = document.phases.get(&id).cloned();
            Edit::Phase {
                id,
                before,
                after: random.perhaps(|random| Phase { name: random.text() }),
            }
        }
        7 => edit_alternative(random, document, alternative),
        8..=11 => {
            let mark = marks::mark(random, others);
            Edit::mark(document, alternative, document.next_mark_id(), Some(mark))
        }
        12 => {
            let ids: Vec<MarkId> = others.keys().copied().chain([MarkId(0)]).collect();
            Edit::mark(document, alternative, *random.pick(&ids), None)
        }
        _ if streets.is_empty() => {
            let street = marks::street(random, others);
            Edit::mark(
                document,
                alternative,
                document.next_mark_id(),
                Some(Mark::Street(street)),
            )
        }
        _ => {
            let (id, street) = *random.pick(&streets);
            let mut street = street.clone();
            reshape(random, &mut street, document, alternative);
            Edit::mark(document, alternative, id, Some(Mark::Street(street)))
        }
    }
}

/// Adds, removes, copies under new ids or renames an alternative.
fn edit_alternative(random: &mut Random, document: &Document, id: AlternativeId) -> Edit {
    let held = document.alternatives[&id].clone();
    if random.one_in(4) {
        return Edit::Alternative {
            id,
            before: Some(held),
            after: None,
        };
    }
    if random.one_in(2) {
        let renamed = Alternative {
            name: random.text(),
            ..held.clone()
        };
        return Edit::Alternative {
            id,
            before: Some(held),
            after: Some(renamed),
        };
    }
    let id = AlternativeId(random.below(5) as u32);
    let before = document.alternatives.get(&id).cloned();
    let after = Alternative {
        name: random.text(),
        ..Alternative::default()
    };
    Edit::Alternative {
        id,
        before,
        after: Some(after),
    }
}

/// Moves, inserts, removes, rounds, ties or frees a vertex, turns the street about, or moves it whole.
fn reshape(random: &mut Random, street: &mut Street, document: &Document, alternative: AlternativeId) {
    let others = &document.alternatives[&alternative].marks;
    let index = random.below(street.line.len() as u64) as usize;
    match random.below(8) {
        0 => street.line.insert(index, Vertex::at(random.point())),
        1 if !street.line.is_empty() => drop(street.line.remove(index)),
        2 => street.line.reverse(),
        3 => {
            let (x_mm, y_mm) = (random.below(9000) as i32 - 4500, random.below(9000) as i32 - 4500);
            for vertex in &mut street.line {
                vertex.point = vertex.point + hobnail_core::plan::PlanVector::new(x_mm, y_mm);
            }
        }
        _ => {
            let Some(vertex) = street.line.get_mut(index) else {
                return;
            };
            match random.below(4) {
                0 => vertex.corner_radius_mm = random.quantity(),
                1 => marks::tie(random, others, vertex),
                2 => vertex.tie = None,
                _ => vertex.point = random.point(),
            }
        }
    }
}
