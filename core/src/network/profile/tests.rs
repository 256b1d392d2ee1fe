use super::super::test_networks::{Draws, grid, random, random_sources};
use super::*;
use crate::network::{Direction, LinkId, Location, NodeId, Source};

#[test]
fn a_profile_agrees_with_the_cost_at_every_place() {
    for seed in 0..1_500 {
        let (network, drafts) = random(seed, seed % 2 == 1);
        let mut draws = Draws(seed + 3);
        let count = 1 + draws.below(3);
        let sources = random_sources(&mut draws, &network, count);
        let mut field = CostField::new();
        field
            .spread(&network, &sources, Direction::To, None)
            .expect("good sources");
        for (id, link) in network.link_ids().zip(network.links()) {
            let stretch = Stretch {
                link: id,
                from_um: 0,
                to_um: link.length_um,
            };
            let profile = CostProfile::along(&network, &field, stretch);
            for along_um in 0..=link.length_um {
                let cost = field.at(&network, Location { link: id, along_um });
                assert_eq!(profile.is_some(), cost.is_some(), "seed {seed} {id:?}");
                let (Some(profile), Some(cost)) = (&profile, cost) else {
                    continue;
                };
                let told = profile.cost_at(along_um);
                if link.cost_forward == link.length_um && link.cost_backward == link.length_um {
                    assert_eq!(
                        told, cost,
                        "seed {seed} {id:?} {along_um} {profile:?} {drafts:?} {sources:?}"
                    );
                } else {
                    // A cost off the length is spread in whole units: straight lines may differ by its steps.
                    let step = link.cost_forward.max(link.cost_backward) / link.length_um * 2 + 3;
                    assert!(
                        told.abs_diff(cost) <= step,
                        "seed {seed} {id:?} {along_um} {told} {cost} {drafts:?}"
                    );
                }
            }
        }
    }
}

#[test]
fn the_farther_of_two_centers_is_told_along_a_street() {
    let network = grid(2, 100_000);
    let street = Stretch {
        link: LinkId(0),
        from_um: 0,
        to_um: 100_000_000,
    };
    let profile = |node| {
        let mut field = CostField::new();
        field
            .spread(&network, &[Source::node(node)], Direction::To, None)
            .expect("a node");
        CostProfile::along(&network, &field, street).expect("reached")
    };
    let (left, right) = (profile(NodeId(0)), profile(NodeId(1)));
    assert_eq!(
        left.greatest(&right).points(),
        [(0, 100_000_000), (50_000_000, 50_000_000), (100_000_000, 100_000_000)]
    );
    assert_eq!(
        left.least(&right).points(),
        [(0, 0), (50_000_000, 50_000_000), (100_000_000, 0)]
    );
}

#[test]
fn a_stretch_beyond_its_link_has_no_profile() {
    let network = grid(2, 1_000);
    let mut field = CostField::new();
    field
        .spread(&network, &[Source::node(NodeId(0))], Direction::To, None)
        .expect("a node");
    let beyond = Stretch {
        link: LinkId(0),
        from_um: 0,
        to_um: 1_000_001,
    };
    assert_eq!(CostProfile::along(&network, &field, beyond), None);
}
