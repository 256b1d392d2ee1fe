//! The first-level figures: what stands in the column beside the drawing, in order, answered at once.

use super::Study;
use crate::figures::basis::Basis;
use crate::figures::unit::System;
use crate::figures::value::FigureValue;
use crate::plan::Document;
use crate::plan::document::UnitSystem;

/// Ids of the first-level figures, in order.
pub const FIRST_LEVEL: [&str; 15] = [
    "land.bar_share",
    "homes.of_asked",
    "density.homes_per_buildable",
    "homes.count",
    "streets.length_per_home",
    "walk.center_5min_homes_share",
    "walk.park_5min_homes_share",
    "walk.all_five_10min_homes_share",
    "walk.all_five_sure_10min_homes_share",
    "jobs.count",
    "jobs.per_home",
    "streets.ways_in_and_out",
    "streets.most_homes_behind_one",
    "blocks.perimeter_median",
    "blocks.perimeter_longest",
];

/// The units a document's numbers are shown in.
#[must_use]
pub const fn system(document: &Document) -> System {
    match document.settings.units {
        UnitSystem::Metric => System::Metric,
        UnitSystem::UsCustomary => System::Customary,
    }
}

/// The first-level figures of a study, without ranges: exact values, rounded for display.
#[must_use]
pub fn first_level(study: &Study) -> Vec<FigureValue> {
    let indices = FIRST_LEVEL.iter().filter_map(|id| study.graph().index(id));
    indices.map(|index| study.figure_value(index)).collect()
}

/// The basis of a figure, of its largest row where it is a table; `None` where there is no such figure.
#[must_use]
pub fn basis(study: &Study, figure: &str) -> Option<Basis> {
    let index = study.graph().index(figure)?;
    let evaluation = study.evaluation_for(index);
    Some(evaluation.basis(index, evaluation.main_cell(index), system(study.document())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::projection::GeographicPoint;

    #[test]
    fn every_first_level_figure_is_in_the_graph() {
        let study = Study::open(Document::new(
            "Empty",
            GeographicPoint {
                longitude_ndeg: 0,
                latitude_ndeg: 0,
            },
        ))
        .unwrap();
        let ids: Vec<String> = first_level(&study).into_iter().map(|figure| figure.id).collect();
        assert_eq!(ids, FIRST_LEVEL);
    }
}
