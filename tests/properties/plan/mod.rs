//! Properties of the plan.

mod projection;
