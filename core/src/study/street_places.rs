//! What is counted on streets and blocks, with where it is, for the drawing.

use super::Study;
use crate::fabric::block_outline::{BlockOutline, block_outlines};
use crate::measures::streets::StreetInputs;
use crate::network::counting_rule::COUNTING_RULES;
use crate::order;
use crate::plan::PlanPoint;

/// Where a counting rule counts nodes, and where it does not.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CountedNodes {
    /// Intersections it counts.
    pub intersections: Vec<PlanPoint>,
    /// Heads of dead ends it counts.
    pub heads: Vec<PlanPoint>,
    /// Nodes that other rules count and this one does not.
    pub left_out: Vec<PlanPoint>,
}

impl Study {
    /// What is counted on streets and blocks, each with its place: the nodes of a counting rule
    /// ([`StreetInputs::counted_points`]), dead ends, ways in and out, the place most homes hang on, the longest block.
    ///
    /// Cost: worked anew at every call, about linear in the edges of the fabric.
    #[must_use]
    pub fn street_places(&self) -> StreetInputs {
        StreetInputs::of(&self.seen(), self.alternative(), self.fabric(), self.painted())
    }

    /// Where the rule of this id counts nodes; nothing for an id that is not known. As many as the figures
    /// `streets.intersections` and `streets.counted_heads` say.
    ///
    /// Cost: that of [`Study::street_places`].
    #[must_use]
    pub fn counted_nodes(&self, rule: &str) -> CountedNodes {
        let rules = self.street_places().rules;
        let Some(own) = COUNTING_RULES.iter().position(|held| held.id == rule) else {
            return CountedNodes::default();
        };
        let Some(counted) = rules.get(own) else {
            return CountedNodes::default();
        };
        let crossings = counted.points.len().saturating_sub(counted.heads as usize);
        let (intersections, heads) = counted.points.split_at(crossings);
        let mut held = counted.points.clone();
        order::sort(&mut held);
        let mut left_out: Vec<PlanPoint> = rules.iter().flat_map(|rule| &rule.points).copied().collect();
        order::sort(&mut left_out);
        left_out.dedup();
        left_out.retain(|point| held.binary_search(point).is_err());
        CountedNodes {
            intersections: intersections.to_vec(),
            heads: heads.to_vec(),
            left_out,
        }
    }

    /// The outlines along the right-of-way of the blocks that points lie in, in meters; none for those that lie in no block.
    ///
    /// Cost: linear in the edges of all blocks, and every point against every block.
    #[must_use]
    pub fn block_outlines_m(&self, at: &mut dyn Iterator<Item = PlanPoint>) -> Vec<Vec<(f64, f64)>> {
        let fabric = self.fabric();
        let outlines = block_outlines(&fabric.lines, &fabric.arrangement, &fabric.carriers, &fabric.blocks);
        let of_point = |at: PlanPoint| {
            let face = fabric.face_at(at)?.id;
            let place = fabric.blocks.iter().position(|faces| faces.contains(&face))?;
            let BlockOutline { corners_mm, origin, .. } = outlines.get(place)?.as_ref()?;
            let (x_m, y_m) = origin.to_m();
            Some(corners_mm.iter().map(|(x, y)| (x_m + x / 1e3, y_m + y / 1e3)).collect())
        };
        at.filter_map(of_point).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measures::streets::test_plans::{alley, plan, street};
    use crate::study::first_level::basis;

    /// A ring of streets 200 by 100 m with an alley across and a dead end.
    fn ring() -> Study {
        let streets = [
            street(&[(0, 0), (200, 0), (200, 100), (0, 100), (0, 0)]),
            alley(&[(100, 0), (100, 100)]),
            street(&[(200, 50), (260, 50)]),
        ];
        Study::open(plan(&streets, &[], &[])).unwrap()
    }

    #[test]
    fn as_many_nodes_have_a_place_as_the_figures_count() {
        let study = ring();
        let places = study.street_places();
        for (rule, row) in COUNTING_RULES.iter().zip(&places.rules) {
            let nodes = study.counted_nodes(rule.id);
            assert_eq!(
                nodes.intersections.len() as u32,
                row.intersections.iter().sum::<u32>(),
                "{}",
                rule.id
            );
            assert_eq!(nodes.heads.len() as u32, row.heads, "{}", rule.id);
        }
        assert_eq!(study.counted_nodes("no-such-rule"), CountedNodes::default());
    }

    #[test]
    fn the_basis_of_a_count_says_where_its_rule_is_laid_down() {
        let counts = basis(&ring(), "streets.intersections").unwrap();
        let leaf = counts
            .steps
            .iter()
            .find(|step| step.id == "streets.counted_intersections");
        let row = leaf.and_then(|step| step.row.as_ref()).unwrap();
        let rule = COUNTING_RULES
            .iter()
            .find(|rule| row.label.starts_with(rule.name()))
            .unwrap();
        assert_eq!(row.sources, [rule.source()]);
        let lengths = basis(&ring(), "streets.length").unwrap();
        assert!(
            lengths
                .steps
                .iter()
                .filter_map(|step| step.row.as_ref())
                .all(|row| row.sources.is_empty())
        );
    }

    #[test]
    fn a_rule_without_alleys_leaves_out_where_they_meet_streets() {
        let study = ring();
        let head = PlanPoint::new(260_000, 50_000);
        let alley_ends = [PlanPoint::new(100_000, 0), PlanPoint::new(100_000, 100_000)];
        let with = study.counted_nodes("cary-7-10-3");
        assert_eq!(with.heads, [head]);
        assert!(alley_ends.iter().all(|end| with.intersections.contains(end)));
        let without = study.counted_nodes("durham-13-6-1");
        assert_eq!(without.heads, [head]);
        assert!(alley_ends.iter().all(|end| without.left_out.contains(end)));
        assert!(!without.left_out.contains(&head));
    }

    /// The block within the ring, along rights-of-way: as long all round as the figure says.
    #[test]
    fn the_outline_of_the_longest_block_is_as_long_as_its_figure() {
        let study = ring();
        let places = study.street_places();
        let longest = places.longest_block().unwrap();
        // Far from everything there is no block.
        let at = [PlanPoint::new(900_000, 0), longest.at];
        let outlines = study.block_outlines_m(&mut at.into_iter());
        let [outline] = &outlines[..] else {
            panic!("one block: {outlines:?}");
        };
        let ends = outline.iter().zip(outline.iter().cycle().skip(1));
        let length_m: f64 = ends.map(|(a, b)| (a.0 - b.0).abs() + (a.1 - b.1).abs()).sum();
        assert!((length_m - longest.perimeter_m).abs() < 1e-6, "{length_m}");
    }
}
