use super::super::profile::CostProfile;
use super::super::test_networks::{Draws, random, random_sources};
use super::*;
use crate::network::{Direction, Source, Stretch};

/// Cost at a position by the pieces of one link: the least where two pieces meet.
fn cost_by(pieces: &[CostPiece], along_um: u64) -> Option<u64> {
    let over = pieces
        .iter()
        .filter(|piece| piece.from_um <= along_um && along_um <= piece.to_um);
    over.map(|piece| piece.cost_at(along_um)).min()
}

fn spread(network: &Network, sources: &[Source], direction: Direction) -> CostField {
    let mut field = CostField::new();
    field.spread(network, sources, direction, None).expect("good sources");
    field
}

/// On a sloping link a micrometer may cost several units.
fn slack(network: &Network, link: LinkId) -> u64 {
    network.link(link).map_or(0, |link| {
        let steepest = link.cost_forward.max(link.cost_backward).div_ceil(link.length_um);
        2 * steepest + 2
    })
}

/// Against the profile, which is exact at every micrometer.
#[test]
fn pieces_agree_with_profiles_at_every_micrometer() {
    for seed in 0..600 {
        let is_sloping = seed % 2 == 1;
        let (network, drafts) = random(seed, is_sloping);
        let mut draws = Draws(seed + 77);
        let direction = if seed % 3 == 0 { Direction::From } else { Direction::To };
        let links: Vec<LinkId> = network.link_ids().collect();
        let fields: Vec<CostField> = (0..3)
            .map(|_| {
                let count = 1 + draws.below(4);
                spread(&network, &random_sources(&mut draws, &network, count), direction)
            })
            .collect();
        let mut pieces = vec![CostPieces::default(); fields.len()];
        for (held, field) in pieces.iter_mut().zip(&fields) {
            held.fill(&network, field, &links);
        }
        let mut last = CostPieces::default();
        last.fill_greatest(&pieces.iter().collect::<Vec<_>>());
        for (place, &link) in links.iter().enumerate() {
            let to_um = network.link(link).expect("a link").length_um;
            let whole = Stretch {
                link,
                from_um: 0,
                to_um,
            };
            let profiles: Vec<Option<CostProfile>> = fields
                .iter()
                .map(|field| CostProfile::along(&network, field, whole))
                .collect();
            let slack = slack(&network, link);
            for along_um in 0..=to_um {
                let exact: Vec<Option<u64>> = profiles
                    .iter()
                    .map(|profile| profile.as_ref().map(|profile| profile.cost_at(along_um)))
                    .collect();
                for (held, exact) in pieces.iter().zip(&exact) {
                    let found = cost_by(held.of_link(place), along_um);
                    assert!(
                        match (found, exact) {
                            (Some(found), Some(exact)) => found.abs_diff(*exact) <= slack,
                            (None, None) => true,
                            _ => false,
                        },
                        "seed {seed} {link:?} at {along_um}: {found:?} against {exact:?}; {drafts:?}"
                    );
                }
                let expected = exact.iter().copied().collect::<Option<Vec<u64>>>();
                let expected = expected.and_then(|costs| costs.into_iter().max());
                let found = cost_by(last.of_link(place), along_um);
                assert!(
                    match (found, expected) {
                        (Some(found), Some(expected)) => found.abs_diff(expected) <= slack,
                        (None, None) => true,
                        _ => false,
                    },
                    "seed {seed} {link:?} at {along_um}: the greatest is {found:?} against {expected:?}; {drafts:?}"
                );
            }
        }
    }
}

#[test]
fn pieces_of_a_link_lie_end_to_end() {
    for seed in 0..300 {
        let (network, _) = random(seed, seed % 2 == 1);
        let mut draws = Draws(seed);
        let links: Vec<LinkId> = network.link_ids().collect();
        let field = spread(&network, &random_sources(&mut draws, &network, 3), Direction::To);
        let mut pieces = CostPieces::default();
        pieces.fill(&network, &field, &links);
        assert_eq!(pieces.link_count(), links.len());
        for (place, &link) in links.iter().enumerate() {
            let held = pieces.of_link(place);
            for pair in held.windows(2) {
                assert_eq!(
                    (pair[0].to_um, pair[0].to_cost),
                    (pair[1].from_um, pair[1].from_cost),
                    "seed {seed} {link:?}"
                );
            }
            if let (Some(first), Some(last)) = (held.first(), held.last()) {
                assert_eq!(
                    (first.from_um, last.to_um),
                    (0, network.link(link).expect("a link").length_um)
                );
            }
        }
    }
}

#[test]
fn nothing_is_the_greatest_of_nothing() {
    let mut last = CostPieces::default();
    last.fill_greatest(&[]);
    assert_eq!((last.link_count(), last.of_link(0).len()), (0, 0));
}
