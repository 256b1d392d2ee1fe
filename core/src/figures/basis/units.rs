//! What the units of a formula are worth, where they do not cancel as they stand.

use super::Writer;
use crate::figures::expression::{Binary, Expression};
use crate::figures::graph::NodeIndex;
use crate::figures::unit::{Unit, conversion};
use crate::number;

impl Writer<'_> {
    /// What the units are worth, unless they cancel as they stand.
    pub(super) fn conversions(&self, formula: &Expression<(NodeIndex, usize)>, unit: &Unit) -> Vec<String> {
        let mut units = Vec::new();
        let scale = self.scale_of(formula, &mut units);
        if scale.is_some_and(|scale| is_same(scale, self.plain_scale(unit))) {
            return Vec::new();
        }
        units.push(*unit);
        let mut texts: Vec<String> = Vec::new();
        for text in units.iter().filter_map(|unit| conversion(unit, self.system)) {
            if !texts.contains(&text) {
                texts.push(text);
            }
        }
        texts
    }

    /// Coherent units in one unit of the formula's plain result; `None` where units do not match as they stand.
    fn scale_of(&self, formula: &Expression<(NodeIndex, usize)>, units: &mut Vec<Unit>) -> Option<f64> {
        let of_unit = |unit: Unit, units: &mut Vec<Unit>| {
            units.push(unit);
            Some(self.plain_scale(&unit))
        };
        match formula {
            Expression::Figure((need, _)) => of_unit(self.values.graph.node(*need).unit, units),
            Expression::Constant(_, unit) => of_unit(*unit, units),
            Expression::Binary(operation, left, right) => {
                let (left_scale, right_scale) = (self.scale_of(left, units), self.scale_of(right, units));
                let (left_scale, right_scale) = (left_scale?, right_scale?);
                match (operation, &**right) {
                    (Binary::Multiply, _) => Some(left_scale * right_scale),
                    (Binary::Divide, _) => Some(left_scale / right_scale),
                    (Binary::Power, Expression::Constant(exponent, _)) => Some(number::power(left_scale, *exponent)),
                    _ => is_same(left_scale, right_scale).then_some(left_scale),
                }
            }
            Expression::Function(_, of) => self.scale_of(of, units).filter(|scale| is_same(*scale, 1.0)),
            Expression::Choose(choice) => {
                let sides = [&choice.left, &choice.right].map(|side| self.scale_of(side, units));
                let branches = [&choice.then, &choice.otherwise].map(|side| self.scale_of(side, units));
                let matched = |pair: [Option<f64>; 2]| match pair {
                    [Some(a), Some(b)] if is_same(a, b) => Some(a),
                    _ => None,
                };
                matched(sides)?;
                matched(branches)
            }
        }
    }

    /// Percent needs no conversion: everybody reads 92% as 0.92.
    fn plain_scale(&self, unit: &Unit) -> f64 {
        let shown = unit.shown(self.system);
        if shown.one == "%" { 1.0 } else { shown.scale }
    }
}

fn is_same(a: f64, b: f64) -> bool {
    (a / b - 1.0).abs() < 1e-12
}
