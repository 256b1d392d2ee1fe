use super::super::test_networks::{Draws, random, random_sources, slow_at, slow_nodes};
use super::*;
use crate::network::{Direction, Location};

#[test]
fn every_micrometer_has_the_owner_of_the_least_cost() {
    for seed in 0..1_500 {
        let (network, drafts) = random(seed, seed % 2 == 1);
        let mut draws = Draws(seed + 9);
        let count = 2 + draws.below(4);
        let sources = random_sources(&mut draws, &network, count);
        let limit = draws.below(90);
        for direction in [Direction::From, Direction::To] {
            let mut field = CostField::new();
            field
                .spread(&network, &sources, direction, Some(limit))
                .expect("good sources");
            let slow = slow_nodes(&network, &sources, direction);
            for link in network.link_ids() {
                let pieces = served_pieces(&network, &field, link, limit);
                for pair in pieces.windows(2) {
                    assert!(pair[0].stretch.to_um <= pair[1].stretch.from_um);
                }
                for piece in &pieces {
                    // Ends belong to either side; inside, the owner is exact.
                    for along_um in piece.stretch.from_um + 1..piece.stretch.to_um {
                        let place = Location { link, along_um };
                        let served = slow_at(&network, &sources, direction, &slow, place).expect("reached");
                        assert_eq!(
                            served.1, piece.owner,
                            "seed {seed} {direction:?} {place:?} {pieces:?} {drafts:?} {sources:?}"
                        );
                    }
                }
                let reach = crate::network::Reach::within(&network, &field, limit);
                let sum: u64 = pieces.iter().map(|piece| piece.stretch.length_um()).sum();
                let reached: u64 = reach.on_link(link).iter().map(|piece| piece.length_um()).sum();
                assert_eq!(sum, reached, "seed {seed}");
            }
        }
    }
}
