//! Fences and property lines that ask something of the lots on a piece of land, as sentences in its editor.

use hobnail_core::plan::{Mark, MarkId};
use hobnail_core::say;
use hobnail_core::study::Study;

use super::land::setback_field;
use super::lines::Line;
use crate::app::{counted_land, fields};

/// A sentence for each line beside its lots, from this index on.
pub(super) fn lines(study: &Study, id: MarkId, from_index: u16) -> Vec<Line> {
    let document = study.document();
    let marks = document.alternatives.get(&study.alternative());
    let said = marks.into_iter().flat_map(|alternative| alternative.marks.values());
    let said = said.filter_map(|mark| {
        let lots = counted_land::lots_beside(study, mark);
        let count = lots.iter().filter(|(land, _)| *land == id).count();
        (count > 0).then(|| [name(mark), ": ", &asked(study, mark, count)].concat())
    });
    let lines = (from_index..).zip(said);
    lines.map(|(index, said)| Line::words(index, said)).collect()
}

fn name(mark: &Mark) -> &str {
    let name = match mark {
        Mark::Barrier(barrier) => barrier.name.as_str(),
        Mark::Parcel(parcel) => &parcel.label,
        _ => "",
    };
    if name.is_empty() { fields::title(mark) } else { name }
}

fn asked(study: &Study, mark: &Mark, lots: usize) -> String {
    let units = study.document().settings.units;
    let asked = mark.beside().copied().flatten().unwrap_or_default();
    let distance = |mm: u32| setback_field().quantity.words(f64::from(mm), units);
    let stories = asked.stories.map(|stories| say!("page-said-stories", count = stories));
    let clear = asked
        .clear_mm
        .map(|mm| say!("page-said-clear", distance = distance(mm)));
    let lots = say!("page-said-lots", count = lots);
    let parts = [stories, clear, Some(lots)];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}
