use super::super::test_networks::{Draws, grid, random, random_sources};
use super::super::{NodeId, Source};
use super::*;

/// The links somebody at a place walks along, one after another: to an end of the link or along it, then by the field's
/// own route, then along the link of the source. `None` where nothing is reached.
fn walked(network: &Network, field: &CostField, at: Location) -> Option<Vec<LinkId>> {
    let cost = field.at(network, at)?;
    let link = network.link(at.link)?;
    let (up, down) = field.scales(link);
    let over = |node: NodeId, walk: u64| field.at_node(network, node).map(|label| label + walk) == Some(cost);
    let on_link = field.sources_on(at.link).map(|(stretch, start, _)| {
        let beyond = up.up_to(at.along_um).saturating_sub(up.up_to(stretch.to_um));
        let before = down.up_to(stretch.from_um).saturating_sub(down.up_to(at.along_um));
        (start + beyond + before, stretch)
    });
    let on_link: Vec<(u64, Stretch)> = on_link.filter(|(walk, _)| *walk == cost).collect();
    if !on_link.is_empty() {
        let places: Vec<Stretch> = field.sources_on(at.link).map(|(stretch, ..)| stretch).collect();
        let is_there = places
            .iter()
            .any(|place| place.from_um < place.to_um && place.from_um <= at.along_um && at.along_um <= place.to_um);
        return Some(if is_there { Vec::new() } else { vec![at.link] });
    }
    let over_first = over(link.from, up.up_to(at.along_um));
    let over_last = over(link.to, down.cost - down.up_to(at.along_um));
    let first = over_first && !(at.along_um == 0 && over_last);
    let node = if first { link.from } else { link.to };
    let mut links = vec![at.link];
    let route = field.route(network, node).expect("reached");
    links.extend(route.iter().map(|step| step.link));
    // The node at the route's end.
    let mut end = node;
    for step in route {
        let link = network.link(step.link).expect("a step");
        end = if step.forward { link.to } else { link.from };
    }
    let rank = network.rank(end) as u32;
    let ends = tree_ends(network, field);
    let held = ends.iter().find(|held| held.rank == rank).expect("a source's end");
    links.extend(held.last_piece);
    Some(links)
}

#[test]
fn flows_agree_with_walking_every_route() {
    let mut compared = 0;
    for seed in 0..400 {
        let (network, drafts) = random(seed, seed % 2 == 1);
        let mut draws = Draws(seed + 77);
        let count = 1 + draws.below(3);
        let sources = random_sources(&mut draws, &network, count);
        let mut field = CostField::new();
        field
            .spread(&network, &sources, Direction::To, None)
            .expect("sources of the network");
        let mut fronts: Vec<(Stretch, f64)> = Vec::new();
        for (id, link) in network.link_ids().zip(network.links()) {
            let along_um = draws.below(link.length_um + 1);
            let at = Location { link: id, along_um };
            fronts.push((at.into(), 1.0 + draws.below(9) as f64));
        }
        let mut flows = RouteFlows::none(&network);
        flows.add(&network, &field, &fronts);
        let mut by_link = vec![0.0; network.link_count()];
        let mut begun = 0.0;
        for (stretch, weight) in &fronts {
            let at = Location {
                link: stretch.link,
                along_um: stretch.from_um,
            };
            let Some(links) = walked(&network, &field, at) else {
                continue;
            };
            begun += weight;
            compared += links.len();
            links.iter().for_each(|link| by_link[link.0 as usize] += weight);
        }
        assert_eq!(flows.by_link, by_link, "seed {seed}: {sources:?} {fronts:?} {drafts:?}");
        assert!(
            (flows.begun - begun).abs() < 1e-9 && (flows.ended - begun).abs() < 1e-9,
            "seed {seed}"
        );
    }
    assert!(compared > 4_000, "{compared} links walked");
}

/// A stretch is many places side by side: the flows are those of a place in the middle of each of its parts.
#[test]
fn a_stretch_walks_as_its_places_do() {
    for seed in 0..60 {
        let mut draws = Draws(seed * 7 + 3);
        let network = grid(4, 100);
        let sources: Vec<Source> = random_sources(&mut draws, &network, 2);
        let mut field = CostField::new();
        field
            .spread(&network, &sources, Direction::To, None)
            .expect("sources of the grid");
        let link = LinkId(draws.below(network.link_count() as u64) as u32);
        let from_um = draws.below(90_000);
        let to_um = from_um + 1 + draws.below(100_000 - from_um);
        let mut whole = RouteFlows::none(&network);
        whole.add(&network, &field, &[(Stretch { link, from_um, to_um }, 1.0)]);
        let parts = 2_000_u64;
        let places: Vec<(Stretch, f64)> = (0..parts)
            .map(|part| {
                let along_um = from_um + (to_um - from_um) * (2 * part + 1) / (2 * parts);
                (Location { link, along_um }.into(), 1.0 / parts as f64)
            })
            .collect();
        let mut parted = RouteFlows::none(&network);
        parted.add(&network, &field, &places);
        for (one, other) in whole.by_link.iter().zip(&parted.by_link) {
            assert!((one - other).abs() < 3e-3, "seed {seed}: {one} against {other}");
        }
        assert!((whole.ended - 1.0).abs() < 1e-12 && (whole.begun - 1.0).abs() < 1e-12);
    }
}

/// Homes along a dead end leave at its mouth, all of them, and the lot at its head with them.
#[test]
fn a_dead_end_is_left_at_its_mouth() {
    let network = grid(2, 1_000);
    let mut field = CostField::new();
    field
        .spread(&network, &[Source::node(NodeId(0))], Direction::To, None)
        .expect("a node");
    // Link 1 runs from node 0 to node 2; both of its ends and its length lead to node 0.
    let places = [0, 400_000, 1_000_000].map(|along_um| {
        (
            Location {
                link: LinkId(1),
                along_um,
            }
            .into(),
            1.0,
        )
    });
    let mut flows = RouteFlows::none(&network);
    flows.add(&network, &field, &places);
    assert_eq!((flows.begun, flows.ended), (3.0, 3.0));
    // Of the one at node 0 nothing is walked but the end it stands at.
    assert_eq!(flows.by_link, [0.0, 3.0, 0.0, 0.0]);
}
