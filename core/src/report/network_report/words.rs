//! The answer in words: a short table in sentences, with units.

use super::NetworkReport;
use super::answer::{NetworkAnswer, OriginFigures, ShedFigures, WalkFigures};

/// The whole answer, line by line.
pub(super) fn words_of(report: &NetworkReport) -> String {
    let NetworkAnswer {
        arrangement: streets,
        walk,
        betweenness,
        ..
    } = &report.answer;
    let mut lines = vec![
        format!(
            "Streets     {} of street in {}: {} between {}, {} of them dead ends.",
            meters(streets.total_length),
            counted(streets.components, "connected part", "connected parts"),
            counted(streets.edges, "link", "links"),
            counted(streets.nodes, "node", "nodes"),
            streets.dead_ends,
        ),
        format!(
            "Connection  {} links to a node, every node counted; {} meeting of three or more links.",
            decimal(streets.link_node_ratio, 2),
            streets.junctions_deg3plus,
        ),
    ];
    if let (Some(area), Some(perimeter), Some(longest)) = (
        streets.face_area_median,
        streets.outer_perimeter_median,
        streets.outer_perimeter_max,
    ) {
        lines.push(format!(
            "Faces       {} enclosed; half are larger than {:.2} ha, half have more than {} around them, the longest {}.",
            streets.faces,
            area / 1e4,
            meters(perimeter),
            meters(longest),
        ));
    }
    if let Some(density) = streets.intersection_density_per_km2_of_hull {
        lines.push(format!(
            "Density     {density:.0} intersections per km² of the convex hull of the streets ({:.1} ha).",
            streets.hull_area / 1e4,
        ));
    }
    if let Some(most) = betweenness.as_ref().and_then(|figures| figures.top.first()) {
        lines.push(format!(
            "Busiest     {:.0} of all shortest walks between nodes use the link of {} around {:.1}, {:.1}.",
            most.value,
            meters(most.length),
            most.mid[0],
            most.mid[1],
        ));
    }
    if let Some(walk) = walk {
        walk_lines(walk, &mut lines);
    }
    if let Some([longitude, latitude]) = report.center_deg {
        lines.push(format!(
            "Positions   are in meters east and north of longitude {longitude}, latitude {latitude}.",
        ));
    }
    lines.push(String::new());
    lines.join("\n")
}

fn walk_lines(walk: &WalkFigures, lines: &mut Vec<String>) {
    for origin in &walk.origins {
        lines.push(String::new());
        lines.push(origin_line(origin));
        lines.extend(in_order(walk, &origin.sheds));
    }
    if walk.origins.len() > 1 {
        lines.push(String::new());
        lines.push("From the nearest of these origins".to_owned());
        lines.extend(in_order(walk, &walk.multi_origin));
    }
}

fn origin_line(origin: &OriginFigures) -> String {
    let farthest = origin
        .farthest_node
        .map(|far| format!(", the farthest {} away", meters(far)));
    let directness = origin
        .prd_mean
        .map(|mean| format!("; walks to the samples are {mean:.2} times as long as the straight line"));
    format!(
        "From {} ({:.1} m beside the street): {} within reach{}{}.",
        origin.id,
        origin.offset,
        counted(origin.reachable_nodes, "node", "nodes"),
        farthest.unwrap_or_default(),
        directness.unwrap_or_default(),
    )
}

/// Sheds in the order their distances were asked for.
fn in_order<'a>(
    walk: &'a WalkFigures,
    sheds: &'a std::collections::BTreeMap<String, ShedFigures>,
) -> impl Iterator<Item = String> + 'a {
    walk.radii.iter().filter_map(|radius| {
        let name = radius.to_string();
        sheds.get(&name).map(|shed| shed_line(&name, shed))
    })
}

fn shed_line(radius: &str, shed: &ShedFigures) -> String {
    let dwellings = shed.dwellings_reached.map(|count| {
        let share = shed.dwellings_share.map(|share| format!(" ({:.0} %)", share * 100.0));
        format!(
            ", {}{}",
            counted(count, "dwelling", "dwellings"),
            share.unwrap_or_default()
        )
    });
    format!(
        "  within {radius:>4} m  {} of street{}; areas by hull {:.1} ha, by 25 m buffer {:.1} ha, by enclosed faces {:.1} ha.",
        meters(shed.reached_length),
        dwellings.unwrap_or_default(),
        shed.hull_area / 1e4,
        shed.buffer25_area / 1e4,
        shed.enclosed_area / 1e4,
    )
}

/// Whole meters with thousands set apart.
fn meters(length_m: f64) -> String {
    format!("{} m", grouped(length_m.round() as u64))
}

/// A number and what is counted.
fn counted(count: u64, one: &str, many: &str) -> String {
    format!("{} {}", grouped(count), if count == 1 { one } else { many })
}

/// Digits in groups of three.
fn grouped(number: u64) -> String {
    let digits = number.to_string();
    let mut text = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

/// A number to some decimals, or a word for none.
fn decimal(number: Option<f64>, decimals: usize) -> String {
    number.map_or("no".to_owned(), |number| format!("{number:.decimals$}"))
}
