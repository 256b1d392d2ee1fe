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

impl Factors {
    /// These factors with the user's own values, each by id or earlier id. A value equal to the shipped one is no
    /// change.
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
            let Some(shipped) = self.get(id) else {
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
        let changed = shipped.with_overrides([("people.per_home", own(3.0))]).unwrap();
        let factor = changed.get("people.per_home").unwrap();
        assert!((factor.spread.typical - 3.0).abs() < 1e-12);
        assert_eq!(factor.shipped, Some(shipped.get("people.per_home").unwrap().spread));
        assert!(factor.spread.faults().is_empty());
    }

    #[test]
    fn the_shipped_value_is_no_change() {
        let shipped = Factors::shipped().unwrap();
        let changed = shipped.with_overrides([("people.per_home", own(2.51))]).unwrap();
        assert_eq!(changed, shipped);
    }

    #[test]
    fn every_fault_of_the_users_values_is_returned() {
        let shipped = Factors::shipped().unwrap();
        let faults = shipped
            .with_overrides([
                ("no.such", own(1.0)),
                ("people.per_home", own(-1.0)),
                ("land.lot_yield_share", own(2.0)),
                ("people.per_home", own(2.0)),
            ])
            .unwrap_err();
        let ids: Vec<&str> = faults.iter().map(|fault| fault.id.as_str()).collect();
        assert_eq!(
            ids,
            ["no.such", "people.per_home", "land.lot_yield_share", "people.per_home"]
        );
    }
}
