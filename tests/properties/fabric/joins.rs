//! Joins of random lines.

use hobnail_core::fabric::joins::{LineEnd, apply_joins, joins};
use hobnail_core::plan::PlanPoint;

use super::drawings::{KINDS, drawing};
use crate::random::Random;

const DRAWINGS: u64 = if cfg!(debug_assertions) { 3_000 } else { 30_000 };

/// Every join moves the end it names, once, from where it was drawn and by at most the tolerance; nothing else moves.
#[test]
fn joins_move_ends_only_and_within_the_tolerance() {
    for seed in 0..DRAWINGS {
        let mut random = Random(seed);
        let segments = drawing(seed % KINDS, &mut random);
        let mut lines: Vec<Vec<PlanPoint>> = Vec::new();
        for segment in &segments {
            match lines.last_mut() {
                Some(line) if line.last() == Some(&segment.a) => line.push(segment.b),
                _ => lines.push(vec![segment.a, segment.b]),
            }
        }
        let tolerance_mm = *random.pick(&[0, 1, 3, 20, 700]);
        let case = format!("seed {seed}, {tolerance_mm} mm: {lines:?}");
        let found = joins(&lines, tolerance_mm);
        let mut ends: Vec<(u32, LineEnd)> = found.iter().map(|join| (join.line, join.end)).collect();
        ends.sort_unstable();
        ends.dedup();
        assert_eq!(ends.len(), found.len(), "{case}");
        for join in &found {
            let line = &lines[join.line as usize];
            let drawn = if join.end == LineEnd::Start {
                line.first()
            } else {
                line.last()
            };
            assert_eq!(drawn, Some(&join.from), "{case}");
            assert_ne!(join.from, join.to, "{case}");
            let squared_mm2 = join.from.squared_distance_mm2(join.to);
            assert!(squared_mm2 <= i64::from(tolerance_mm).pow(2), "{join:?} {case}");
        }
        let drawn = lines.clone();
        apply_joins(&mut lines, &found);
        let inner = |line: &[PlanPoint]| line.get(1..line.len() - 1).map(<[PlanPoint]>::to_vec);
        for (before, after) in drawn.iter().zip(&lines) {
            assert_eq!(inner(before), inner(after), "{case}");
        }
    }
}
