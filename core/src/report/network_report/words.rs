//! The answer in words: a short table in sentences, with units.

use super::NetworkReport;
use super::answer::{NetworkAnswer, OriginFigures, ShedFigures, WalkFigures};
use crate::say;

/// The whole answer, line by line.
pub(super) fn words_of(report: &NetworkReport) -> String {
    let NetworkAnswer {
        arrangement: streets,
        walk,
        betweenness,
        ..
    } = &report.answer;
    let mut lines = vec![say!(
        "report-streets",
        length = meters(streets.total_length),
        parts = say!(
            "report-parts",
            count = streets.components,
            number = grouped(streets.components)
        ),
        links = say!("report-links", count = streets.edges, number = grouped(streets.edges)),
        nodes = nodes(streets.nodes),
        dead_ends = streets.dead_ends
    )];
    lines.push(match streets.link_node_ratio {
        Some(ratio) => say!(
            "report-connection",
            ratio = format!("{ratio:.2}"),
            junctions = streets.junctions_deg3plus
        ),
        None => say!("report-connection-none", junctions = streets.junctions_deg3plus),
    });
    if let (Some(area), Some(perimeter), Some(longest)) = (
        streets.face_area_median,
        streets.outer_perimeter_median,
        streets.outer_perimeter_max,
    ) {
        lines.push(say!(
            "report-faces",
            count = streets.faces,
            area_ha = format!("{:.2}", area / 1e4),
            perimeter = meters(perimeter),
            longest = meters(longest)
        ));
    }
    if let Some(density) = streets.intersection_density_per_km2_of_hull {
        lines.push(say!(
            "report-density",
            density = format!("{density:.0}"),
            area_ha = hectares(streets.hull_area)
        ));
    }
    if let Some(most) = betweenness.as_ref().and_then(|figures| figures.top.first()) {
        lines.push(say!(
            "report-busiest",
            walks = format!("{:.0}", most.value),
            length = meters(most.length),
            east = format!("{:.1}", most.mid[0]),
            north = format!("{:.1}", most.mid[1])
        ));
    }
    if let Some(walk) = walk {
        walk_lines(walk, &mut lines);
    }
    if let Some([longitude, latitude]) = report.center_deg {
        lines.push(say!(
            "report-positions",
            longitude = longitude.to_string(),
            latitude = latitude.to_string()
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
        lines.push(say!("report-nearest-origin").to_owned());
        lines.extend(in_order(walk, &walk.multi_origin));
    }
}

fn origin_line(origin: &OriginFigures) -> String {
    let id = &origin.id;
    let offset = format!("{:.1}", origin.offset);
    let nodes = nodes(origin.reachable_nodes);
    let farthest = origin.farthest_node.map(meters);
    let mean = origin.prd_mean.map(|mean| format!("{mean:.2}"));
    match (farthest, mean) {
        (None, None) => say!("report-origin", id = id, offset = offset, nodes = nodes),
        (Some(farthest), None) => say!(
            "report-origin-far",
            id = id,
            offset = offset,
            nodes = nodes,
            farthest = farthest
        ),
        (None, Some(mean)) => say!(
            "report-origin-direct",
            id = id,
            offset = offset,
            nodes = nodes,
            mean = mean
        ),
        (Some(farthest), Some(mean)) => say!(
            "report-origin-far-direct",
            id = id,
            offset = offset,
            nodes = nodes,
            farthest = farthest,
            mean = mean
        ),
    }
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
    let radius = format!("{radius:>4}");
    let length = meters(shed.reached_length);
    let [hull, buffer, enclosed] = [shed.hull_area, shed.buffer25_area, shed.enclosed_area].map(hectares);
    let dwellings = shed
        .dwellings_reached
        .map(|count| say!("report-dwellings", count = count, number = grouped(count)));
    let share = shed.dwellings_share.map(|share| format!("{:.0}", share * 100.0));
    let words = match (dwellings, share) {
        (None, _) => say!(
            "report-shed",
            radius = radius,
            length = length,
            hull = hull,
            buffer = buffer,
            enclosed = enclosed
        ),
        (Some(dwellings), None) => say!(
            "report-shed-dwellings",
            radius = radius,
            length = length,
            dwellings = dwellings,
            hull = hull,
            buffer = buffer,
            enclosed = enclosed
        ),
        (Some(dwellings), Some(share)) => say!(
            "report-shed-dwellings-share",
            radius = radius,
            length = length,
            dwellings = dwellings,
            share = share,
            hull = hull,
            buffer = buffer,
            enclosed = enclosed
        ),
    };
    format!("  {words}")
}

/// Whole meters with thousands set apart.
fn meters(length_m: f64) -> String {
    format!("{} m", grouped(length_m.round() as u64))
}

/// An area in square meters as hectares, without their sign.
fn hectares(area_m2: f64) -> String {
    format!("{:.1}", area_m2 / 1e4)
}

fn nodes(count: u64) -> String {
    say!("report-nodes", count = count, number = grouped(count))
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
