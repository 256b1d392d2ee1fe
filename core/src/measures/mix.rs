//! How mixed the floor area is, and the jobs it holds.
//!
//! Jobs are those that the building types say on their floor, by how much floor a job takes here beside what they say:
//! one, with the doubt of published figures in it. Soft areas hold jobs in the same way.
//!
//! Not counted: work done at home; jobs outside the site.

use crate::figures::expression::{Binary, Expression, Function, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::method::{Method, MethodInput, MethodStep, MethodTerm};
use crate::figures::unit::{self, Dimension};
use crate::number;
use crate::say;

/// How many [`uses`] there are.
pub const USES: usize = 5;

/// The five daily needs, as uses of floor area: the fixed list that evenness is taken over.
#[must_use]
pub fn uses() -> [(&'static str, &'static str); USES] {
    [
        ("homes", say!("measures-use-homes")),
        ("work", say!("measures-use-work")),
        ("shops", say!("measures-use-shops")),
        ("learning", say!("measures-use-learning")),
        ("gathering", say!("measures-use-gathering")),
    ]
}

/// Where in [`uses`] the uses with jobs begin. Work done at home is not counted.
pub const FIRST_WORKPLACE: usize = 1;

/// How many of [`uses`] have jobs.
pub const WORKPLACES: usize = USES - FIRST_WORKPLACE;

/// How much floor a job takes here beside what the building types say, for each workplace.
pub const FLOOR_PER_JOB_SCALE: &str = "jobs.floor_per_job_scale";

/// Jobs on floor area that is a table over building types and workplaces.
pub(super) fn jobs_on(floor_area: &str) -> Expression<String> {
    figure(floor_area) * figure("jobs.per_floor_area") / figure(FLOOR_PER_JOB_SCALE)
}

/// Declares use mix and jobs, and the axes `use` and `workplace`. Needs what [`super::homes::declare`] declares.
pub fn declare(graph: &mut GraphBuilder) {
    graph.fixed_axis("use", say!("measures-use"), &uses());
    graph.fixed_axis(
        "workplace",
        say!("measures-workplace"),
        uses().get(FIRST_WORKPLACE..).unwrap_or_default(),
    );

    let _ = graph
        .chosen("mix.floor_per_lot", say!("measures-floor-use-lot"), unit::AREA_PER_LOT)
        .over(&["building_type", "use"]);
    let _ = graph
        .chosen(
            "jobs.floor_per_lot",
            say!("measures-floor-workplace-lot"),
            unit::AREA_PER_LOT,
        )
        .over(&["building_type", "workplace"]);
    let _ = graph
        .chosen(
            "jobs.per_floor_area",
            say!("measures-jobs-per-floor"),
            unit::JOBS_PER_AREA,
        )
        .over(&["building_type", "workplace"]);
    let _ = graph
        .factor(FLOOR_PER_JOB_SCALE, say!("measures-floor-per-job-scale"), unit::NUMBER)
        .over(&["workplace"]);

    let lots = || figure("lots.by_building_type") + figure("lots.soft_by_building_type");
    graph
        .figure(
            "mix.floor_area_by_building_type",
            say!("measures-floor-type-use"),
            unit::AREA,
        )
        .over(&["building_type", "use"])
        .formula(lots() * figure("mix.floor_per_lot"));
    graph
        .figure("mix.floor_area", say!("measures-floor-use"), unit::AREA)
        .over(&["use"])
        .sum("mix.floor_area_by_building_type", &["building_type"]);
    graph
        .figure(
            "jobs.floor_area_by_building_type",
            say!("measures-floor-type-workplace"),
            unit::AREA,
        )
        .over(&["building_type", "workplace"])
        .formula(lots() * figure("jobs.floor_per_lot"));
    graph
        .figure("jobs.floor_area", say!("measures-floor-workplace"), unit::AREA)
        .over(&["workplace"])
        .sum("jobs.floor_area_by_building_type", &["building_type"]);
    graph
        .figure("mix.use_evenness", say!("measures-use-evenness"), unit::NUMBER)
        .method(&EVENNESS, &["mix.floor_area"], &["use"]);
    graph
        .figure(
            "jobs.by_building_type_and_workplace",
            say!("measures-jobs-type-workplace"),
            unit::JOBS,
        )
        .over(&["building_type", "workplace"])
        .formula(jobs_on("jobs.floor_area_by_building_type"));
    graph
        .figure("jobs.by_workplace", say!("measures-jobs-workplace"), unit::JOBS)
        .over(&["workplace"])
        .sum("jobs.by_building_type_and_workplace", &["building_type"]);
    graph
        .figure("jobs.by_building_type", say!("measures-jobs-type"), unit::JOBS)
        .over(&["building_type"])
        .sum("jobs.by_building_type_and_workplace", &["workplace"]);
    graph
        .figure("jobs.count", say!("measures-jobs"), unit::JOBS)
        .sum("jobs.by_workplace", &["workplace"]);
    graph
        .figure("jobs.per_home", say!("measures-jobs-per-home"), unit::JOBS_PER_HOME)
        .formula(figure("jobs.count") / figure("homes.count"));
    let _ = graph.factor(
        "people.workers_per_home",
        say!("measures-workers-per-home"),
        unit::PEOPLE_PER_HOME,
    );
    graph
        .figure("people.workers", say!("measures-workers"), unit::PEOPLE)
        .formula(figure("homes.count") * figure("people.workers_per_home"));
    graph
        .figure(
            "jobs.per_worker",
            say!("measures-jobs-per-worker"),
            unit::JOBS_PER_PERSON,
        )
        .formula(figure("jobs.count") / figure("people.workers"));
}

/// Jobs per home of a balanced place: R. Ewing 1996, as told by "Jobs-housing balance basics", HousingForward Virginia
/// (read). Of a town or a corridor; a single neighborhood need not be balanced in itself.
pub const BALANCED_JOBS_PER_HOME: (f64, f64) = (1.3, 1.7);

/// Jobs per employed resident of a balanced place: R. Cervero 1996, as told by the same page (read).
pub const BALANCED_JOBS_PER_WORKER: (f64, f64) = (0.8, 1.25);

/// Evenness `E = −Σ p ln p ÷ ln N` of amounts over N listed kinds, `p` a kind's share of the total: 0 when all is of one
/// kind, 1 when all kinds have the same. An empty kind counts in N and adds nothing.
///
/// Source: the entropy score of an epidemiology unit's data dictionary (five uses; 0 for one use), read; the same formula
/// as Shannon evenness in ecology. It says nothing of how the uses lie beside one another.
pub static EVENNESS: Method = Method {
    name: || say!("measures-evenness-name"),
    words: || say!("measures-evenness-words"),
    inputs: &[unit::AREA.dimension],
    gives: Dimension::NONE,
    evaluate: evenness,
    steps: evenness_steps,
};

fn evenness(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String> {
    let ([amounts], [result]) = (inputs, results) else {
        return Err(say!("measures-evenness-one-list").to_owned());
    };
    if amounts.iter().any(|amount| *amount < 0.0) {
        return Err(say!("measures-amount-below-zero").to_owned());
    }
    let total: f64 = amounts.iter().sum();
    if total <= 0.0 {
        return Err(say!("measures-no-floor").to_owned());
    }
    let disorder: f64 = amounts
        .iter()
        .map(|amount| amount / total)
        .filter(|share| *share > 0.0)
        .map(|share| -share * number::ln(share))
        .sum();
    // One kind listed is all of one kind. Rounding may carry the quotient a hair past its bounds.
    let most = number::ln(amounts.len() as f64);
    *result = if most > 0.0 {
        (disorder / most).clamp(0.0, 1.0)
    } else {
        0.0
    };
    Ok(())
}

fn evenness_steps(inputs: &[MethodInput], _cell: usize) -> Vec<MethodStep> {
    let [amounts] = inputs else {
        return Vec::new();
    };
    let term = |term: MethodTerm| Expression::Figure(term);
    let plain = |value: f64| Expression::Constant(value, unit::NUMBER);
    let binary = |operation, left, right| Expression::Binary(operation, Box::new(left), Box::new(right));
    let sum = |parts: Vec<Expression<MethodTerm>>| {
        parts
            .into_iter()
            .reduce(|sum, part| binary(Binary::Add, sum, part))
            .unwrap_or(plain(0.0))
    };
    let present: Vec<usize> = (0..amounts.values.len())
        .filter(|cell| amounts.values[*cell] > 0.0)
        .collect();

    let mut steps = vec![MethodStep {
        title: say!("measures-all-floor").to_owned(),
        unit: unit::AREA,
        formula: sum(present
            .iter()
            .map(|cell| term(MethodTerm::Input { input: 0, cell: *cell }))
            .collect()),
    }];
    for cell in &present {
        steps.push(MethodStep {
            title: say!("measures-share-of", what = amounts.labels[*cell]),
            unit: unit::SHARE,
            formula: binary(
                Binary::Divide,
                term(MethodTerm::Input { input: 0, cell: *cell }),
                term(MethodTerm::Step(0)),
            ),
        });
    }
    let logarithm = |of| Expression::Function(Function::Logarithm, Box::new(of));
    let disorder = sum((1..=present.len())
        .map(|step| {
            let share = term(MethodTerm::Step(step));
            binary(Binary::Multiply, share.clone(), logarithm(share))
        })
        .collect());
    let listed = logarithm(plain(amounts.values.len() as f64));
    steps.push(MethodStep {
        title: say!("measures-evenness").to_owned(),
        unit: unit::NUMBER,
        formula: binary(Binary::Divide, binary(Binary::Subtract, plain(0.0), disorder), listed),
    });
    steps
}

#[cfg(test)]
mod tests;
