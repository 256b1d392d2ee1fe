//! What a figure counted along streets: their lines, blocks, and the fronts of homes within a walk, to show on the drawing.

use hobnail_core::measures::streets::site_streets::{SiteLink, SiteStreets, Way};
use hobnail_core::measures::streets::{TEXTBOOK, section_entry_id};
use hobnail_core::measures::walk::destinations::Destination;
use hobnail_core::network::Reach;
use hobnail_core::study::Study;

use super::counted_land::{Entries, what_of};
use super::maps::{FAR_MINUTES, NEAR_MINUTES};
use super::places::Place;
use crate::canvas::scene_of::{meters, run_of};

/// What is counted along streets.
#[derive(Clone, Copy)]
enum What {
    /// Blocks with streets all round.
    Blocks,
    /// Streets without alleys and paths.
    Streets,
    /// Alleys.
    Alleys,
    /// Paths.
    Paths,
    /// Streets, alleys and paths.
    Ways,
    /// Intersections and heads of dead ends, of the whole figure by the textbook's rule.
    Nodes,
    /// Where streets lead in and out of the site.
    Gaps,
    /// Homes within a walk of so many minutes.
    Within(Destination, u32),
    /// From where the center is within five minutes.
    Shed,
    /// All homes.
    Homes,
}

/// What figures count there, by how their ids begin: the first that fits.
const ALONG: [(What, &str); 11] = [
    (What::Blocks, "blocks. sun.blocks sun.east_west_blocks"),
    (
        What::Ways,
        "streets.length_by_way streets.length_by_section streets.drawn",
    ),
    (
        What::Nodes,
        "streets.intersection streets.counted_nodes streets.counted_links streets.graph streets.link_node streets.connected streets.cycles \
         streets.alpha streets.beta streets.gamma",
    ),
    (
        What::Gaps,
        "streets.boundary_gap streets.leading_in streets.streets_leading",
    ),
    (
        What::Streets,
        "streets.length streets.frontage streets.enclosed streets.tree_lined streets.grade sun.streets \
         sun.east_west_streets",
    ),
    (What::Within(Destination::Center, NEAR_MINUTES), "walk.center_5min"),
    (What::Within(Destination::Park, NEAR_MINUTES), "walk.park_5min"),
    (What::Within(Destination::AllFive, FAR_MINUTES), "walk.all_five_10min"),
    (
        What::Within(Destination::AllFiveSure, FAR_MINUTES),
        "walk.all_five_sure",
    ),
    (What::Shed, "walk.shed walk.ped_shed"),
    (What::Homes, "walk.directness walk.times walk.homes walk.walks"),
];

/// Adds what a figure counted, or a row of it that stands at these entries; nothing for others, and for those told at the
/// pace of slower walkers.
pub(super) fn show(study: &Study, figure: &str, entries: &Entries, place: &mut Place) {
    let Some(mut what) = what_of(&ALONG, figure).filter(|_| !figure.ends_with("_slower")) else {
        return;
    };
    let mut rule = TEXTBOOK;
    let mut section = None;
    for (axis, entry) in entries {
        let destination = Destination::ALL.into_iter().find(|held| held.id() == entry);
        what = match (axis.as_str(), destination) {
            ("destination", Some(to)) if figure.ends_with("5min") => What::Within(to, NEAR_MINUTES),
            ("destination", Some(to)) if figure.ends_with("10min") => What::Within(to, FAR_MINUTES),
            ("directness_to", _) => what,
            ("way", _) => match entry.as_str() {
                "streets" => What::Streets,
                "alleys" => What::Alleys,
                _ => What::Paths,
            },
            ("counting_rule", _) => {
                rule = entry;
                what
            }
            ("street_section", _) => {
                section = Some(entry);
                what
            }
            _ => return,
        };
    }
    let is_of_section = |link: &SiteLink| {
        let line = study.fabric().lines.streets.get(link.street as usize);
        let held = line.map(|line| section_entry_id(line.section));
        section.is_none() || section == held.as_ref()
    };
    match what {
        What::Blocks => {
            let blocks = study.street_places().blocks;
            place
                .lands
                .extend(study.block_outlines_m(&mut blocks.iter().map(|block| block.at)));
        }
        What::Streets => show_streets(study, |link| link.way == Way::Street, place),
        What::Alleys => show_streets(study, |link| link.way == Way::Alley, place),
        What::Paths => show_streets(study, |link| link.way == Way::Path, place),
        What::Ways => show_streets(study, is_of_section, place),
        What::Gaps => {
            let gaps = study.street_places().boundary_gaps;
            place.points.extend(gaps.iter().map(|gap| gap.at.to_m()));
        }
        What::Nodes => {
            let counted = study.counted_nodes(rule);
            let is_without_heads = figure.starts_with("streets.intersection");
            let heads = counted.heads.iter().filter(|_| !is_without_heads);
            let nodes = counted.intersections.iter().chain(heads);
            place.points.extend(nodes.map(|at| at.to_m()));
        }
        What::Shed => show_reach(
            study,
            &study.walks().reach(Destination::Center, NEAR_MINUTES * 60),
            place,
        ),
        What::Homes => show_reach(study, &study.walks().home_fronts(), place),
        What::Within(destination, minutes) => {
            let within = study.walks().reach(destination, minutes * 60);
            let homes = Reach::intersection(&[&study.walks().home_fronts(), &within]);
            show_reach(study, &homes, place);
        }
    }
}

fn show_reach(study: &Study, reach: &Reach, place: &mut Place) {
    let network = study.network();
    let stretches = reach.pieces().iter();
    place
        .lines
        .extend(stretches.map(|stretch| meters(&network.stretch_points(*stretch))));
}

fn show_streets(study: &Study, is_counted: impl Fn(&SiteLink) -> bool, place: &mut Place) {
    let fabric = study.fabric();
    let streets = SiteStreets::of(&study.seen(), study.alternative(), fabric);
    let links = streets.links.iter().zip(&fabric.links.links);
    for (_, link) in links.filter(|(held, _)| held.is_inside && is_counted(held)) {
        place.lines.push(meters(&run_of(fabric, &link.half_edges)));
    }
}

#[cfg(test)]
mod tests {
    use hobnail_core::figures::value::Content;

    use crate::app::App;
    use crate::app::counted_land::row_id;
    use crate::app::places::{self, Place};

    fn village() -> App {
        let text = include_str!("../../../sample-sketches/compact-village.geojson");
        let opened = hobnail_core::exchange::plan_file::read(text.as_bytes()).expect("a sample");
        App::open(opened.document).expect("it opens")
    }

    fn place(app: &App, figure: &str) -> Place {
        places::of_figure(app.study(), figure).unwrap_or_default()
    }

    /// The numbers of a figure, of a table all of them.
    fn numbers(app: &App, figure: &str) -> Vec<f64> {
        let study = app.study();
        let index = study.graph().index(figure).expect("there is such a figure");
        match study.figure_value(index).content {
            Content::Single(cell) => cell.value.into_iter().collect(),
            Content::Table { rows, .. } => rows.iter().filter_map(|row| row.value.value).collect(),
        }
    }

    fn length_m(lines: &[Vec<(f64, f64)>]) -> f64 {
        let pairs = lines.iter().flat_map(|line| line.windows(2));
        pairs
            .map(|pair| (pair[0].0 - pair[1].0).hypot(pair[0].1 - pair[1].1))
            .sum()
    }

    fn around(rings: &[Vec<(f64, f64)>]) -> Vec<Vec<(f64, f64)>> {
        let closed = |ring: &Vec<(f64, f64)>| ring.iter().chain(ring.first()).copied().collect();
        rings.iter().map(closed).collect()
    }

    /// To a thousandth: outlines have corners where lengths have arcs.
    #[track_caller]
    fn same(found: f64, figure: f64) {
        assert!((found - figure).abs() <= 1e-3 * figure, "{found}, not {figure}");
    }

    #[test]
    fn streets_and_blocks_shown_are_as_long_as_their_figures() {
        let app = village();
        same(
            length_m(&place(&app, "streets.length").lines),
            numbers(&app, "streets.length")[0],
        );
        let ways: f64 = numbers(&app, "streets.length_by_way").iter().sum();
        same(length_m(&place(&app, "streets.length_by_way").lines), ways);
        let blocks = place(&app, "blocks.perimeter_median").lands;
        same(blocks.len() as f64, numbers(&app, "blocks.count")[0]);
        same(length_m(&around(&blocks)), numbers(&app, "blocks.perimeter_total")[0]);
    }

    #[test]
    fn points_shown_are_as_many_as_their_figures() {
        let app = village();
        let gaps = place(&app, "streets.boundary_gap_longest").points;
        same(gaps.len() as f64, numbers(&app, "streets.boundary_gap_count")[0]);
        let nodes = place(&app, "streets.link_node_ratio").points;
        let counted = numbers(&app, "streets.graph_nodes")[0];
        same(nodes.len() as f64, counted);
    }

    #[test]
    fn homes_within_a_walk_are_shown_along_the_streets_they_front_on() {
        let app = village();
        let length = |figure: &str| length_m(&place(&app, figure).lines);
        let homes = length("walk.directness_mean");
        let near = length("walk.center_5min_homes_share");
        let share = numbers(&app, "walk.center_5min_homes_share")[0];
        assert!(
            near < homes && (near / homes - share).abs() < 0.05,
            "{near} m of {homes} m, {share}"
        );
        // Fewer have all five needs without what is hoped for, and none is shown at the pace of slower walkers.
        assert!(length("walk.all_five_sure_10min_homes_share") <= length("walk.all_five_10min_homes_share"));
        assert_eq!(place(&app, "walk.center_5min_homes_share_slower"), Place::default());
        assert!(length("walk.ped_shed_ratio") > near, "also streets without homes");
    }

    #[test]
    fn land_shown_is_as_much_as_its_figures() {
        let app = village();
        let twice = |ring: &Vec<(f64, f64)>| -> f64 {
            let next = ring.iter().cycle().skip(1);
            ring.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum()
        };
        let area_m2 = |figure: &str| place(&app, figure).lands.iter().map(twice).sum::<f64>() / 2.0;
        for figure in ["land.site", "land.buildable"] {
            same(area_m2(figure).abs(), numbers(&app, figure)[0]);
        }
        for figure in [
            "land.held_back",
            "land.open_space",
            "land.right_of_way",
            "land.school_site",
            "mix.use_evenness",
        ] {
            assert!(place(&app, figure).count() > 0, "{figure}");
        }
        assert_eq!(place(&app, "land.without_use"), Place::default(), "there is none");
    }

    /// What each row of a table shows, beside its number.
    fn rows(app: &App, figure: &str) -> Vec<(Place, f64)> {
        let index = app.study().graph().index(figure).expect("there is such a figure");
        let Content::Table { rows, .. } = app.study().figure_value(index).content else {
            panic!("{figure} is a table");
        };
        let numbers = rows.iter().map(|row| row.value.value.unwrap_or_default());
        let shown = (0..rows.len()).map(|cell| place(app, &row_id(figure, cell)));
        shown.zip(numbers).collect()
    }

    #[test]
    fn rows_show_as_much_as_their_numbers_say() {
        let app = village();
        for figure in ["streets.length_by_way", "streets.length_by_section"] {
            for (shown, number) in rows(&app, figure) {
                same(length_m(&shown.lines), number);
            }
        }
        for figure in ["streets.counted_nodes", "streets.intersections"] {
            for (shown, number) in rows(&app, figure) {
                // One rule counts no nodes.
                let shown = shown.points.len() as f64;
                assert!(
                    number == 0.0 || (shown - number).abs() < 0.5,
                    "{figure}: {shown}, not {number}"
                );
            }
        }
        for (shown, number) in rows(&app, "lots.by_building_type") {
            same(shown.lands.len() as f64, number.round());
        }
        let homes = place(&app, "homes.count").lands.len();
        for figure in ["homes.by_phase", "homes.by_price_band", "homes.by_building_type"] {
            let rows = rows(&app, figure);
            assert_eq!(rows.iter().map(|(shown, _)| shown.lands.len()).sum::<usize>(), homes);
            for (shown, number) in rows {
                assert_eq!(shown.lands.is_empty(), number == 0.0, "{figure}: {number}");
            }
        }
        for figure in [
            "land.bar_share",
            "land.under_constraints",
            "land.held_back_by_kind",
            "land.not_in_site_by_kind",
            "land.not_in_buildable_by_kind",
            "land.not_walkable_by_kind",
        ] {
            for (shown, number) in rows(&app, figure) {
                assert_eq!(shown.count() == 0, number == 0.0, "{figure}: {number}");
            }
        }
    }

    #[test]
    fn rows_of_destinations_show_the_homes_that_reach_them() {
        let app = village();
        let near = rows(&app, "walk.homes_within_5min");
        let (center, number) = &near[0];
        assert_eq!(*center, place(&app, "walk.center_5min_homes_share"));
        assert!(*number > 0.0);
        let far = rows(&app, "walk.homes_within_10min");
        for ((near, _), (far, _)) in near.iter().zip(&far) {
            assert!(length_m(&near.lines) <= length_m(&far.lines) + 1e-6);
        }
        // What kinds of floor there are is not told apart on the drawing, nor the pace of slower walkers.
        for figure in ["mix.floor_area", "walk.homes_within_5min_slower", "walk.walks_as_long"] {
            assert!(
                rows(&app, figure).iter().all(|(shown, _)| *shown == Place::default()),
                "{figure}"
            );
        }
    }
}
