//! What leaves the tool: reports in words and numbers, drawings and tables for other programs.

pub mod class_table;
pub mod drawing;
pub mod export;
pub mod measure_report;
pub mod network_report;
