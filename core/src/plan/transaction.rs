//! Transactions: what one gesture did to the document, as the fewest edits that say it.

use crate::order::OrderedMap;

use super::document::Document;
use super::edit::{Cell, Edit, EditFault};

/// What one gesture did: at most one edit for each cell, each a real change, in the order of their cells. An
/// alternative replaced whole stands for everything on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Transaction {
    label: String,
    edits: Vec<Edit>,
}

impl Transaction {
    /// The transaction that `edits`, made one after another, amount to; `None` when they change nothing.
    #[must_use]
    pub fn of(label: impl Into<String>, edits: Vec<Edit>) -> Option<Self> {
        let edits = coalesced(edits);
        let label = label.into();
        (!edits.is_empty()).then_some(Self { label, edits })
    }

    /// What the gesture was, as shown beside undo.
    #[must_use]
    pub fn label(&self) -> &str {
        &self.label
    }

    /// Its edits.
    #[must_use]
    pub fn edits(&self) -> &[Edit] {
        &self.edits
    }

    /// The cells it changes, sorted.
    #[must_use]
    pub fn cells(&self) -> Vec<Cell> {
        self.edits.iter().map(Edit::cell).collect()
    }

    /// Makes the change, wholly or not at all.
    ///
    /// # Errors
    /// [`EditFault`] when the document is not the one the gesture was made on.
    pub fn apply(&self, document: &mut Document) -> Result<(), EditFault> {
        apply_all(&self.edits, document)
    }

    /// Takes the change back, wholly or not at all.
    ///
    /// # Errors
    /// [`EditFault`] when the document is not as the gesture left it.
    pub fn take_back(&self, document: &mut Document) -> Result<(), EditFault> {
        take_back_all(&self.edits, document)
    }
}

/// Makes edits one after another; when one fails, the earlier ones are taken back.
///
/// # Errors
/// The fault of the first edit that does not fit.
pub fn apply_all(edits: &[Edit], document: &mut Document) -> Result<(), EditFault> {
    for (index, edit) in edits.iter().enumerate() {
        if let Err(fault) = edit.apply(document) {
            // Each was just applied, so each fits in reverse.
            take_back_all(&edits[..index], document)?;
            return Err(fault);
        }
    }
    Ok(())
}

/// Takes edits back, the last first; when one fails, the later ones are made again.
///
/// # Errors
/// The fault of the first edit that does not fit.
pub fn take_back_all(edits: &[Edit], document: &mut Document) -> Result<(), EditFault> {
    for (index, edit) in edits.iter().enumerate().rev() {
        if let Err(fault) = edit.reversed().apply(document) {
            apply_all(&edits[index + 1..], document)?;
            return Err(fault);
        }
    }
    Ok(())
}

/// The fewest edits with the effect of `edits` made one after another, sorted by cell; edits that end where they began
/// are left out, and the marks of an alternative that is also replaced whole go into that edit.
#[must_use]
pub fn coalesced(edits: Vec<Edit>) -> Vec<Edit> {
    let mut by_cell: OrderedMap<Cell, Edit> = OrderedMap::new();
    for edit in edits {
        let edit = match edit {
            Edit::Mark {
                alternative,
                id,
                before,
                after,
            } => {
                if let Some(Edit::Alternative { after: Some(whole), .. }) =
                    by_cell.get_mut(&Cell::Alternative(alternative))
                {
                    match after {
                        Some(mark) => drop(whole.marks.insert(id, *mark)),
                        None => drop(whole.marks.remove(&id)),
                    }
                    continue;
                }
                Edit::Mark {
                    alternative,
                    id,
                    before,
                    after,
                }
            }
            Edit::Alternative { id, mut before, after } => {
                // The alternative before is as the mark edits left it: put back what they replaced.
                let marks: Vec<Cell> = by_cell
                    .keys()
                    .filter(|cell| matches!(cell, Cell::Mark(of, _) if *of == id))
                    .copied()
                    .collect();
                for cell in marks {
                    let (Some(Edit::Mark { id, before: mark, .. }), Some(whole)) =
                        (by_cell.remove(&cell), before.as_mut())
                    else {
                        continue;
                    };
                    match mark {
                        Some(mark) => drop(whole.marks.insert(id, *mark)),
                        None => drop(whole.marks.remove(&id)),
                    }
                }
                Edit::Alternative { id, before, after }
            }
            other => other,
        };
        let merged = match by_cell.remove(&edit.cell()) {
            Some(earlier) => followed_by(earlier, edit),
            None => edit,
        };
        by_cell.insert(merged.cell(), merged);
    }
    by_cell.into_values().filter(|edit| !edit.changes_nothing()).collect()
}

/// One edit for two of the same cell: what stood before the first, what stands after the second.
fn followed_by(first: Edit, second: Edit) -> Edit {
    match (first, second) {
        (Edit::Heading { before, .. }, Edit::Heading { after, .. }) => Edit::Heading { before, after },
        (Edit::Site { before, .. }, Edit::Site { after, .. }) => Edit::Site { before, after },
        (Edit::Program { before, .. }, Edit::Program { after, .. }) => Edit::Program { before, after },
        (Edit::Settings { before, .. }, Edit::Settings { after, .. }) => Edit::Settings { before, after },
        (Edit::Topography { before, .. }, Edit::Topography { after, .. }) => Edit::Topography { before, after },
        (Edit::BaseImage { before, .. }, Edit::BaseImage { after, .. }) => Edit::BaseImage { before, after },
        (Edit::StreetSection { before, .. }, Edit::StreetSection { id, after, .. }) => {
            Edit::StreetSection { id, before, after }
        }
        (Edit::BuildingType { before, .. }, Edit::BuildingType { id, after, .. }) => {
            Edit::BuildingType { id, before, after }
        }
        (Edit::Phase { before, .. }, Edit::Phase { id, after, .. }) => Edit::Phase { id, before, after },
        (Edit::Alternative { before, .. }, Edit::Alternative { id, after, .. }) => {
            Edit::Alternative { id, before, after }
        }
        (
            Edit::Mark { before, .. },
            Edit::Mark {
                alternative, id, after, ..
            },
        ) => Edit::Mark {
            alternative,
            id,
            before,
            after,
        },
        // Edits of one cell are of one kind.
        (_, second) => second,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::document::Alternative;
    use crate::plan::fixtures::{document, street};
    use crate::plan::ids::{AlternativeId, MarkId};
    use crate::plan::mark::Mark;

    const ALTERNATIVE: AlternativeId = AlternativeId(0);

    fn street_edit(document: &Document, id: u32, end_mm: Option<i32>) -> Edit {
        let mark = end_mm.map(|x_mm| Mark::Street(street(&[(0, 0), (x_mm, 0)])));
        Edit::mark(document, ALTERNATIVE, MarkId(id), mark)
    }

    /// Applies each step as made on the document it finds, and gives back the edits and the end.
    fn run(start: &Document, steps: &[&dyn Fn(&Document) -> Edit]) -> (Vec<Edit>, Document) {
        let mut document = start.clone();
        let mut edits = Vec::new();
        for step in steps {
            let edit = step(&document);
            edit.apply(&mut document).unwrap();
            edits.push(edit);
        }
        (edits, document)
    }

    #[track_caller]
    fn check(steps: &[&dyn Fn(&Document) -> Edit], expected_edits: usize) {
        let mut start = document();
        street_edit(&start, 1, Some(10)).apply(&mut start).unwrap();
        let (edits, end) = run(&start, steps);
        let few = coalesced(edits);
        assert_eq!(few.len(), expected_edits, "{few:?}");
        let mut document = start.clone();
        apply_all(&few, &mut document).unwrap();
        assert_eq!(document, end);
        take_back_all(&few, &mut document).unwrap();
        assert_eq!(document, start);
    }

    fn rename(document: &Document) -> Edit {
        let before = document.alternatives.get(&ALTERNATIVE).cloned();
        let after = before.clone().map(|held| Alternative {
            name: format!("{}+", held.name),
            ..held
        });
        Edit::Alternative {
            id: ALTERNATIVE,
            before,
            after,
        }
    }

    #[test]
    fn edits_of_one_cell_become_one_and_round_trips_vanish() {
        check(&[&|d| street_edit(d, 1, Some(20)), &|d| street_edit(d, 1, Some(30))], 1);
        check(&[&|d| street_edit(d, 1, None), &|d| street_edit(d, 1, Some(10))], 0);
        check(&[&|d| street_edit(d, 2, Some(5)), &|d| street_edit(d, 2, None)], 0);
        check(&[&|d| street_edit(d, 2, Some(5)), &|d| street_edit(d, 1, None)], 2);
    }

    #[test]
    fn marks_go_into_an_alternative_replaced_whole_before_or_after() {
        check(
            &[&|d| street_edit(d, 1, Some(20)), &rename, &|d| {
                street_edit(d, 2, Some(7))
            }],
            1,
        );
        check(
            &[
                &|d| street_edit(d, 2, Some(20)),
                &rename,
                &|d| street_edit(d, 1, None),
                &rename,
            ],
            1,
        );
        let remove = |d: &Document| Edit::Alternative {
            id: ALTERNATIVE,
            before: d.alternatives.get(&ALTERNATIVE).cloned(),
            after: None,
        };
        check(&[&|d| street_edit(d, 2, Some(20)), &remove], 1);
    }

    #[test]
    fn nothing_is_half_applied() {
        let start = document();
        let fits = street_edit(&start, 1, Some(20));
        let stale = street_edit(&start, 1, Some(30));
        let mut document = start.clone();
        assert!(apply_all(&[fits.clone(), stale.clone()], &mut document).is_err());
        assert_eq!(document, start);
        fits.apply(&mut document).unwrap();
        let after = document.clone();
        assert!(take_back_all(&[stale, fits], &mut document).is_err());
        assert_eq!(document, after);
    }
}
