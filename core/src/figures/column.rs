//! Working a node's table from the tables it needs: every operator, for values and for draws alike.
//!
//! A [`Column`] holds a table in one or many lanes: one for values, one for each draw when there is doubt. The same
//! code works both, so that a draw of the typical values is the value itself. NaN stands for "cannot be worked out".

use std::borrow::Cow;

use super::axis::{self, AxisIndex};
use super::expression::{Binary, Expression, settled};
use super::graph::{Graph, Node, NodeIndex, Operator};
use super::method::Method;
use crate::say;

/// The cells of a table, each in `lanes` lanes (at least one), the lanes of a cell together.
#[derive(Clone, Debug)]
pub struct Column {
    lanes: usize,
    values: Vec<f64>,
}

impl Column {
    /// A table without doubt: one lane.
    #[must_use]
    pub const fn certain(values: Vec<f64>) -> Self {
        Self { lanes: 1, values }
    }

    /// A table in `lanes` lanes; `values` holds the lanes of each cell together.
    #[must_use]
    pub const fn in_lanes(lanes: usize, values: Vec<f64>) -> Self {
        Self { lanes, values }
    }

    /// How many lanes each cell has.
    #[must_use]
    pub const fn lanes(&self) -> usize {
        self.lanes
    }

    /// How many cells.
    #[must_use]
    pub const fn cell_count(&self) -> usize {
        self.values.len() / self.lanes
    }

    /// The lanes of one cell.
    #[must_use]
    pub fn cell(&self, cell: usize) -> &[f64] {
        &self.values[cell * self.lanes..(cell + 1) * self.lanes]
    }

    /// One lane of one cell; a table of one lane has the same value in all.
    #[must_use]
    pub fn at(&self, cell: usize, lane: usize) -> f64 {
        self.values[cell * self.lanes + if self.lanes == 1 { 0 } else { lane }]
    }

    /// Whether both hold the same bits, any number that cannot be worked out being unlike all others.
    #[must_use]
    pub fn is_identical(&self, other: &Self) -> bool {
        self.lanes == other.lanes
            && self.values.len() == other.values.len()
            && self
                .values
                .iter()
                .zip(&other.values)
                .all(|(a, b)| a.to_bits() == b.to_bits() && !a.is_nan())
    }
}

/// What working a node needs to see.
pub(crate) struct Tables<'a> {
    pub graph: &'a Graph,
    /// Number of entries of each axis.
    pub lengths: &'a [usize],
    /// The table of each node already worked.
    pub column: &'a dyn Fn(NodeIndex) -> &'a Column,
}

impl<'a> Tables<'a> {
    pub fn lengths_of(&self, axes: &[AxisIndex]) -> Vec<usize> {
        axes.iter().map(|axis| self.lengths[axis.at()]).collect()
    }

    /// Strides of `index`'s table along `along`.
    pub fn strides(&self, index: NodeIndex, along: &[AxisIndex]) -> Vec<usize> {
        let axes = &self.graph.node(index).axes;
        axis::strides(axes, &self.lengths_of(axes), along)
    }

    /// The table of a node that is not a leaf.
    pub fn work(&self, node: &Node) -> Column {
        let needs = node.operator.references();
        let lanes = needs
            .iter()
            .map(|need| (self.column)(**need).lanes())
            .max()
            .unwrap_or(1);
        let lengths = self.lengths_of(&node.axes);
        let mut out = Column::in_lanes(lanes, vec![f64::NAN; axis::cell_count(&lengths) * lanes]);
        match &node.operator {
            Operator::Leaf(_) => {}
            Operator::Formula(formula) => self.work_formula(node, formula, &mut out),
            Operator::Sum { of, over } => self.work_sum(node, *of, over, &mut out),
            Operator::WeightedMean { of, weight, over } => self.work_mean(node, *of, *weight, over, &mut out),
            Operator::Entry { of, along, entry } => self.work_entry(node, *of, (*along, entry), &mut out),
            Operator::Lookup { x, y, at, knots } => self.work_lookup(node, [*x, *y, *at], *knots, &mut out),
            Operator::RunningBalance {
                start,
                change,
                least,
                most,
                along,
            } => self.work_balance(node, [Some(*start), Some(*change), *least, *most], *along, &mut out),
            Operator::Method { method, inputs, along } => self.work_method(node, method, inputs, along, &mut out),
        }
        out
    }

    fn work_formula(&self, node: &Node, formula: &Expression<NodeIndex>, out: &mut Column) {
        let mut references = Vec::new();
        formula.references(&mut references);
        let strides: Vec<(NodeIndex, Vec<usize>)> = references
            .into_iter()
            .map(|need| (*need, self.strides(*need, &node.axes)))
            .collect();
        let lanes = out.lanes;
        let mut cell = 0;
        axis::for_each_index(&self.lengths_of(&node.axes), |index| {
            let fetch = |need: NodeIndex| {
                let place = strides
                    .iter()
                    .find(|(node, _)| *node == need)
                    .map_or(0, |(_, strides)| axis::cell_at(index, strides));
                match (self.column)(need).cell(place) {
                    [only] => Lanes::Same(*only),
                    each => Lanes::Each(Cow::Borrowed(each)),
                }
            };
            let target = &mut out.values[cell * lanes..(cell + 1) * lanes];
            match work_lanes(formula, &fetch) {
                Lanes::Same(value) => target.fill(value),
                Lanes::Each(values) => target.copy_from_slice(&values),
            }
            cell += 1;
        });
    }

    fn work_sum(&self, node: &Node, of: NodeIndex, over: &[AxisIndex], out: &mut Column) {
        let table = (self.column)(of);
        let lanes = out.lanes;
        self.for_each_group(node, of, over, |cell, members| {
            let target = &mut out.values[cell * lanes..(cell + 1) * lanes];
            target.fill(0.0);
            for member in members {
                for (total, value) in target.iter_mut().zip(table.cell(*member)) {
                    *total = settled(*total + value);
                }
            }
        });
    }

    fn work_mean(&self, node: &Node, of: NodeIndex, weight: NodeIndex, over: &[AxisIndex], out: &mut Column) {
        let (table, weights) = (((self.column)(of)), ((self.column)(weight)));
        let lanes = out.lanes;
        let mut members_of_weight = Vec::new();
        self.for_each_weighted_group(node, of, weight, over, |_, _, weighing| {
            members_of_weight.push(weighing.to_vec());
        });
        self.for_each_group(node, of, over, |cell, members| {
            for lane in 0..lanes {
                let (mut total, mut total_weight) = (0.0, 0.0);
                for (member, weighing) in members.iter().zip(&members_of_weight[cell]) {
                    let weight = weights.at(*weighing, lane);
                    total = settled(total + table.at(*member, lane) * weight);
                    total_weight = settled(total_weight + weight);
                }
                out.values[cell * lanes + lane] = settled(total / total_weight);
            }
        });
    }

    fn work_entry(&self, node: &Node, of: NodeIndex, (along, entry): (AxisIndex, &str), out: &mut Column) {
        let table = (self.column)(of);
        let strides = self.strides(of, &node.axes);
        let Some(first) = self.entry_first(of, along, entry) else {
            return;
        };
        let lanes = out.lanes;
        let mut cell = 0;
        axis::for_each_index(&self.lengths_of(&node.axes), |index| {
            let read = table.cell(first + axis::cell_at(index, &strides));
            out.values[cell * lanes..(cell + 1) * lanes].copy_from_slice(read);
            cell += 1;
        });
    }

    /// The first cell of `of` at an entry of a fixed axis.
    pub fn entry_first(&self, of: NodeIndex, along: AxisIndex, entry: &str) -> Option<usize> {
        let step = self.strides(of, &[along])[0];
        self.graph.axis(along).place_of(entry).map(|place| place * step)
    }

    fn work_lookup(&self, node: &Node, [x, y, at]: [NodeIndex; 3], knots: AxisIndex, out: &mut Column) {
        let [xs, ys, places] = [x, y, at].map(|index| (self.column)(index));
        let [x_strides, y_strides, at_strides] = [x, y, at].map(|index| self.strides(index, &node.axes));
        let [x_step, y_step] = [x, y].map(|index| self.strides(index, &[knots])[0]);
        let count = self.lengths[knots.at()];
        let lanes = out.lanes;
        let knots_vary = xs.lanes > 1 || ys.lanes > 1;
        let mut cell = 0;
        axis::for_each_index(&self.lengths_of(&node.axes), |index| {
            let [x_first, y_first, place] =
                [&x_strides, &y_strides, &at_strides].map(|strides| axis::cell_at(index, strides));
            let mut curve = Curve::default();
            for lane in 0..lanes {
                if lane == 0 || knots_vary {
                    curve.x.clear();
                    curve.y.clear();
                    curve
                        .x
                        .extend((0..count).map(|knot| xs.at(x_first + knot * x_step, lane)));
                    curve
                        .y
                        .extend((0..count).map(|knot| ys.at(y_first + knot * y_step, lane)));
                    curve.check();
                }
                out.values[cell * lanes + lane] = curve.read(places.at(place, lane));
            }
            cell += 1;
        });
    }

    fn work_balance(&self, node: &Node, parts: [Option<NodeIndex>; 4], along: AxisIndex, out: &mut Column) {
        let others: Vec<AxisIndex> = node.axes.iter().copied().filter(|axis| *axis != along).collect();
        let out_strides = axis::strides(&node.axes, &self.lengths_of(&node.axes), &others);
        let out_step = axis::strides(&node.axes, &self.lengths_of(&node.axes), &[along])[0];
        let parts = parts.map(|part| {
            part.map(|index| {
                (
                    (self.column)(index),
                    self.strides(index, &others),
                    self.strides(index, &[along])[0],
                )
            })
        });
        let lanes = out.lanes;
        axis::for_each_index(&self.lengths_of(&others), |index| {
            let first = axis::cell_at(index, &out_strides);
            for lane in 0..lanes {
                let value = |part: usize, entry: usize| {
                    parts[part]
                        .as_ref()
                        .map(|(column, strides, step)| column.at(axis::cell_at(index, strides) + entry * step, lane))
                };
                let mut balance = value(0, 0).unwrap_or(f64::NAN);
                for entry in 0..self.lengths[along.at()] {
                    balance = next_balance(
                        balance,
                        value(1, entry).unwrap_or(f64::NAN),
                        value(2, entry),
                        value(3, entry),
                    );
                    out.values[(first + entry * out_step) * lanes + lane] = balance;
                }
            }
        });
    }

    fn work_method(&self, node: &Node, method: &Method, inputs: &[NodeIndex], along: &[AxisIndex], out: &mut Column) {
        let lanes = out.lanes;
        let mut results = Vec::new();
        self.for_each_method_call(node, inputs, along, |gathered, filled| {
            let mut blocks: Vec<Vec<f64>> = gathered.iter().map(|cells| vec![0.0; cells.len()]).collect();
            results.resize(filled.len(), 0.0);
            for lane in 0..lanes {
                for ((block, cells), input) in blocks.iter_mut().zip(gathered).zip(inputs) {
                    let column = (self.column)(*input);
                    for (value, cell) in block.iter_mut().zip(cells) {
                        *value = column.at(*cell, lane);
                    }
                }
                let slices: Vec<&[f64]> = blocks.iter().map(Vec::as_slice).collect();
                let workable = slices.iter().all(|slice| slice.iter().all(|value| !value.is_nan()));
                if !workable || (method.evaluate)(&slices, &mut results).is_err() {
                    continue;
                }
                for (cell, result) in filled.iter().zip(&results) {
                    out.values[cell * lanes + lane] = settled(*result);
                }
            }
        });
    }

    /// For each cell of `node`, the cells of `of` that are brought together over `over`, in order.
    pub fn for_each_group(
        &self,
        node: &Node,
        of: NodeIndex,
        over: &[AxisIndex],
        mut visit: impl FnMut(usize, &[usize]),
    ) {
        self.for_each_weighted_group(node, of, of, over, |cell, members, _| visit(cell, members));
    }

    /// For each cell of `node`, the cells of `of` brought together over `over`, and the cells of `weight` beside them.
    pub fn for_each_weighted_group(
        &self,
        node: &Node,
        of: NodeIndex,
        weight: NodeIndex,
        over: &[AxisIndex],
        mut visit: impl FnMut(usize, &[usize], &[usize]),
    ) {
        let [of_strides, weight_strides] = [of, weight].map(|index| self.strides(index, &node.axes));
        let [of_inner, weight_inner] = [of, weight].map(|index| self.strides(index, over));
        let inner_lengths = self.lengths_of(over);
        let mut cell = 0;
        let (mut members, mut weighing) = (Vec::new(), Vec::new());
        axis::for_each_index(&self.lengths_of(&node.axes), |index| {
            members.clear();
            weighing.clear();
            let of_first = axis::cell_at(index, &of_strides);
            let weight_first = axis::cell_at(index, &weight_strides);
            axis::for_each_index(&inner_lengths, |inner| {
                members.push(of_first + axis::cell_at(inner, &of_inner));
                weighing.push(weight_first + axis::cell_at(inner, &weight_inner));
            });
            visit(cell, &members, &weighing);
            cell += 1;
        });
    }

    /// For each call of a method: the cells of each input it sees, and the cells of `node` it fills.
    pub fn for_each_method_call(
        &self,
        node: &Node,
        inputs: &[NodeIndex],
        along: &[AxisIndex],
        mut visit: impl FnMut(&[Vec<usize>], &[usize]),
    ) {
        let inside = |axes: &[AxisIndex]| -> Vec<AxisIndex> {
            axes.iter().copied().filter(|axis| along.contains(axis)).collect()
        };
        let outside: Vec<AxisIndex> = node.axes.iter().copied().filter(|axis| !along.contains(axis)).collect();
        let cells_at = |axes: &[AxisIndex], index: &[usize]| -> Vec<usize> {
            let lengths = self.lengths_of(axes);
            let inner_axes = inside(axes);
            let first = axis::cell_at(index, &axis::strides(axes, &lengths, &outside));
            let inner_strides = axis::strides(axes, &lengths, &inner_axes);
            let mut cells = Vec::new();
            axis::for_each_index(&self.lengths_of(&inner_axes), |inner| {
                cells.push(first + axis::cell_at(inner, &inner_strides));
            });
            cells
        };
        axis::for_each_index(&self.lengths_of(&outside), |index| {
            let gathered: Vec<Vec<usize>> = inputs
                .iter()
                .map(|input| cells_at(&self.graph.node(*input).axes, index))
                .collect();
            visit(&gathered, &cells_at(&node.axes, index));
        });
    }
}

/// `previous + change`, kept within `least` and `most`; `most` wins where they cross.
#[must_use]
pub fn next_balance(previous: f64, change: f64, least: Option<f64>, most: Option<f64>) -> f64 {
    let free = Binary::Add.apply(previous, change);
    let above = least.map_or(free, |least| Binary::Maximum.apply(free, least));
    most.map_or(above, |most| Binary::Minimum.apply(above, most))
}

/// A curve of straight pieces.
#[derive(Clone, Debug, Default)]
pub struct Curve {
    /// The knots' x.
    pub x: Vec<f64>,
    /// The knots' y.
    pub y: Vec<f64>,
    fault: Option<&'static str>,
}

impl Curve {
    /// A curve through the knots (x, y), as many of the one as of the other.
    #[must_use]
    pub fn new(x: Vec<f64>, y: Vec<f64>) -> Self {
        let mut curve = Self { x, y, fault: None };
        curve.check();
        curve
    }

    fn check(&mut self) {
        self.fault = if self.x.is_empty() {
            Some(say!("figures-curve-no-knots"))
        } else if self.x.iter().chain(&self.y).any(|value| value.is_nan()) {
            Some(say!("figures-curve-knot-unknown"))
        } else if self.x.windows(2).any(|pair| pair[0] > pair[1]) {
            Some(say!("figures-curve-out-of-order"))
        } else {
            None
        };
    }

    /// Why the curve cannot be read anywhere.
    #[must_use]
    pub const fn fault(&self) -> Option<&'static str> {
        self.fault
    }

    /// The piece that `at` falls in, as the knots at its two ends; the same knot twice beyond the curve's ends.
    #[must_use]
    pub fn piece(&self, at: f64) -> (usize, usize) {
        let after = self.x.partition_point(|x| *x <= at);
        let last = self.x.len().saturating_sub(1);
        match after {
            0 => (0, 0),
            _ if after > last => (last, last),
            _ => (after - 1, after),
        }
    }

    /// The curve at `at`; NaN when it cannot be read.
    #[must_use]
    pub fn read(&self, at: f64) -> f64 {
        if self.fault.is_some() || at.is_nan() {
            return f64::NAN;
        }
        let (from, to) = self.piece(at);
        if from == to {
            return self.y[from];
        }
        let (x0, x1, y0, y1) = (self.x[from], self.x[to], self.y[from], self.y[to]);
        settled(y0 + (y1 - y0) * (at - x0) / (x1 - x0))
    }
}

/// The lanes of one number on its way through a formula.
enum Lanes<'a> {
    Same(f64),
    Each(Cow<'a, [f64]>),
}

impl Lanes<'_> {
    fn at(&self, lane: usize) -> f64 {
        match self {
            Self::Same(value) => *value,
            Self::Each(values) => values[lane],
        }
    }

    fn count(&self) -> usize {
        match self {
            Self::Same(_) => 1,
            Self::Each(values) => values.len(),
        }
    }
}

fn work_lanes<'a>(formula: &Expression<NodeIndex>, fetch: &dyn Fn(NodeIndex) -> Lanes<'a>) -> Lanes<'a> {
    match formula {
        Expression::Figure(index) => fetch(*index),
        Expression::Constant(value, _) => Lanes::Same(*value),
        Expression::Binary(operation, left, right) => {
            let (left, right) = (work_lanes(left, fetch), work_lanes(right, fetch));
            match operation {
                Binary::Add => zip(left, right, |a, b| Binary::Add.apply(a, b)),
                Binary::Subtract => zip(left, right, |a, b| Binary::Subtract.apply(a, b)),
                Binary::Multiply => zip(left, right, |a, b| Binary::Multiply.apply(a, b)),
                Binary::Divide => zip(left, right, |a, b| Binary::Divide.apply(a, b)),
                other => zip(left, right, |a, b| other.apply(a, b)),
            }
        }
        Expression::Function(function, of) => match work_lanes(of, fetch) {
            Lanes::Same(value) => Lanes::Same(function.apply(value)),
            Lanes::Each(values) => {
                let mut values = values.into_owned();
                for value in &mut values {
                    *value = function.apply(*value);
                }
                Lanes::Each(Cow::Owned(values))
            }
        },
        Expression::Choose(choice) => {
            let left = work_lanes(&choice.left, fetch);
            let right = work_lanes(&choice.right, fetch);
            let then = work_lanes(&choice.then, fetch);
            let otherwise = work_lanes(&choice.otherwise, fetch);
            let pick = |lane| match (left.at(lane), right.at(lane)) {
                (a, b) if a.is_nan() || b.is_nan() => f64::NAN,
                (a, b) if choice.comparison.holds(a, b) => then.at(lane),
                _ => otherwise.at(lane),
            };
            let count = [&left, &right, &then, &otherwise].map(Lanes::count).into_iter().max();
            match count {
                None | Some(1) => Lanes::Same(pick(0)),
                Some(count) => Lanes::Each((0..count).map(pick).collect()),
            }
        }
    }
}

fn zip<'a>(left: Lanes<'a>, right: Lanes<'a>, apply: impl Fn(f64, f64) -> f64) -> Lanes<'a> {
    match (left, right) {
        (Lanes::Same(a), Lanes::Same(b)) => Lanes::Same(apply(a, b)),
        (Lanes::Each(a), Lanes::Same(b)) => {
            let mut values = a.into_owned();
            for value in &mut values {
                *value = apply(*value, b);
            }
            Lanes::Each(Cow::Owned(values))
        }
        (Lanes::Same(a), Lanes::Each(b)) => {
            let mut values = b.into_owned();
            for value in &mut values {
                *value = apply(a, *value);
            }
            Lanes::Each(Cow::Owned(values))
        }
        (Lanes::Each(a), Lanes::Each(b)) => {
            let mut values = a.into_owned();
            for (value, b) in values.iter_mut().zip(b.iter()) {
                *value = apply(*value, *b);
            }
            Lanes::Each(Cow::Owned(values))
        }
    }
}
