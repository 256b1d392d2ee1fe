//! Plans of several tables joined to one: their alternatives side by side, on the base of the first.

use super::document::{Alternative, Document};
use super::ids::{AlternativeId, BuildingTypeId, PhaseId, StreetSectionId};
use super::land::Portion;
use super::mark::Mark;
use crate::say;

/// Where entries of another plan's palette are found in the base's: numbers of ids there and here.
type Found = Vec<(u32, u32)>;

/// Where the entries of another plan's palettes are found in the base's.
struct Adopted {
    sections: Found,
    types: Found,
    phases: Found,
}

/// Takes the entries of another plan's palette into the base's and says where each is found: see [`find_places`], which
/// is written out once for all palettes.
macro_rules! adopt {
    ($here:expr, $there:expr, $id:path) => {{
        let (here, there) = (&mut $here, $there);
        let numbers = |ids: &mut dyn Iterator<Item = u32>| ids.collect::<Vec<u32>>();
        let found = find_places(
            &numbers(&mut here.keys().map(|id| id.0)),
            &numbers(&mut there.keys().map(|id| id.0)),
            &|place, held| there.values().nth(place) == here.values().nth(held),
        );
        for ((_, place), entry) in found.iter().zip(there.into_values()) {
            here.entry($id(*place)).or_insert(entry);
        }
        found
    }};
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
        sections: adopt!(base.street_sections, other.street_sections, StreetSectionId),
        types: adopt!(base.building_types, other.building_types, BuildingTypeId),
        phases: adopt!(base.phases, other.phases, PhaseId),
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

/// Where each entry of another plan's palette is found, by what it says: under its own id, under another, or as a new
/// one. `is_same` compares an entry there with one here, by their places.
fn find_places(here: &[u32], there: &[u32], is_same: &dyn Fn(usize, usize) -> bool) -> Found {
    let mut taken = here.to_vec();
    let mut found = Found::new();
    for (place, id) in there.iter().enumerate() {
        let own = here.iter().position(|held| held == id);
        let same = (0..here.len()).find(|held| is_same(place, *held));
        let to = match own.filter(|own| is_same(place, *own)).or(same) {
            Some(same) => here[same],
            None if taken.contains(id) => taken.iter().max().map_or(0, |last| last.saturating_add(1)),
            None => *id,
        };
        taken.push(to);
        found.push((*id, to));
    }
    found
}

impl Adopted {
    fn rename_in(&self, mark: &mut Mark) {
        match mark {
            Mark::Street(street) => {
                renamed(&self.sections, &mut street.section.0);
                self.rename_phase(&mut street.phase);
            }
            Mark::Use(held) => {
                self.rename_program(&mut held.program);
                self.rename_phase(&mut held.phase);
                for side in &mut held.sides {
                    if let Some(held) = &mut side.building_type {
                        renamed(&self.types, &mut held.0);
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
            renamed(&self.types, &mut portion.building_type.0);
        }
    }

    fn rename_phase(&self, phase: &mut Option<PhaseId>) {
        if let Some(phase) = phase {
            renamed(&self.phases, &mut phase.0);
        }
    }
}

fn renamed(found: &Found, id: &mut u32) {
    if let Some((_, place)) = found.iter().find(|(there, _)| there == id) {
        *id = *place;
    }
}

#[cfg(test)]
mod tests;
