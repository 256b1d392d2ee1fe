//! What the cells of one noding yielded, for the next: a cell that holds the same spans yields the same.

use super::grid::Grid;
use super::pixels::Span;
use crate::plan::PlanPoint;

/// The hot pixels of every cell, and which of its spans pass through each.
#[derive(Clone, Debug, Default)]
pub(super) struct NodedCells {
    /// Where the grid began, how large its cells were, and how many rows it had.
    grid: Option<(PlanPoint, u32, u32)>,
    /// Where the spans, pixels and meetings of every cell end.
    ends: Vec<[u32; 3]>,
    spans: Vec<Span>,
    /// Pixels, packed, each with how many spans pass through it.
    pixels: Vec<(u64, u32)>,
    /// Those spans, by their place among the spans of the cell.
    meetings: Vec<u32>,
}

/// One cell.
pub(super) struct NodedCell<'a> {
    pub spans: &'a [Span],
    pub pixels: &'a [(u64, u32)],
    pub meetings: &'a [u32],
}

impl NodedCells {
    /// Begins a noding on this grid. Gives back what the last one yielded, nothing where its grid was another.
    pub fn begin(&mut self, grid: &Grid) -> Self {
        let mut last = std::mem::take(self);
        self.grid = Some((grid.corner(0, 0), grid.shift(), grid.rows()));
        if last.grid != self.grid {
            last = Self::default();
        }
        self.ends.reserve(last.ends.len());
        self.spans.reserve(last.spans.len());
        self.pixels.reserve(last.pixels.len());
        self.meetings.reserve(last.meetings.len());
        last
    }

    /// A cell, counted along the columns; nothing for one that is not there.
    pub fn cell(&self, place: usize) -> Option<NodedCell<'_>> {
        let [spans, pixels, meetings] = *self.ends.get(place)?;
        let first = place.checked_sub(1).and_then(|before| self.ends.get(before));
        let [first_span, first_pixel, first_meeting] = first.copied().unwrap_or([0; 3]);
        Some(NodedCell {
            spans: self.spans.get(first_span as usize..spans as usize)?,
            pixels: self.pixels.get(first_pixel as usize..pixels as usize)?,
            meetings: self.meetings.get(first_meeting as usize..meetings as usize)?,
        })
    }

    /// Notes what the next cell yielded.
    pub fn push(
        &mut self,
        spans: impl Iterator<Item = Span>,
        pixels: impl Iterator<Item = (u64, u32)>,
        meetings: impl Iterator<Item = u32>,
    ) {
        self.spans.extend(spans);
        self.pixels.extend(pixels);
        self.meetings.extend(meetings);
        let end = |length: usize| length as u32;
        self.ends
            .push([end(self.spans.len()), end(self.pixels.len()), end(self.meetings.len())]);
    }
}
