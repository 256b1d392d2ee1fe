//! A basis as plain text, for the command line and the print.
//!
//! Each step is a heading and indented lines:
//!
//! ```text
//! homes by building type [homes.by_building_type]
//!   = buildable land by building type × share of land that becomes lots ÷ area of a lot × homes on a lot
//!   for cottage:
//!   = 4.35 ha × 92% ÷ 450 m²/lot × 1 homes/lot
//!   = 88.9333 homes
//!   1 ha = 10,000 m²
//!   for row house: 74.8778 homes
//! ```

use std::fmt;

use super::basis::{Basis, Line, Origin, Row, Step, TERMS_IN_FORMULA};
use crate::say;

impl fmt::Display for Basis {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (place, step) in self.steps.iter().enumerate() {
            if place > 0 {
                out.write_str("\n")?;
            }
            step.fmt(out)?;
        }
        Ok(())
    }
}

impl fmt::Display for Step {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(out, "{} [{}]", self.title, self.id)?;
        match &self.origin {
            Origin::Worked { words } => writeln!(out, "  = {words}")?,
            Origin::Method { name, words } => indented(out, &say!("figures-by-method", name = name, words = words))?,
            Origin::Counted { counted: Some(counted) } => {
                indented(out, &say!("figures-counted-what", what = counted))?;
            }
            Origin::Counted { counted: None } => indented(out, say!("figures-counted"))?,
            Origin::Chosen => indented(out, say!("figures-chosen"))?,
            Origin::Factor => indented(out, say!("figures-from-factors"))?,
        }
        match &self.row {
            Some(row) => write_full_row(row, out)?,
            None => indented(out, say!("figures-no-entries"))?,
        }
        for conversion in &self.conversions {
            writeln!(out, "  {conversion}")?;
        }
        let leave_out_zeros = self.rest.len() > TERMS_IN_FORMULA;
        let mut zeros = 0_usize;
        for row in &self.rest {
            if leave_out_zeros && is_zero(&row.value) && row.sources.is_empty() {
                zeros += 1;
                continue;
            }
            indented(out, &say!("figures-for-value", place = row.label, value = row.value))?;
            write_sources(row, out)?;
        }
        if zeros > 0 {
            indented(out, &say!("figures-zeros-left-out", zeros = zeros))?;
        }
        if self.unlisted > 0 {
            indented(out, &say!("figures-not-listed", rows = self.unlisted))?;
        }
        if !self.changed_factors.is_empty() {
            let factors = self.changed_factors.join(", ");
            indented(out, &say!("figures-changed-factors", factors = factors))?;
        }
        Ok(())
    }
}

fn write_full_row(row: &Row, out: &mut fmt::Formatter<'_>) -> fmt::Result {
    if row.lines.is_empty() {
        match row.label.as_str() {
            "" => writeln!(out, "  {}", row.value)?,
            label => indented(out, &say!("figures-for-value", place = label, value = row.value))?,
        }
        return write_sources(row, out);
    }
    if !row.label.is_empty() {
        indented(out, &say!("figures-for", place = row.label))?;
    }
    for line in &row.lines {
        write_line(line, out)?;
    }
    // A method's last line has its result; it is also the figure's, and stands once more as such.
    if row.lines.iter().any(|line| line.title.is_some()) {
        writeln!(out, "  {}", row.value)?;
    }
    write_sources(row, out)
}

fn write_line(line: &Line, out: &mut fmt::Formatter<'_>) -> fmt::Result {
    if let Some(title) = &line.title {
        writeln!(out, "  {title}")?;
    }
    writeln!(out, "  = {}", line.formula)?;
    let mut zeros: Vec<&str> = Vec::new();
    for term in &line.terms {
        match &term.weight {
            Some(weight) => writeln!(out, "    {}: {}; {weight}", term.label, term.value)?,
            None if is_zero(&term.value) => zeros.push(&term.value),
            None => writeln!(out, "    {}: {}", term.label, term.value)?,
        }
    }
    if let Some(zero) = zeros.first() {
        indented(
            out,
            &("  ".to_owned() + &say!("figures-terms-zero", terms = zeros.len(), zero = zero)),
        )?;
    }
    writeln!(out, "  = {}", line.result)
}

fn indented(out: &mut fmt::Formatter<'_>, line: &str) -> fmt::Result {
    writeln!(out, "  {line}")
}

/// Whether a written value is exactly zero: `0`, `0 acres`, `0%`.
fn is_zero(value: &str) -> bool {
    value == "0" || value.starts_with("0 ") || value == "0%"
}

fn write_sources(row: &Row, out: &mut fmt::Formatter<'_>) -> fmt::Result {
    for line in &row.sources {
        writeln!(out, "    {line}")?;
    }
    Ok(())
}
