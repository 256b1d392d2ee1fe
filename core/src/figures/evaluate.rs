//! The values of a graph, and what an edit changes.
//!
//! An [`Evaluation`] holds the leaf values and every table that follows. Setting leaves works again only what depends
//! on them, in the graph's order, with the very functions that work everything from scratch, so both give the same
//! bits. A number that cannot be worked out is a [`Cell::Unknown`] with its reason.

use std::sync::Arc;

use super::axis::{self, AxisIndex, Entries, Entry};
use super::column::{Column, Tables};
use super::graph::{Graph, Node, NodeIndex, Operator};
use super::inputs::{InputFault, Inputs, State};
use super::leaf::{Cell, LeafValue};
use super::range::Draws;

/// A graph with values.
#[derive(Clone, Debug)]
pub struct Evaluation {
    pub(crate) graph: Arc<Graph>,
    pub(crate) state: State,
    pub(crate) lengths: Vec<usize>,
    pub(crate) columns: Vec<Arc<Column>>,
    pub(crate) draws: Draws,
}

/// What setting inputs did.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Changes {
    /// Nodes whose values are no longer the same, in working order.
    pub changed: Vec<NodeIndex>,
    /// How many nodes were worked again.
    pub worked: usize,
}

impl Evaluation {
    /// Works everything from a value for every leaf. `seed` decides the draws that ranges come from.
    ///
    /// # Errors
    /// Every unknown or missing leaf, every value that does not fit its leaf.
    pub fn new(graph: Arc<Graph>, inputs: Inputs, seed: u64) -> Result<Self, Vec<InputFault>> {
        let state = State::new(&graph).with(&graph, inputs)?;
        let columns = graph.indices().map(|_| Arc::new(Column::certain(Vec::new()))).collect();
        let mut evaluation = Self {
            lengths: state.lengths(),
            draws: Draws::new(seed, graph.nodes.len()),
            graph,
            state,
            columns,
        };
        let all = vec![true; evaluation.graph.nodes.len()];
        evaluation.work(&all);
        Ok(evaluation)
    }

    /// Sets leaves and axis entries and works again what depends on them. On a fault nothing changes.
    ///
    /// Cost: comparing the given cells with those that stand, and the cells of the nodes worked again; a node whose
    /// table comes out the same stops there.
    ///
    /// # Errors
    /// Every unknown leaf or axis, every value that does not fit, every leaf whose axes changed without it.
    pub fn set(&mut self, inputs: Inputs) -> Result<Changes, Vec<InputFault>> {
        let next = self.state.with(&self.graph, inputs)?;
        let axis_changed: Vec<bool> = (next.entries.iter().zip(&self.state.entries))
            .map(|(new, old)| new != old)
            .collect();
        let replaced: Vec<bool> = (self.graph.nodes.iter().zip(&next.leaves).zip(&self.state.leaves))
            .map(|((node, new), old)| new != old || node.axes.iter().any(|axis| axis_changed[axis.at()]))
            .collect();
        self.state = next;
        self.lengths = self.state.lengths();
        self.draws.forget(&self.graph, &replaced);
        Ok(self.work(&replaced))
    }

    /// The graph.
    #[must_use]
    pub fn graph(&self) -> &Arc<Graph> {
        &self.graph
    }

    /// The entries of an axis.
    #[must_use]
    pub fn entries(&self, axis: AxisIndex) -> &Entries {
        &self.state.entries[axis.at()]
    }

    /// The value given for a leaf; `None` for a figure that is worked out.
    #[must_use]
    pub fn leaf(&self, index: NodeIndex) -> Option<&LeafValue> {
        self.state.leaves[index.at()].as_deref()
    }

    /// How many cells a node's table has; 1 for a single number.
    #[must_use]
    pub fn cell_count(&self, index: NodeIndex) -> usize {
        self.columns[index.at()].cell_count()
    }

    /// The cells of a node's table, the last axis fastest.
    #[must_use]
    pub fn cells(&self, index: NodeIndex) -> Vec<Cell> {
        (0..self.cell_count(index)).map(|cell| self.cell(index, cell)).collect()
    }

    /// The value of a figure that is a single number, or the first cell of a table.
    #[must_use]
    pub fn value(&self, id: &str) -> Option<Cell> {
        let index = self.graph.index(id)?;
        (self.cell_count(index) > 0).then(|| self.cell(index, 0))
    }

    /// One cell of a node's table.
    #[must_use]
    pub fn cell(&self, index: NodeIndex, cell: usize) -> Cell {
        let value = self.columns[index.at()].at(cell, 0);
        if value.is_nan() {
            Cell::Unknown(self.reason(index, cell))
        } else {
            Cell::Number(value)
        }
    }

    /// The entries a cell stands at, one for each of the node's axes.
    #[must_use]
    pub fn place(&self, index: NodeIndex, cell: usize) -> Vec<Entry> {
        let axes = &self.graph.node(index).axes;
        let mut rest = cell;
        let mut place = Vec::with_capacity(axes.len());
        for axis in axes.iter().rev() {
            let length = self.lengths[axis.at()].max(1);
            place.extend(self.state.entries[axis.at()].get(rest % length));
            rest /= length;
        }
        place.reverse();
        place
    }

    /// The words for a cell's place: the titles of its entries; empty for a single number.
    #[must_use]
    pub fn label(&self, index: NodeIndex, cell: usize) -> String {
        let place = self.place(index, cell);
        let titles: Vec<&str> = place.iter().map(|entry| entry.title.as_str()).collect();
        titles.join(", ")
    }

    /// The words for a cell's place along some of its axes.
    pub(crate) fn label_along(&self, index: NodeIndex, cell: usize, along: &[AxisIndex]) -> String {
        let axes = &self.graph.node(index).axes;
        let place = axes.iter().zip(self.place(index, cell));
        let titles: Vec<String> = place
            .filter(|(axis, _)| along.contains(axis))
            .map(|(_, entry)| entry.title)
            .collect();
        titles.join(", ")
    }

    /// How many cells a table over these axes has.
    pub(crate) fn cells_over(&self, axes: &[AxisIndex]) -> usize {
        axes.iter().map(|axis| self.lengths[axis.at()]).product()
    }

    /// The cell one entry before `cell` along an axis of the node; `None` at the first entry.
    pub(crate) fn entry_before(&self, index: NodeIndex, cell: usize, along: AxisIndex) -> Option<usize> {
        let step = self.with_tables(|tables| tables.strides(index, &[along]))[0];
        let entry = cell / step.max(1) % self.lengths[along.at()].max(1);
        (entry > 0).then(|| cell - step)
    }

    /// Works `replaced` nodes and all that depend on them, and says what changed.
    fn work(&mut self, replaced: &[bool]) -> Changes {
        let graph = Arc::clone(&self.graph);
        let mut dirty = replaced.to_vec();
        let mut changes = Changes::default();
        for index in graph.indices() {
            if !dirty[index.at()] {
                continue;
            }
            changes.worked += 1;
            let column = self.work_node(index, graph.node(index));
            if column.is_identical(&self.columns[index.at()]) && !replaced[index.at()] {
                continue;
            }
            self.columns[index.at()] = Arc::new(column);
            changes.changed.push(index);
            for dependent in &graph.dependents[index.at()] {
                dirty[dependent.at()] = true;
            }
        }
        changes
    }

    fn work_node(&self, index: NodeIndex, node: &Node) -> Column {
        if let Some(leaf) = self.leaf(index) {
            let number = |cell| leaf.cell(cell).and_then(|cell| cell.number());
            return Column::certain((0..leaf.len()).map(|cell| number(cell).unwrap_or(f64::NAN)).collect());
        }
        self.with_tables(|tables| tables.work(node))
    }

    pub(crate) fn with_tables<T>(&self, work: impl FnOnce(&Tables<'_>) -> T) -> T {
        work(&Tables {
            graph: &self.graph,
            lengths: &self.lengths,
            column: &|index| &self.columns[index.at()],
        })
    }

    /// The cell of `need` that a cell of `node` reads, when `need` has no axis `node` lacks.
    pub(crate) fn cell_read(&self, node: NodeIndex, cell: usize, need: NodeIndex) -> usize {
        let axes = &self.graph.node(node).axes;
        let mut index = vec![0; axes.len()];
        let mut rest = cell;
        for (place, axis) in axes.iter().enumerate().rev() {
            let length = self.lengths[axis.at()].max(1);
            index[place] = rest % length;
            rest /= length;
        }
        axis::cell_at(&index, &self.with_tables(|tables| tables.strides(need, axes)))
    }

    /// The cell of `of` that a cell of `index` reads at an entry of a fixed axis.
    pub(crate) fn cell_at_entry(
        &self,
        index: NodeIndex,
        cell: usize,
        of: NodeIndex,
        (along, entry): (AxisIndex, &str),
    ) -> usize {
        let first = self.with_tables(|tables| tables.entry_first(of, along, entry));
        self.cell_read(index, cell, of) + first.unwrap_or(0)
    }

    /// For an operator along axes: the cells brought together for `cell`, and those of `weight` beside them.
    pub(crate) fn members(
        &self,
        index: NodeIndex,
        cell: usize,
        of: NodeIndex,
        weight: NodeIndex,
        over: &[AxisIndex],
    ) -> Vec<(usize, usize)> {
        let mut found = Vec::new();
        self.with_tables(|tables| {
            tables.for_each_weighted_group(self.graph.node(index), of, weight, over, |at, members, weighing| {
                if at == cell {
                    found = members.iter().copied().zip(weighing.iter().copied()).collect();
                }
            });
        });
        found
    }

    /// For a method: the cells of each input its call for `cell` sees, and which of the call's results `cell` is.
    pub(crate) fn method_call(
        &self,
        index: NodeIndex,
        cell: usize,
        inputs: &[NodeIndex],
        along: &[AxisIndex],
    ) -> (Vec<Vec<usize>>, usize) {
        let mut found = (Vec::new(), 0);
        self.with_tables(|tables| {
            tables.for_each_method_call(self.graph.node(index), inputs, along, |gathered, filled| {
                if let Some(result) = filled.iter().position(|at| *at == cell) {
                    found = (gathered.to_vec(), result);
                }
            });
        });
        found
    }

    /// For a curve read by `cell`: the cells of its knots in `of`.
    pub(crate) fn knot_cells(&self, index: NodeIndex, cell: usize, of: NodeIndex, knots: AxisIndex) -> Vec<usize> {
        let first = self.cell_read(index, cell, of);
        let step = self.with_tables(|tables| tables.strides(of, &[knots]))[0];
        (0..self.lengths[knots.at()]).map(|knot| first + knot * step).collect()
    }

    /// The leaves a node needs, itself included if it is one, in working order.
    #[must_use]
    pub fn leaves_of(&self, index: NodeIndex) -> Vec<NodeIndex> {
        let mut needed = vec![false; self.columns.len()];
        needed[index.at()] = true;
        for place in (0..=index.at()).rev() {
            if needed[place] {
                for need in self.graph.nodes[place].operator.references() {
                    needed[need.at()] = true;
                }
            }
        }
        let is_leaf = |at: &NodeIndex| needed[at.at()] && matches!(self.graph.node(*at).operator, Operator::Leaf(_));
        self.graph.indices().filter(is_leaf).collect()
    }
}

#[cfg(test)]
mod tests;
