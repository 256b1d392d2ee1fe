use super::super::test_networks::{Draws, grid, random, random_sources};
use super::*;
use crate::network::{CostField, Direction, LinkId, NodeId, Source, Stretch};

#[test]
fn ten_homes_along_a_street_arrive_evenly() {
    let network = grid(2, 100_000);
    let mut field = CostField::new();
    field
        .spread(&network, &[Source::node(NodeId(0))], Direction::To, None)
        .expect("a node");
    let street = Stretch {
        link: LinkId(0),
        from_um: 20_000_000,
        to_um: 60_000_000,
    };
    let profile = CostProfile::along(&network, &field, street).expect("reached");
    let mut curve = WeightCurve::new(&[60_000_000, 0, 20_000_000, 30_000_000, 50_000_000, 30_000_000]);
    assert!(curve.add(&profile, 10.0));
    assert_eq!(curve.knots(), [0, 20_000_000, 30_000_000, 50_000_000, 60_000_000]);
    assert_eq!(curve.weight_within(), [0.0, 0.0, 2.5, 7.5, 10.0]);
}

#[test]
fn weight_at_one_place_arrives_at_once() {
    let network = grid(2, 100_000);
    let mut field = CostField::new();
    field
        .spread(&network, &[Source::node(NodeId(0))], Direction::To, None)
        .expect("a node");
    let door = Stretch {
        link: LinkId(0),
        from_um: 20_000_000,
        to_um: 20_000_000,
    };
    let profile = CostProfile::along(&network, &field, door).expect("reached");
    let mut curve = WeightCurve::new(&[19_999_999, 20_000_000]);
    assert!(curve.add(&profile, 3.0));
    assert_eq!(curve.weight_within(), [0.0, 3.0]);
}

#[test]
fn weights_that_are_no_weights_are_refused() {
    let network = grid(2, 1_000);
    let mut field = CostField::new();
    field
        .spread(&network, &[Source::node(NodeId(0))], Direction::To, None)
        .expect("a node");
    let street = Stretch {
        link: LinkId(0),
        from_um: 0,
        to_um: 1_000_000,
    };
    let profile = CostProfile::along(&network, &field, street).expect("reached");
    let mut curve = WeightCurve::new(&[u64::MAX]);
    for weight in [f64::NAN, f64::INFINITY, -1.0, 2e12] {
        assert!(!curve.add(&profile, weight));
    }
    assert_eq!(curve.weight_within(), [0.0]);
}

/// On networks whose cost is their length, the share of a stretch within a knot is the length reached.
#[test]
fn the_curve_agrees_with_reach_at_every_knot() {
    for seed in 0..400 {
        let (network, drafts) = random(seed, false);
        let mut draws = Draws(seed + 31);
        let sources = random_sources(&mut draws, &network, 2);
        let mut field = CostField::new();
        field
            .spread(&network, &sources, Direction::To, None)
            .expect("good sources");
        let knots: Vec<u64> = (0..80).collect();
        for (id, link) in network.link_ids().zip(network.links()) {
            let stretch = Stretch {
                link: id,
                from_um: 0,
                to_um: link.length_um,
            };
            let Some(profile) = CostProfile::along(&network, &field, stretch) else {
                continue;
            };
            let mut curve = WeightCurve::new(&knots);
            assert!(curve.add(&profile, link.length_um as f64));
            for (&knot, weight) in knots.iter().zip(curve.weight_within()) {
                let reach = crate::network::Reach::within(&network, &field, knot);
                let reached = reach.length_on_um(stretch) as f64;
                // Where two lines cross between micrometers the last one belongs to either side of the knot.
                assert!(
                    (weight - reached).abs() <= 2.0 + 1e-6,
                    "seed {seed} {id:?} knot {knot}: {weight} against {reached}; {profile:?} {drafts:?} {sources:?}"
                );
            }
        }
    }
}

#[test]
fn the_order_of_stretches_does_not_matter() {
    let network = grid(5, 7_001);
    let mut field = CostField::new();
    field
        .spread(&network, &[Source::node(NodeId(7))], Direction::To, None)
        .expect("a node");
    let fill = |ids: &mut dyn Iterator<Item = LinkId>| {
        let mut curve = WeightCurve::new(&[5_000_000, 9_000_000, 17_500_000, 30_000_000]);
        for link in ids {
            let stretch = Stretch {
                link,
                from_um: 13,
                to_um: 7_000_000,
            };
            let profile = CostProfile::along(&network, &field, stretch).expect("reached");
            assert!(curve.add(&profile, 1.1 + f64::from(link.0) / 7.0));
        }
        curve.weight_within()
    };
    let forward = fill(&mut network.link_ids());
    let mut ids: Vec<LinkId> = network.link_ids().collect();
    ids.reverse();
    assert_eq!(forward, fill(&mut ids.into_iter()));
}

#[test]
fn the_first_knot_is_found_by_division_as_by_search() {
    for knots in [
        vec![0, 7, 14, 21, 30, 60],
        vec![3, 6, 9],
        vec![0],
        vec![],
        vec![0, 1, 2, 5],
    ] {
        let curve = WeightCurve::new(&knots);
        for cost in 0..70 {
            assert_eq!(
                curve.first_knot(cost),
                knots.partition_point(|&knot| knot < cost),
                "{knots:?} {cost}"
            );
        }
    }
}
