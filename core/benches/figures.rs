//! One edit through the figures, and the draws of the figures on screen.
//!
//! Sizes are blocks; lots of twelve building types stand in them.

mod common;

use std::sync::Arc;

use common::{Random, measure};
use hobnail_core::factors::Factors;
use hobnail_core::figures::axis::Entry;
use hobnail_core::figures::unit::System;
use hobnail_core::figures::{Evaluation, NodeIndex};
use hobnail_core::measures::form::FormInputs;
use hobnail_core::measures::streets::{BlockCount, StreetInputs};
use hobnail_core::measures::walk::destinations::Destination;
use hobnail_core::measures::walk::{KNOTS_S, WalkInput, settings};
use hobnail_core::measures::{self, BuildingTypeInput, MeasureInputs};
use hobnail_core::plan::PlanPoint;

const TYPES: usize = 12;

fn neighborhood(faces: usize) -> MeasureInputs {
    let mut random = Random(5);
    let mut some = |most| f64::from(random.within(0, most));
    let lots: Vec<f64> = (0..TYPES).map(|_| some(40 * faces as i32)).collect();
    let all: f64 = lots.iter().sum();
    let last_s = KNOTS_S[KNOTS_S.len() - 1];
    let homes: Vec<f64> = KNOTS_S
        .iter()
        .map(|time_s| all * *time_s as f64 / last_s as f64)
        .collect();
    MeasureInputs {
        building_types: (0..TYPES)
            .map(|one| BuildingTypeInput {
                entry: Entry::new(format!("type_{one}"), format!("type {one}")),
                people_per_home: 2.3,
                homes_per_lot: f64::from(one as u32 % 4),
                floor_per_lot_m2: [110.0, 20.0 * (one % 3) as f64, 15.0, 0.0, 4.0],
                jobs_per_m2: [0.0431, 0.0196, 0.0083, 0.005],
            })
            .collect(),
        walk: WalkInput {
            homes_within: vec![Ok(homes); Destination::ALL.len()],
            base_speed_m_per_s: 1.34,
            settings: settings::ALL.iter().map(|setting| setting.default).collect(),
        },
        streets: StreetInputs {
            blocks: (0..faces)
                .map(|_| BlockCount {
                    at: PlanPoint::default(),
                    perimeter_m: some(900),
                    longest_side_m: some(300),
                })
                .collect(),
            east_west_blocks: faces as u32,
            ..StreetInputs::default()
        },
        form: {
            let mut form = FormInputs::without_land(TYPES);
            for (held, lots) in form.density.types.iter_mut().zip(lots) {
                held.lots_by_phase = vec![lots];
            }
            form
        },
        details: None,
    }
}

/// Measures.
pub fn main() -> Result<(), String> {
    let factors = Factors::shipped().map_err(|faults| format!("{faults:?}"))?;
    let graph = Arc::new(measures::graph().map_err(|faults| format!("{faults:?}"))?);
    for faces in [100, 1_000, 10_000] {
        let measured = neighborhood(faces);
        let inputs = |measured: &MeasureInputs| measures::inputs(measured, &factors).unwrap_or_default();
        let mut evaluation =
            Evaluation::new(Arc::clone(&graph), inputs(&measured), 1).map_err(|faults| format!("{faults:?}"))?;
        let screen: Vec<NodeIndex> = [
            "homes.count",
            "people.count",
            "walk.center_5min_homes_share",
            "jobs.per_home",
        ]
        .iter()
        .filter_map(|id| graph.index(id))
        .collect();

        let mut edited = measured.clone();
        edited.form.density.types[3].lots_by_phase[0] += 3.0;
        let states = [inputs(&edited), inputs(&measured)];
        let mut turn = 0;
        measure(&format!("figures/edit/{faces}"), || {
            turn += 1;
            evaluation.set(states[turn % 2].clone()).map(|changes| changes.worked)
        });
        measure(&format!("figures/draws/{faces}"), || {
            turn += 1;
            let set = evaluation.set(states[turn % 2].clone()).map(|changes| changes.worked);
            evaluation.draw(&screen);
            set
        });
        measure(&format!("figures/basis/{faces}"), || {
            screen
                .first()
                .map(|index| evaluation.basis(*index, 0, System::Customary).to_string())
        });
    }
    Ok(())
}
