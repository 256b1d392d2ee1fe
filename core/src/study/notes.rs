//! What the drawing leaves open, in sentences: an unfinished sketch is a normal state, and this says what it lacks.

use super::Study;
use crate::plan::PlanPoint;

impl Study {
    /// What the drawing leaves open, each with where it is; the same as on the page.
    #[must_use]
    pub fn notes(&self) -> Vec<String> {
        let mut notes = Vec::new();
        let seen = self.seen();
        let held = seen.alternatives.get(&self.alternative());
        for (id, mark) in held.into_iter().flat_map(|held| &held.marks) {
            if let Some(use_mark) = mark.as_use()
                && !self.fabric().face_of_mark.contains_key(id)
            {
                notes.push(format!(
                    "the use at {} is asleep: no street goes all the way around it (mark {id})",
                    place(use_mark.anchor)
                ));
            }
        }
        for painted in self.painted() {
            let Some(face) = self.fabric().face(painted.face) else {
                continue;
            };
            let has_homes = painted.land_m2.iter().any(|(id, _)| {
                seen.building_types
                    .get(id)
                    .is_some_and(|building_type| building_type.homes_per_lot > 0)
            });
            if has_homes && painted.fronts.is_empty() {
                notes.push(format!(
                    "the block at {} has no street its lots may front on: its homes are counted, and nobody can walk \
                     from them (mark {})",
                    place(face.anchor),
                    painted.mark
                ));
            }
        }
        if let Err(reason) = self.walk() {
            notes.push(format!("the walk to a center can not be worked out: {reason}"));
        }
        notes
    }
}

/// A place on the plan in whole meters from its origin.
fn place(point: PlanPoint) -> String {
    let (east_m, north_m) = point.to_m();
    format!("{east_m:.0} m east, {north_m:.0} m north")
}
