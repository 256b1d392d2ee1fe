//! The first-level figures: what stands in the column beside the drawing, in order.

/// Ids of the first-level figures, in order.
pub const FIRST_LEVEL: [&str; 6] = [
    "homes.count",
    "people.count",
    "walk.center_5min_homes_share",
    "walk.center_5min_homes",
    "jobs.per_home",
    "mix.use_evenness",
];
