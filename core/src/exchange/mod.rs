//! Plan files and, later, addresses: what was drawn, in and out. Built on `plan` alone.

pub mod geojson_lines;
