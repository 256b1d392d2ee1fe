//! Details made up for tests of the figures.

use super::*;

/// Details of an invented village.
pub(crate) fn made_up() -> WalkDetails {
    let cells = |numbers: &[f64]| numbers.iter().map(|number| Cell::Number(*number)).collect::<Vec<_>>();
    WalkDetails {
        shed_areas_m2: cells(&[140_000.0, 310_000.0, 230_000.0, 910_000.0, 190_000.0, 620_000.0]),
        circles: cells(&[1.0]),
        drawn_center_homes: cells(&[150.0]),
        best_center: Some(PlanPoint::new(120_000, -45_500)),
        best_center_homes: cells(&[171.5]),
        directness_homes: cells(&[190.0, 12.0, 180.5, 200.0, 201.0, 203.25]),
        directness_sums: cells(&[247.0, 14.5, 230.0, 260.0, 270.5, 280.0]),
        directness_most_of: cells(&[1.41, 1.3, 1.52, 1.4, 1.45, 1.6]),
        indirect_fronts: vec![
            IndirectFront {
                title: "Mill Street at 40 m east, 12 m north".to_owned(),
                line: vec![PlanPoint::new(20_000, 12_000), PlanPoint::new(60_000, 12_000)],
                directness: 2.31,
                homes: 11.0,
            },
            IndirectFront {
                title: "front at -80 m east, 12 m north".to_owned(),
                line: vec![PlanPoint::new(-90_000, 12_000), PlanPoint::new(-70_000, 12_000)],
                directness: 1.97,
                homes: 4.5,
            },
        ],
        walks_by_link: vec![310.0, 25.0],
        busiest_segment: Some(("Mill Street at 0 m east, 12 m north".to_owned(), 310.0)),
        walked_m: cells(&[84_000.0, 31_000.0]),
        mix_homes: cells(&[214.0, 214.0]),
        mix_sums: cells(&[75.0, 96.0]),
        needs_reached: cells(&[520.0, 840.0]),
        cells: cells(&[14.0]),
        unlike_neighbors: cells(&[2.625]),
    }
}
