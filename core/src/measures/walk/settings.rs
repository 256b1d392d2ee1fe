//! The settings of walking: how much of a use makes a daily need, and what waits cost. Each may be chosen anew in the
//! document's settings under its id; ids are stable for ever.

use crate::figures::graph::GraphBuilder;
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::unit::{self, ACRE_M2, SQUARE_FOOT_M2, Unit};
use crate::message;
use crate::messages::Message;
use crate::plan::Document;

/// One setting.
#[derive(Clone, Copy, Debug)]
pub struct Setting {
    /// Its id among the document's chosen settings, and of its leaf in the graph.
    pub id: &'static str,
    title: Message,
    /// Its unit; the document holds it in this unit's coherent one.
    pub unit: Unit,
    /// What counts where the document says nothing.
    pub default: f64,
    source: Message,
}

/// Homes that make neighbors.
pub const HOMES_MINIMUM: Setting = Setting {
    id: "walk.need_homes_minimum",
    title: message!("measures-set-homes"),
    unit: unit::HOMES,
    default: 10.0,
    source: message!("measures-source-common"),
};

/// Jobs that make a place of work.
pub const WORK_MINIMUM: Setting = Setting {
    id: "walk.need_work_minimum",
    title: message!("measures-set-work"),
    unit: unit::JOBS,
    default: 20.0,
    source: message!("measures-source-common"),
};

/// Shop floor that makes shops.
pub const SHOPS_MINIMUM: Setting = Setting {
    id: "walk.need_shops_minimum",
    title: message!("measures-set-shops"),
    unit: unit::AREA,
    default: 1_500.0 * SQUARE_FOOT_M2,
    source: message!("measures-source-shops"),
};

/// Floor for learning that makes a place of it.
pub const LEARNING_MINIMUM: Setting = Setting {
    id: "walk.need_learning_minimum",
    title: message!("measures-set-learning"),
    unit: unit::AREA,
    default: 200.0,
    source: message!("measures-source-learning"),
};

/// Floor for gathering that makes a place of it.
pub const GATHERING_MINIMUM: Setting = Setting {
    id: "walk.need_gathering_minimum",
    title: message!("measures-set-gathering"),
    unit: unit::AREA,
    default: 200.0,
    source: message!("measures-source-gathering"),
};

/// Floor for learning that makes a school.
pub const SCHOOL_MINIMUM: Setting = Setting {
    id: "walk.school_minimum",
    title: message!("measures-set-school"),
    unit: unit::AREA,
    default: 1_000.0,
    source: message!("measures-source-common"),
};

/// Land that makes a park or square.
pub const PARK_MINIMUM: Setting = Setting {
    id: "walk.park_minimum",
    title: message!("measures-set-park"),
    unit: unit::LAND,
    default: ACRE_M2 / 6.0,
    source: message!("measures-source-park"),
};

/// The wait where a walk crosses a wide or fast street: four travel lanes or more, or a target speed above 40 miles an
/// hour.
pub const CROSSING_WAIT_WIDE: Setting = Setting {
    id: "walk.crossing_wait_wide",
    title: message!("measures-set-wait-wide"),
    unit: unit::SECONDS,
    default: 35.0,
    source: message!("measures-source-wait-wide"),
};

/// The wait where a walk crosses a street between: three travel lanes, or a target speed of 35 miles an hour or more.
pub const CROSSING_WAIT_MIDDLE: Setting = Setting {
    id: "walk.crossing_wait_middle",
    title: message!("measures-set-wait-middle"),
    unit: unit::SECONDS,
    default: 10.0,
    source: message!("measures-source-wait-middle"),
};

/// The target speed up to which people walk in a street without a walk.
pub const SHARED_STREET_TOP_SPEED: Setting = Setting {
    id: "walk.shared_street_top_speed",
    title: message!("measures-set-shared-speed"),
    unit: unit::SPEED,
    default: 20.0 * 0.447_04,
    source: message!("measures-source-shared-speed"),
};

/// How far a walk-shed's buffer reaches to each side of the streets.
pub const SHED_BUFFER_WIDTH: Setting = Setting {
    id: "walk.shed_buffer_width",
    title: message!("measures-set-shed-buffer"),
    unit: unit::LENGTH,
    default: 25.0,
    source: message!("measures-source-common"),
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
    /// What it is, in words.
    #[must_use]
    pub fn title(&self) -> &'static str {
        self.title.words()
    }

    /// Where the default comes from.
    #[must_use]
    pub fn source(&self) -> &'static str {
        self.source.words()
    }

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
        let _ = graph.chosen(setting.id, setting.title(), setting.unit);
    }
}

/// Sets the leaves, in the order of [`ALL`].
pub(super) fn set_inputs(inputs: &mut Inputs, values: &[f64]) {
    for (setting, value) in ALL.iter().zip(values) {
        inputs.set_chosen(setting.id, numbers(&[*value]));
    }
}
