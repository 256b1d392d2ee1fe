//! The user's own values for factors. They keep the shipped values beside them, so that every figure they go into can
//! be marked.

use std::fmt;
use std::sync::Arc;

use super::Factors;
use crate::figures::leaf::Spread;
use crate::say;

/// The user's own value for a factor, in the unit the factor is written in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Override {
    /// Low; as shipped when not given and still at most `typical`, else `typical`.
    pub low: Option<f64>,
    /// Typical.
    pub typical: f64,
    /// High; as shipped when not given and still at least `typical`, else `typical`.
    pub high: Option<f64>,
}

/// A fault in the user's own value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OverrideFault {
    /// The factor.
    pub id: String,
    /// What is wrong.
    pub problem: String,
}

impl fmt::Display for OverrideFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&say!("factors-own-fault", factor = self.id, fault = self.problem))
    }
}

/// What was a factor once, by its earlier id: a floor area per job, in square feet, and people per home. Now factors say
/// how many times as much it is as the plan's building types say; the last is what was usual (people per home: the
/// average household of 2023, by a search engine's extract whose publishing office was not recorded).
const EARLIER: [(&str, &str, f64); 5] = [
    ("jobs.floor_per_job.work", "jobs.floor_per_job_scale.work", 250.0),
    ("jobs.floor_per_job.shops", "jobs.floor_per_job_scale.shops", 550.0),
    (
        "jobs.floor_per_job.learning",
        "jobs.floor_per_job_scale.learning",
        1300.0,
    ),
    (
        "jobs.floor_per_job.gathering",
        "jobs.floor_per_job_scale.gathering",
        1645.0,
    ),
    ("people.per_home", "people.household_scale", 2.51),
];

/// A value as it is meant now, by the id it has now: what had a unit counts by what was usual.
fn meant_now(id: &str, value: Override) -> (&str, Override) {
    let found = EARLIER.iter().find(|(earlier, ..)| *earlier == id);
    found.map_or((id, value), |(_, now, usual)| {
        let relative = Override {
            low: value.low.map(|low| low / usual),
            typical: value.typical / usual,
            high: value.high.map(|high| high / usual),
        };
        (now, relative)
    })
}

impl Factors {
    /// These factors with the user's own values, each by id or earlier id. A value equal to the shipped one is no
    /// change.
    ///
    /// Floor areas per job and people per home, which kept plans may name, are taken as so many times what was usual: a
    /// plan that said 500 square feet of office where 250 was usual has jobs that take twice the floor its building types
    /// say.
    ///
    /// # Errors
    /// Every unknown id, every id named twice, every value that does not fit its factor.
    pub fn with_overrides<'a>(
        &self,
        overrides: impl IntoIterator<Item = (&'a str, Override)>,
    ) -> Result<Self, Vec<OverrideFault>> {
        let mut changed = self.clone();
        let mut seen = crate::order::OrderedSet::new();
        let mut faults = Vec::new();
        for (id, value) in overrides {
            let mut fault = |problem: String| {
                faults.push(OverrideFault {
                    id: id.to_owned(),
                    problem,
                });
            };
            let (now, value) = meant_now(id, value);
            let Some(shipped) = self.get(now) else {
                fault(say!("factors-no-such").to_owned());
                continue;
            };
            if !seen.insert(shipped.id.clone()) {
                fault(say!("factors-given-twice").to_owned());
                continue;
            }
            let spread = overridden(&shipped.spread, &value, shipped.scale);
            let problems = spread.faults();
            for problem in &problems {
                fault(problem.clone());
            }
            if problems.is_empty() && spread != shipped.spread {
                let mut factor = (**shipped).clone();
                factor.shipped = Some(shipped.spread);
                factor.spread = spread;
                changed.rows.insert(factor.id.clone(), Arc::new(factor));
            }
        }
        if faults.is_empty() { Ok(changed) } else { Err(faults) }
    }
}

fn overridden(shipped: &Spread, value: &Override, scale: f64) -> Spread {
    let typical = value.typical * scale;
    Spread {
        low: value.low.map_or(shipped.low.min(typical), |low| low * scale),
        typical,
        high: value.high.map_or(shipped.high.max(typical), |high| high * scale),
        kind: shipped.kind,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn own(typical: f64) -> Override {
        Override {
            low: None,
            typical,
            high: None,
        }
    }

    #[test]
    fn an_overridden_factor_keeps_its_shipped_values_beside_it() {
        let shipped = Factors::shipped().unwrap();
        let changed = shipped.with_overrides([("people.workers_per_home", own(1.7))]).unwrap();
        let factor = changed.get("people.workers_per_home").unwrap();
        assert!((factor.spread.typical - 1.7).abs() < 1e-12);
        assert_eq!(
            factor.shipped,
            Some(shipped.get("people.workers_per_home").unwrap().spread)
        );
        assert!(factor.spread.faults().is_empty());
    }

    #[test]
    fn the_shipped_value_is_no_change() {
        let shipped = Factors::shipped().unwrap();
        let changed = shipped
            .with_overrides([("people.workers_per_home", own(1.25))])
            .unwrap();
        assert_eq!(changed, shipped);
    }

    /// Plans kept while factors gave floor areas per job and people per home still say what they said.
    #[test]
    fn what_was_a_factor_once_is_so_many_times_the_usual_one() {
        let shipped = Factors::shipped().unwrap();
        let of = |values: [(&str, Override); 1]| shipped.with_overrides(values).unwrap();
        let whole = Override {
            low: Some(400.0),
            typical: 500.0,
            high: Some(800.0),
        };
        let changed = of([("jobs.floor_per_job.work", whole)]);
        let spread = changed.get("jobs.floor_per_job_scale.work").unwrap().spread;
        let expected = Spread {
            low: 1.6,
            typical: 2.0,
            high: 3.2,
            ..spread
        };
        assert_eq!(spread, expected);
        for (earlier, now, usual) in EARLIER {
            assert_eq!(of([(earlier, own(usual))]), shipped, "{earlier}");
            let changed = of([(earlier, own(usual * 1.5))]);
            let now = changed.get(now).unwrap();
            assert!((now.spread.typical - 1.5).abs() < 1e-12, "{earlier}");
        }
        let values = [
            ("jobs.floor_per_job.work", own(400.0)),
            ("jobs.floor_per_job_scale.work", own(2.0)),
        ];
        let faults = shipped.with_overrides(values).unwrap_err();
        assert_eq!(faults[0].id, "jobs.floor_per_job_scale.work", "given twice");
    }

    #[test]
    fn every_fault_of_the_users_values_is_returned() {
        let shipped = Factors::shipped().unwrap();
        let faults = shipped
            .with_overrides([
                ("no.such", own(1.0)),
                ("people.workers_per_home", own(-1.0)),
                ("land.lot_yield_share", own(2.0)),
                ("people.workers_per_home", own(2.0)),
            ])
            .unwrap_err();
        let ids: Vec<&str> = faults.iter().map(|fault| fault.id.as_str()).collect();
        assert_eq!(
            ids,
            [
                "no.such",
                "people.workers_per_home",
                "land.lot_yield_share",
                "people.workers_per_home"
            ]
        );
    }
}
