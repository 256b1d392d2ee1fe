//! Land, soft areas, densities and the program, counted and declared together: what the plan is made of.

use super::allowance::AllowanceInputs;
use super::density::{DensityInputs, LOT_GROUPS, LotInput};
use super::frontage::Painted;
use super::land::LandInputs;
use super::land::claims::ClaimCache;
use super::land::count::{LandCount, is_park, square_meters};
use super::palette::{BuiltType, Palette};
use super::program::ProgramInputs;
use super::soft::{SoftAreas, SoftInput, SoftInputs, portions, words_for};
use super::{allowance, breakdown, density, land, program, soft, yardsticks};
use crate::fabric::Fabric;
use crate::figures::axis::Entry;
use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::Inputs;
use crate::plan::building::PriceBand;
use crate::plan::{AlternativeId, BuildingType, BuildingTypeId, Document, FloorUse, PhaseId};
use crate::say;

/// What the plan is made of, ready for the figures.
#[derive(Clone, Debug, PartialEq)]
pub struct FormInputs {
    /// Land.
    pub land: LandInputs,
    /// Soft areas.
    pub soft: SoftInputs,
    /// Lots and phases.
    pub density: DensityInputs,
    /// The typed program.
    pub program: ProgramInputs,
    /// What the town's rule allows.
    pub allowance: AllowanceInputs,
}

/// Declares every figure of these files.
pub fn declare(graph: &mut GraphBuilder) {
    land::declare(graph);
    soft::declare(graph);
    density::declare(graph);
    breakdown::declare(graph);
    program::declare(graph);
    allowance::declare(graph);
    yardsticks::declare(graph);
}

impl FormInputs {
    /// Counts an alternative whose painted faces are `painted`. Cost: see [`LandCount::of`].
    #[must_use]
    pub fn count(
        document: &Document,
        alternative: AlternativeId,
        fabric: &Fabric,
        painted: &Painted,
        cache: &mut ClaimCache,
    ) -> Self {
        let count = LandCount::of(document, alternative, fabric, painted, cache);
        Self {
            land: count.inputs(),
            soft: soft_inputs(document, alternative, &painted.palette, &count),
            density: density_inputs(document, painted),
            program: ProgramInputs::of(document, &painted.palette),
            allowance: AllowanceInputs::of(document),
        }
    }

    /// A plan of so many building types without land, lots and program, for figures worked without a drawing.
    #[must_use]
    pub fn without_land(building_types: usize) -> Self {
        let lots = LotInput {
            land_m2: 0.0,
            typical_m2: 0.0,
            groups: Default::default(),
            planted_share: 0.0,
            parking_per_lot: 0.0,
            price_band: 0,
            lots_by_phase: vec![0.0],
        };
        Self {
            land: LandInputs {
                parts_m2: Default::default(),
                constraints_m2: Default::default(),
                open_space_m2: Default::default(),
                has_boundary: false,
            },
            soft: SoftInputs {
                areas: Vec::new(),
                lots_per_m2: vec![0.0; building_types],
                is_park: vec![false; building_types],
            },
            density: DensityInputs {
                types: vec![lots; building_types],
                phases: vec![Entry::new("phase", say!("measures-whole-plan"))],
                land_left_m2: 0.0,
            },
            program: ProgramInputs::default(),
            allowance: AllowanceInputs::default(),
        }
    }

    /// Sets the leaves of these files.
    pub fn set(&self, inputs: &mut Inputs) {
        self.land.set(inputs);
        self.soft.set(inputs, self.density.phases.len());
        self.density.set(inputs);
        self.program.set(inputs);
        self.allowance.set(inputs);
    }
}

/// The id of a phase's entry on the axis `phase`.
#[must_use]
pub fn phase_entry_id(id: PhaseId) -> String {
    format!("phase_{id}")
}

/// The phases of a document; one that names none is built in one.
fn phases(document: &Document) -> Vec<Entry> {
    let named = document.phases.iter();
    let named: Vec<Entry> = named
        .map(|(id, phase)| Entry::new(phase_entry_id(*id), phase.name.clone()))
        .collect();
    if named.is_empty() {
        vec![Entry::new("phase", say!("measures-whole-plan"))]
    } else {
        named
    }
}

/// The place of a phase among those of the document: the first for none, and for one that is missing, which validation
/// names.
fn phase_place(document: &Document, phase: Option<PhaseId>) -> usize {
    let held = phase.and_then(|phase| document.phases.keys().position(|held| *held == phase));
    held.unwrap_or(0)
}

fn soft_inputs(document: &Document, alternative: AlternativeId, palette: &Palette, count: &LandCount) -> SoftInputs {
    let types = palette.len();
    let areas = SoftAreas::of(document, alternative);
    let areas = areas.iter().map(|(id, area)| {
        let counted = count.soft.iter().find(|(held, _)| *held == id);
        let mut shares = vec![0.0; types];
        for portion in portions(area) {
            if let Some(place) = palette.place(portion.building_type) {
                shares[place] += f64::from(portion.share_ppm) / 1e6;
            }
        }
        SoftInput {
            entry: Entry::new(format!("mark_{id}"), words_for(&area.outline, document.settings.units)),
            land_m2: counted.map_or(0.0, |(_, twice_mm2)| square_meters(*twice_mm2)),
            shares,
            phase: phase_place(document, area.phase),
        }
    });
    let lot_m2 = |held: &BuildingType| held.lot_area_mm2() as f64 / 1e6;
    let lots_per_m2 = palette.iter().map(|BuiltType { held, .. }| {
        let is_laid = held.lot_area_mm2() > 0 && !held.stories.is_empty();
        if is_laid { 1.0 / lot_m2(held) } else { 0.0 }
    });
    SoftInputs {
        areas: areas.collect(),
        lots_per_m2: lots_per_m2.collect(),
        is_park: palette.iter().map(|built| is_park(&built.held)).collect(),
    }
}

fn density_inputs(document: &Document, painted: &Painted) -> DensityInputs {
    let phases = phases(document);
    let types = painted.palette.iter();
    let mut types: Vec<LotInput> = types.map(|built| lot_input(&built.held, phases.len())).collect();
    let mut land_left_m2 = 0.0;
    for face in painted.iter() {
        if face.is_for_lots(document) {
            let sum = |parts: &[(BuildingTypeId, f64)]| parts.iter().map(|(_, land_m2)| land_m2).sum::<f64>();
            land_left_m2 += (sum(&face.land_m2) - sum(&face.lot_land_m2)).max(0.0);
        }
        let phase = phase_place(document, face.phase);
        for (id, land_m2) in &face.lot_land_m2 {
            if let Some(place) = painted.palette.place(*id) {
                types[place].land_m2 += land_m2;
            }
        }
        for (id, lots) in &face.lots {
            if let Some(place) = painted.palette.place(*id) {
                types[place].lots_by_phase[phase] += lots;
            }
        }
    }
    DensityInputs {
        types,
        phases,
        land_left_m2,
    }
}

fn lot_input(held: &BuildingType, phases: usize) -> LotInput {
    let is_built = !held.stories.is_empty();
    let is_other = |floor_use: FloorUse| !matches!(floor_use, FloorUse::Home | FloorUse::Parking);
    let has = |is_meant: &dyn Fn(FloorUse) -> bool| {
        let mut stories = held.stories.iter();
        stories.any(|story| is_meant(story.floor_use) && story.floor_area_m2 > 0)
    };
    let (has_homes, has_other) = (held.homes_per_lot > 0, has(&is_other));
    let groups: [bool; LOT_GROUPS] = [
        has_homes,
        has_other,
        is_built,
        has(&|floor_use| floor_use == FloorUse::Learning),
        has_other && !has_homes,
    ];
    LotInput {
        land_m2: 0.0,
        typical_m2: held.lot_area_mm2() as f64 / 1e6,
        groups,
        planted_share: if is_built {
            f64::from(held.planted_thousandths) / 1e3
        } else {
            0.0
        },
        parking_per_lot: f64::from(held.parking_per_lot_hundredths) / 100.0,
        price_band: match held.price_band {
            PriceBand::Lower => 0,
            PriceBand::Middle => 1,
            PriceBand::Upper => 2,
        },
        lots_by_phase: vec![0.0; phases],
    }
}

#[cfg(test)]
pub(crate) mod tests;
