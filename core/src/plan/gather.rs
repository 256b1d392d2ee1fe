//! Plans of several tables joined to one: their alternatives side by side, on the base of the first.

use super::document::{Alternative, Document};
use super::ids::{AlternativeId, BuildingTypeId, PhaseId, StreetSectionId};
use super::land::Portion;
use super::mark::Mark;
use crate::order::OrderedMap;
use crate::say;

/// Where the entries of another plan's palettes are found in the base's.
#[derive(Default)]
struct Adopted {
    sections: OrderedMap<StreetSectionId, StreetSectionId>,
    types: OrderedMap<BuildingTypeId, BuildingTypeId>,
    phases: OrderedMap<PhaseId, PhaseId>,
}

/// Adds the alternatives of another plan of the same site, and says in sentences what of it differs from the base and is
/// not taken over. `file` is what the other plan is called by, and becomes the table's name where none is written.
///
/// The base's site, program, settings, ground and picture stay. Street sections, building types and phases that the base
/// does not have are added to it. An alternative that the base already has, mark by mark, is not added again: tables
/// often keep the sketch that they began with.
///
/// # Errors
/// A sentence, when the other plan lies elsewhere on Earth or holds no alternative that is new; the base is then as it
/// was.
pub fn add_alternatives(base: &mut Document, file: &str, other: Document) -> Result<Vec<String>, String> {
    let origin = |document: &Document| {
        let heading = &document.heading;
        (heading.origin_longitude_ndeg, heading.origin_latitude_ndeg)
    };
    if origin(base) != origin(&other) {
        return Err(say!("gather-elsewhere", file = file));
    }
    let is_known = |held: &Alternative| {
        let mut there = base.alternatives.values();
        there.any(|known| known.marks == held.marks)
    };
    let added: Vec<Alternative> = other
        .alternatives
        .values()
        .filter(|held| !is_known(held))
        .cloned()
        .collect();
    if added.is_empty() {
        return Err(say!("gather-nothing-new", file = file));
    }
    let differing = differences(base, &other, file);
    let adopted = Adopted {
        sections: adopt(
            &mut base.street_sections,
            other.street_sections,
            |id| id.0,
            StreetSectionId,
        ),
        types: adopt(
            &mut base.building_types,
            other.building_types,
            |id| id.0,
            BuildingTypeId,
        ),
        phases: adopt(&mut base.phases, other.phases, |id| id.0, PhaseId),
    };
    for mut alternative in added {
        for (_, mark) in alternative.marks.iter_mut() {
            adopted.rename_in(mark);
        }
        if alternative.table.is_empty() {
            file.clone_into(&mut alternative.table);
        }
        let is_taken = |name: &str| base.alternatives.values().any(|held| held.name == name);
        if !alternative.name.is_empty() && is_taken(&alternative.name) {
            alternative.name = say!("gather-name", name = alternative.name, file = file);
        }
        let last = base.alternatives.keys().next_back().map_or(0, |last| last.0);
        // Nobody draws four thousand million alternatives; the last one's place would be taken.
        base.alternatives
            .insert(AlternativeId(last.saturating_add(1)), alternative);
    }
    Ok(differing)
}

/// What of the other plan is not taken over.
fn differences(base: &Document, other: &Document, file: &str) -> Vec<String> {
    let mut told = Vec::new();
    if base.site != other.site {
        told.push(say!("gather-site-differs", file = file));
    }
    if base.program != other.program {
        told.push(say!("gather-program-differs", file = file));
    }
    let chosen = |document: &Document| {
        let held = &document.settings;
        (
            held.walking_pace_mm_per_s,
            held.chosen.clone(),
            held.overridden_factors.clone(),
            held.rule_lists.clone(),
        )
    };
    if chosen(base) != chosen(other) {
        told.push(say!("gather-settings-differ", file = file));
    }
    if base.topography != other.topography {
        told.push(say!("gather-ground-differs", file = file));
    }
    if base.base_image != other.base_image {
        told.push(say!("gather-picture-differs", file = file));
    }
    told
}

/// Where each entry of `other` is found in `base` by what it says: under its own id, under another, or added.
fn adopt<K: Ord + Copy, V: PartialEq>(
    base: &mut OrderedMap<K, V>,
    other: OrderedMap<K, V>,
    number: fn(K) -> u32,
    key: fn(u32) -> K,
) -> OrderedMap<K, K> {
    let mut found = OrderedMap::new();
    for (id, entry) in other {
        let place = if base.get(&id) == Some(&entry) {
            id
        } else if let Some((same, _)) = base.iter().find(|(_, held)| **held == entry) {
            *same
        } else if base.contains_key(&id) {
            let last = base.keys().next_back().map_or(0, |last| number(*last));
            key(last.saturating_add(1))
        } else {
            id
        };
        base.entry(place).or_insert(entry);
        found.insert(id, place);
    }
    found
}

impl Adopted {
    fn rename_in(&self, mark: &mut Mark) {
        match mark {
            Mark::Street(street) => {
                renamed(&self.sections, &mut street.section);
                self.rename_phase(&mut street.phase);
            }
            Mark::Use(held) => {
                self.rename_program(&mut held.program);
                self.rename_phase(&mut held.phase);
                for side in &mut held.sides {
                    if let Some(held) = &mut side.building_type {
                        renamed(&self.types, held);
                    }
                }
            }
            Mark::SoftArea(area) => {
                self.rename_program(&mut area.program);
                self.rename_phase(&mut area.phase);
            }
            Mark::Place(place) => self.rename_phase(&mut place.phase),
            Mark::Constraint(_)
            | Mark::SiteAccess(_)
            | Mark::Parcel(_)
            | Mark::Barrier(_)
            | Mark::Crossing(_)
            | Mark::Outside(_)
            | Mark::Note(_) => {}
        }
    }

    fn rename_program(&self, program: &mut [Portion]) {
        for portion in program {
            renamed(&self.types, &mut portion.building_type);
        }
    }

    fn rename_phase(&self, phase: &mut Option<PhaseId>) {
        if let Some(phase) = phase {
            renamed(&self.phases, phase);
        }
    }
}

fn renamed<K: Ord + Copy>(found: &OrderedMap<K, K>, id: &mut K) {
    if let Some(place) = found.get(id) {
        *id = *place;
    }
}

#[cfg(test)]
mod tests;
