//! Properties of the plan.

mod address;
mod history;
mod passed;
mod plan_file;
mod projection;
mod versions;
