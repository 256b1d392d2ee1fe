//! Named steps, run in order up to the first that fails, with the minutes each took.

use std::time::{Duration, Instant};

/// One named check.
pub struct Step<'a> {
    /// What it is called in the report.
    pub name: &'static str,
    /// The check.
    pub check: Box<dyn FnOnce() -> Result<(), String> + 'a>,
}

impl<'a> Step<'a> {
    /// A step that passes when `check` does.
    pub fn new(name: &'static str, check: impl FnOnce() -> Result<(), String> + 'a) -> Step<'a> {
        Step {
            name,
            check: Box::new(check),
        }
    }
}

/// What became of the steps that were started.
pub struct Report {
    /// Name and time of each step that was started, in order.
    pub times: Vec<(&'static str, Duration)>,
    /// The last of them, with the fault, when it failed.
    pub failed: Option<(&'static str, String)>,
}

/// Runs the steps up to the first that fails.
pub fn run(steps: Vec<Step<'_>>) -> Report {
    let mut times = Vec::new();
    for step in steps {
        println!("\n== {} ==", step.name);
        let start = Instant::now();
        let result = (step.check)();
        times.push((step.name, start.elapsed()));
        if let Err(fault) = result {
            return Report {
                times,
                failed: Some((step.name, fault)),
            };
        }
    }
    Report { times, failed: None }
}

impl Report {
    /// Minutes per step, the failed step with its fault, and last a plain line that counts the steps.
    pub fn in_words(&self) -> String {
        let mut lines = vec!["minutes per step".to_string()];
        let mut total = Duration::ZERO;
        for (name, time) in &self.times {
            lines.push(format!("{:6.1}  {name}", minutes(*time)));
            total += *time;
        }
        lines.push(format!("{:6.1}  in all", minutes(total)));
        if let Some((name, fault)) = &self.failed {
            lines.push(format!("\nstopped at `{name}`: {fault}"));
        }
        let failed = usize::from(self.failed.is_some());
        lines.push(format!("\n{} passed, {failed} failed", self.times.len() - failed));
        lines.join("\n")
    }
}

fn minutes(time: Duration) -> f64 {
    time.as_secs_f64() / 60.0
}

#[cfg(test)]
mod tests {
    use std::cell::RefCell;

    use super::*;

    #[test]
    fn steps_run_in_order_and_stop_at_the_first_fault() {
        let order = RefCell::new(Vec::new());
        let note = |name: &'static str, result: Result<(), String>| {
            let order = &order;
            Step::new(name, move || {
                order.borrow_mut().push(name);
                result
            })
        };
        let fault = Err("two lines are too long".to_string());
        let report = run(vec![
            note("format", Ok(())),
            note("lints", fault),
            note("tests", Ok(())),
        ]);
        assert_eq!(*order.borrow(), ["format", "lints"]);
        assert_eq!(report.failed, Some(("lints", "two lines are too long".to_string())));
        let words = report.in_words();
        assert!(words.contains("stopped at `lints`: two lines are too long"), "{words}");
        assert!(words.ends_with("\n1 passed, 1 failed"), "{words}");
    }

    #[test]
    fn when_all_pass_the_last_line_counts_them() {
        let report = run(vec![Step::new("format", || Ok(())), Step::new("tests", || Ok(()))]);
        assert!(report.in_words().ends_with("\n2 passed, 0 failed"));
    }

    #[test]
    fn times_are_given_in_minutes() {
        let report = Report {
            times: vec![("tests", Duration::from_secs(90))],
            failed: None,
        };
        assert!(
            report.in_words().contains("   1.5  tests\n   1.5  in all"),
            "{}",
            report.in_words()
        );
    }
}
