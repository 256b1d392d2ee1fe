//! Properties of the plan.

mod history;
mod plan_file;
mod projection;
mod versions;
