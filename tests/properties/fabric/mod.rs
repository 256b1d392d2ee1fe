//! The arrangement: Euler's count, areas, agreement with the slow arrangement, independence of how the set is written.

mod arrangement;
mod constraints;
mod drawings;
mod joins;
mod land;
mod many_lines;
mod oracle;
mod parts;
