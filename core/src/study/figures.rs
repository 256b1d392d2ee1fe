//! The figures of a study, in two parts: the first level at once, the rest when it is asked for.
//!
//! While a pointer moves the page shows the first level and whatever was opened beside it. What only other figures of
//! streets and blocks need (counting rules, what fronts, where the sun falls) is counted when one of them is first
//! read, from the same fabric by the same functions, so nobody can tell when it was worked out.

use std::sync::{Arc, OnceLock};

use super::{SEED, Study, StudyFault, fault};
use crate::figures::Evaluation;
use crate::figures::graph::{Graph, NodeIndex};
use crate::figures::inputs::{InputFault, Inputs};
use crate::figures::value::FigureValue;
use crate::measures::count::WORKPLACES;
use crate::measures::mix::FLOOR_PER_JOB_SCALE;
use crate::measures::streets::StreetInputs;
use crate::plan::BuildingType;
use crate::study::first_level::system;

/// Every figure, worked out as far as it was asked for.
#[derive(Debug)]
pub(super) struct Figures {
    /// Right but for figures that need the rest.
    first_level: Evaluation,
    /// All right, once one of the rest was asked for.
    whole: OnceLock<Whole>,
    /// By node, whether its value needs what is counted for the rest.
    needs_rest: Vec<bool>,
}

#[derive(Debug)]
struct Whole {
    evaluation: Evaluation,
    /// Why the rest could not be set; only the program's own tables can make it fail.
    faults: Vec<String>,
}

impl Figures {
    /// Works everything from a value for every leaf.
    pub fn new(graph: Arc<Graph>, inputs: Inputs) -> Result<Self, StudyFault> {
        Ok(Self {
            needs_rest: needs_rest(&graph),
            first_level: Evaluation::new(graph, inputs, SEED).map_err(fault)?,
            whole: OnceLock::new(),
        })
    }

    /// Sets leaves of the first level and works what depends on them; the rest is open again.
    pub fn set_first_level(&mut self, inputs: Inputs) -> Result<(), Vec<InputFault>> {
        if let Some(whole) = self.whole.take() {
            self.first_level = whole.evaluation;
        }
        self.first_level.set(inputs).map(drop)
    }

    /// Sets leaves that nothing of the fabric says.
    pub fn set_details(&mut self, inputs: Inputs) -> Result<(), Vec<InputFault>> {
        if let Some(whole) = self.whole.get_mut() {
            whole.evaluation.set(inputs.clone())?;
        }
        self.first_level.set(inputs).map(drop)
    }
}

/// By node, whether its value needs a leaf of [`StreetInputs::set_rest`].
fn needs_rest(graph: &Graph) -> Vec<bool> {
    let mut rest = Inputs::new();
    StreetInputs::default().set_rest(&mut rest);
    let mut needs = Vec::with_capacity(graph.nodes.len());
    for index in graph.indices() {
        let node = graph.node(index);
        let references = node.operator.references();
        let is_rest = rest.leaves.contains_key(&node.id) || references.iter().any(|need| needs[need.at()]);
        needs.push(is_rest);
    }
    needs
}

impl Study {
    fn whole(&self) -> &Whole {
        self.derived.figures.whole.get_or_init(|| {
            let mut rest = Inputs::new();
            StreetInputs::of(&self.seen(), self.alternative(), self.fabric(), self.painted()).set_rest(&mut rest);
            let mut evaluation = self.derived.figures.first_level.clone();
            let set = evaluation.set(rest);
            let faults = set.err().into_iter().flatten().map(|fault| fault.to_string());
            Whole {
                evaluation,
                faults: faults.collect(),
            }
        })
    }

    /// All figures, evaluated.
    ///
    /// Cost: nothing where all were asked for since the last change, else that of [`StreetInputs::of`]; for single
    /// figures see [`Study::figure_value`].
    #[must_use]
    pub fn evaluation(&self) -> &Evaluation {
        &self.whole().evaluation
    }

    /// All figures, evaluated, for ranges to be drawn on it.
    pub fn evaluation_mut(&mut self) -> &mut Evaluation {
        let _worked = self.whole();
        let Figures { first_level, whole, .. } = &mut self.derived.figures;
        // The whole was worked out just now, so the first level alone is never handed out.
        whole.get_mut().map_or(first_level, |whole| &mut whole.evaluation)
    }

    /// The graph of all figures.
    #[must_use]
    pub fn graph(&self) -> &Arc<Graph> {
        self.derived.figures.first_level.graph()
    }

    /// The figures, evaluated as far as this one needs it.
    #[must_use]
    pub fn evaluation_for(&self, index: NodeIndex) -> &Evaluation {
        let figures = &self.derived.figures;
        if figures.needs_rest.get(index.at()).copied().unwrap_or(true) {
            self.evaluation()
        } else {
            &figures.first_level
        }
    }

    /// A figure with its exact value, rounded for display, in the document's units.
    #[must_use]
    pub fn figure_value(&self, index: NodeIndex) -> FigureValue {
        self.evaluation_for(index).figure_value(index, system(self.document()))
    }

    /// Jobs on one lot of a building type, as `jobs.count` counts them: those the type says, by how much floor a job takes
    /// here beside what types say.
    #[must_use]
    pub fn jobs_on_lot(&self, held: &BuildingType) -> f64 {
        let figures = &self.derived.figures.first_level;
        let scale = figures.graph().index(FLOOR_PER_JOB_SCALE);
        let scale_of = |workplace| figures.cell(scale?, workplace).number();
        let by_workplace = WORKPLACES.iter().enumerate().map(|(workplace, floor_use)| {
            let said = held.jobs_ten_thousandths(*floor_use) as f64 / 1e4;
            said / scale_of(workplace).unwrap_or(1.0)
        });
        by_workplace.sum()
    }

    /// Overridden factors that could not be used, one sentence each.
    #[must_use]
    pub fn override_faults(&self) -> &[String] {
        let whole = self.derived.figures.whole.get();
        match whole.filter(|whole| !whole.faults.is_empty()) {
            Some(whole) => &whole.faults,
            None => &self.derived.override_faults,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measures;
    use crate::study::first_level::FIRST_LEVEL;

    #[test]
    fn no_figure_of_the_first_level_needs_the_rest() {
        let graph = measures::graph().unwrap();
        let needs = needs_rest(&graph);
        let at = |id: &str| graph.index(id).unwrap().at();
        for id in FIRST_LEVEL {
            assert!(!needs[at(id)], "{id}");
        }
        for id in [
            "streets.link_node_ratio",
            "streets.parts",
            "sun.blocks_share",
            "streets.boundary_gap_mean",
        ] {
            assert!(needs[at(id)], "{id}");
        }
    }

    /// A plan kept while factors gave floor areas per job: 500 square feet of office where 250 were usual leave half the
    /// jobs, and what the lots hold sums to the figure still.
    #[test]
    fn a_kept_plans_floor_area_per_job_still_counts() {
        use crate::exchange::plan_file;
        use crate::plan::document::FactorOverride;
        let village = include_bytes!("../../../sample-sketches/compact-village.geojson");
        let mut document = plan_file::read(village).unwrap().document;
        let jobs_of_work = |document: &crate::plan::Document| {
            let study = Study::open(document.clone()).unwrap();
            assert_eq!(study.override_faults(), [""; 0]);
            let number = |id: &str| study.evaluation().value(id).unwrap().number().unwrap();
            let lots = study.painted().iter().flat_map(|face| &face.lots);
            let types = &study.painted().palette;
            let on_lots: f64 = lots
                .map(|(id, lots)| lots * study.jobs_on_lot(types.get(*id).unwrap()))
                .sum();
            assert!((on_lots - number("jobs.count")).abs() < 1e-9);
            let by_workplace = study.graph().index("jobs.by_workplace").unwrap();
            study.evaluation().cell(by_workplace, 0).number().unwrap()
        };
        let before = jobs_of_work(&document);
        let own = FactorOverride {
            low: 400.0,
            typical: 500.0,
            high: 600.0,
            source: "a survey in town".to_owned(),
        };
        let earlier_id = "jobs.floor_per_job.work".to_owned();
        document.settings.overridden_factors.insert(earlier_id, own);
        assert!((jobs_of_work(&document) * 2.0 - before).abs() < 1e-9);
    }
}
