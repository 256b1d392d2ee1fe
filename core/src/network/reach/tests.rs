use super::super::test_networks::{Draws, grid, random, random_sources, slow_nodes, slow_ways};
use super::*;
use crate::network::{Direction, LinkDraft, Source};
use crate::plan::PlanPoint;

fn reach_of(network: &Network, sources: &[Source], direction: Direction, limit: u64) -> (CostField, Reach) {
    let mut field = CostField::new();
    field
        .spread(network, sources, direction, Some(limit))
        .expect("good sources");
    let reach = Reach::within(network, &field, limit);
    (field, reach)
}

/// Whether the micrometer from here on belongs to the reach.
fn has_micrometer(reach: &Reach, place: Location) -> bool {
    let pieces = reach.on_link(place.link);
    pieces
        .iter()
        .any(|piece| piece.from_um <= place.along_um && place.along_um < piece.to_um)
}

#[test]
fn every_micrometer_agrees_with_the_cost_there() {
    for seed in 0..1_500 {
        let (network, drafts) = random(seed, seed % 2 == 1);
        let mut draws = Draws(seed + 5);
        let count = 1 + draws.below(3);
        let sources = random_sources(&mut draws, &network, count);
        let limit = draws.below(70);
        for direction in [Direction::From, Direction::To] {
            let slow = slow_nodes(&network, &sources, direction);
            let ways = |place| slow_ways(&network, &sources, direction, &slow, place);
            let (_, reach) = reach_of(&network, &sources, direction, limit);
            for (link, draft) in network.link_ids().zip(network.links()) {
                for along_um in 0..draft.length_um {
                    let (here, next) = (
                        Location { link, along_um },
                        Location {
                            link,
                            along_um: along_um + 1,
                        },
                    );
                    // A micrometer is reached when one way comes to both its ends.
                    let both = ways(here).into_iter().zip(ways(next));
                    let within = |way: Option<(u64, u32)>| way.is_some_and(|(cost, _)| cost <= limit);
                    let expected = both.into_iter().any(|(a, b)| within(a) && within(b));
                    assert_eq!(
                        has_micrometer(&reach, here),
                        expected,
                        "seed {seed} limit {limit} {direction:?} {here:?} {drafts:?} {sources:?}"
                    );
                }
            }
        }
    }
}

#[test]
fn sets_agree_with_asking_every_place() {
    for seed in 0..500 {
        let (network, _) = random(seed, false);
        let mut draws = Draws(seed);
        let reaches: Vec<Reach> = (0..3)
            .map(|_| {
                let sources = random_sources(&mut draws, &network, 1);
                reach_of(&network, &sources, Direction::To, draws.below(70)).1
            })
            .collect();
        let all: Vec<&Reach> = reaches.iter().collect();
        let (common, any) = (Reach::intersection(&all), Reach::union(&all));
        for (link, draft) in network.link_ids().zip(network.links()) {
            let at = |reach: &Reach, along_um| has_micrometer(reach, Location { link, along_um });
            for along_um in 0..draft.length_um {
                let inside: Vec<bool> = all.iter().map(|reach| at(reach, along_um)).collect();
                assert_eq!(
                    at(&common, along_um),
                    inside.iter().all(|&inside| inside),
                    "seed {seed}"
                );
                assert_eq!(at(&any, along_um), inside.iter().any(|&inside| inside), "seed {seed}");
            }
        }
    }
}

#[test]
fn a_head_and_a_tail_join_when_they_pass_the_link() {
    // A ring of four sides of 100 m, source in the middle of one side.
    let network = grid(2, 100_000);
    let middle = Location {
        link: LinkId(0),
        along_um: 50_000_000,
    };
    let sources = [Source::location(middle)];
    let (_, apart) = reach_of(&network, &sources, Direction::From, 199_999_999);
    assert_eq!(apart.on_link(LinkId(3)).len(), 2);
    assert_eq!(apart.length_um(), 399_999_998);
    let (_, joined) = reach_of(&network, &sources, Direction::From, 200_000_000);
    assert_eq!(joined.on_link(LinkId(3)).len(), 1);
    assert_eq!(joined.length_um(), 400_000_000);
    assert_eq!(joined.whole_links(&network).len(), 4);
    assert!(joined.frontier(&network).is_empty());
}

#[test]
fn the_frontier_is_where_the_street_goes_on() {
    // Three arms of 100 m from node 0, and 30 m reached: one place on each arm.
    let nodes = [(0, 0), (100_000, 0), (0, 100_000), (-100_000, 0)].map(|(x, y)| PlanPoint::new(x, y));
    let drafts = [1, 2, 3].map(|arm| LinkDraft::level(NodeId(0), NodeId(arm), 100_000_000));
    let network = Network::build(&nodes, &drafts).expect("a star");
    let (_, near) = reach_of(&network, &[Source::node(NodeId(0))], Direction::From, 30_000_000);
    let places: Vec<u64> = near.frontier(&network).iter().map(|place| place.along_um).collect();
    assert_eq!(places, [30_000_000; 3]);
    // From the end of one arm exactly to the middle: the middle is the one place where streets go on.
    let (_, arm) = reach_of(&network, &[Source::node(NodeId(1))], Direction::From, 100_000_000);
    assert_eq!(
        arm.frontier(&network),
        [Location {
            link: LinkId(1),
            along_um: 0
        }]
    );
    // The whole star: nothing goes on.
    let (_, all) = reach_of(&network, &[Source::node(NodeId(1))], Direction::From, 200_000_000);
    assert!(all.frontier(&network).is_empty());
}

#[test]
fn nothing_reached_is_an_empty_reach() {
    let network = grid(2, 1_000);
    let (_, none) = reach_of(&network, &[], Direction::From, 1_000);
    assert_eq!(none, Reach::default());
    assert_eq!(Reach::intersection(&[]), Reach::default());
}
