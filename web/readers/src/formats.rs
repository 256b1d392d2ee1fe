//! One file for each format but OpenStreetMap's.

pub mod ascii_grid;
pub mod dxf;
pub mod geojson;
pub mod geotiff;
pub mod hgt;
pub mod shapefile;
pub mod table;
pub mod world;
