//! What leaves the tool: reports in words and numbers, built from text in, text out.

pub mod drawing;
pub mod measure_report;
pub mod network_report;
