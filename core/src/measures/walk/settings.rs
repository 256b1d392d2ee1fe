//! The settings of walking: how much of a use makes a daily need, and what waits cost. Each may be chosen anew in the
//! document's settings under its id; ids are stable for ever.

use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::unit::{self, ACRE_M2, SQUARE_FOOT_M2, Unit};
use crate::plan::Document;

/// One setting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// Its id among the document's chosen settings, and of its leaf in the graph.
    pub id: &'static str,
    /// What it is, in words.
    pub title: &'static str,
    /// Its unit; the document holds it in this unit's coherent one.
    pub unit: Unit,
    /// What counts where the document says nothing.
    pub default: f64,
    /// Where the default comes from.
    pub source: &'static str,
}

/// Homes that make neighbors.
pub const HOMES_MINIMUM: Setting = Setting {
    id: "walk.need_homes_minimum",
    title: "fewest homes together that count as neighbors",
    unit: unit::HOMES,
    default: 10.0,
    source: "common practice, no source",
};

/// Jobs that make a place of work.
pub const WORK_MINIMUM: Setting = Setting {
    id: "walk.need_work_minimum",
    title: "fewest jobs together that count as work",
    unit: unit::JOBS,
    default: 20.0,
    source: "common practice, no source",
};

/// Shop floor that makes shops.
pub const SHOPS_MINIMUM: Setting = Setting {
    id: "walk.need_shops_minimum",
    title: "least shop floor together that counts as shops",
    unit: unit::AREA,
    default: 1_500.0 * SQUARE_FOOT_M2,
    source: "the smallest corner store, 1,500 square feet (R. Gibbs, A primer on retail types and urban centers, \
             Congress for the New Urbanism)",
};

/// Floor for learning that makes a place of it.
pub const LEARNING_MINIMUM: Setting = Setting {
    id: "walk.need_learning_minimum",
    title: "least floor for learning together that counts",
    unit: unit::AREA,
    default: 200.0,
    source: "a child care center or branch library: common practice, no source",
};

/// Floor for gathering that makes a place of it.
pub const GATHERING_MINIMUM: Setting = Setting {
    id: "walk.need_gathering_minimum",
    title: "least floor for gathering together that counts",
    unit: unit::AREA,
    default: 200.0,
    source: "a small hall: common practice, no source",
};

/// Floor for learning that makes a school.
pub const SCHOOL_MINIMUM: Setting = Setting {
    id: "walk.school_minimum",
    title: "least floor for learning together that counts as a school",
    unit: unit::AREA,
    default: 1_000.0,
    source: "common practice, no source",
};

/// Land that makes a park or square.
pub const PARK_MINIMUM: Setting = Setting {
    id: "walk.park_minimum",
    title: "least open land in a block face that counts as a park or square",
    unit: unit::LAND,
    default: ACRE_M2 / 6.0,
    source: "a sixth of an acre (LEED 2009 for Neighborhood Development, credit NPDc9, access to civic and public space)",
};

/// The wait where a walk crosses a wide or fast street: four travel lanes or more, or a target speed above 40 miles an
/// hour.
pub const CROSSING_WAIT_WIDE: Setting = Setting {
    id: "walk.crossing_wait_wide",
    title: "mean wait to cross a wide or fast street",
    unit: unit::SECONDS,
    default: 35.0,
    source: "a signal with a cycle of 90 s and 11 s to start in: half of (90 − 11)² ÷ 90 (Highway Capacity Manual, 2000, \
             equation 18-5; the cycle is common practice, no source)",
};

/// The wait where a walk crosses a street between: three travel lanes, or a target speed of 35 miles an hour or more.
pub const CROSSING_WAIT_MIDDLE: Setting = Setting {
    id: "walk.crossing_wait_middle",
    title: "mean wait to cross a street of three lanes or 35 miles an hour",
    unit: unit::SECONDS,
    default: 10.0,
    source: "three lanes of 11 feet with 300 vehicles an hour that do not yield: (e^(v t) − v t − 1) ÷ v, t = length ÷ 3.5 \
             feet a second + 3 s (Highway Capacity Manual, 2010, from memory; the traffic is common practice, no source)",
};

/// The target speed up to which people walk in a street without a walk.
pub const SHARED_STREET_TOP_SPEED: Setting = Setting {
    id: "walk.shared_street_top_speed",
    title: "highest target speed of a street without a walk that people walk in",
    unit: unit::SPEED,
    default: 20.0 * 0.447_04,
    source: "20 miles an hour: common practice, no source",
};

/// How far a walk-shed's buffer reaches to each side of the streets.
pub const SHED_BUFFER_WIDTH: Setting = Setting {
    id: "walk.shed_buffer_width",
    title: "width of a walk-shed's band to each side of the reached streets",
    unit: unit::LENGTH,
    default: 25.0,
    source: "common practice, no source",
};

/// The minimum of each of the five daily needs, in their order.
pub const NEED_MINIMUMS: [Setting; 5] = [
    HOMES_MINIMUM,
    WORK_MINIMUM,
    SHOPS_MINIMUM,
    LEARNING_MINIMUM,
    GATHERING_MINIMUM,
];

/// Every setting, in order.
pub const ALL: [Setting; 11] = [
    HOMES_MINIMUM,
    WORK_MINIMUM,
    SHOPS_MINIMUM,
    LEARNING_MINIMUM,
    GATHERING_MINIMUM,
    SCHOOL_MINIMUM,
    PARK_MINIMUM,
    CROSSING_WAIT_WIDE,
    CROSSING_WAIT_MIDDLE,
    SHARED_STREET_TOP_SPEED,
    SHED_BUFFER_WIDTH,
];

impl Setting {
    /// What the document chose, or the default; a chosen value that is not finite or below zero does not count.
    #[must_use]
    pub fn of(&self, document: &Document) -> f64 {
        let chosen = document.settings.chosen.get(self.id).copied();
        chosen
            .filter(|value| value.is_finite() && *value >= 0.0)
            .unwrap_or(self.default)
    }
}

/// Declares every setting as a leaf.
pub(super) fn declare(graph: &mut GraphBuilder) {
    for setting in ALL {
        let _ = graph.chosen(setting.id, setting.title, setting.unit);
    }
}

/// Sets the leaves, in the order of [`ALL`].
pub(super) fn set_inputs(inputs: &mut Inputs, values: &[f64]) {
    for (setting, value) in ALL.iter().zip(values) {
        inputs.set_chosen(setting.id, numbers(&[*value]));
    }
}
