//! The coordinate system that a GeoTIFF's keys name (OGC GeoTIFF 1.1, 2019; numbers of keys from memory).

use std::io::Cursor;

use tiff::decoder::Decoder;
use tiff::tags::Tag;

use crate::bytes::Bytes;
use crate::fault::What;
use crate::system::System;

type Tiff = Decoder<Cursor<Bytes>>;

/// Whether values belong to areas (1) or points (2).
pub const RASTER_TYPE: u16 = 1025;
const GEOGRAPHIC: u16 = 2048;
const PROJECTED: u16 = 3072;
const METHOD: u16 = 3075;
const LINEAR_UNIT: u16 = 3076;
const LINEAR_UNIT_SIZE: u16 = 3077;
const PARALLEL_1: u16 = 3078;
const PARALLEL_2: u16 = 3079;
const ORIGIN_LONGITUDE: u16 = 3080;
const ORIGIN_LATITUDE: u16 = 3081;
const FALSE_EAST: u16 = 3082;
const FALSE_NORTH: u16 = 3083;
const FALSE_ORIGIN_LONGITUDE: u16 = 3084;
const FALSE_ORIGIN_LATITUDE: u16 = 3085;
const FALSE_ORIGIN_EAST: u16 = 3086;
const FALSE_ORIGIN_NORTH: u16 = 3087;
const SCALE: u16 = 3092;
const VERTICAL_UNIT: u16 = 4099;

/// "Said by other keys".
const USER_DEFINED: u32 = 32_767;

/// A key's whole number.
pub fn number(tiff: &mut Tiff, key: u16) -> Option<u32> {
    let entry = entry(tiff, key)?;
    (entry.0 == 0).then_some(u32::from(entry.1))
}

/// A key's floating number.
fn value(tiff: &mut Tiff, key: u16) -> Option<f64> {
    let entry = entry(tiff, key)?;
    let doubles = tiff.get_tag_f64_vec(Tag::GeoDoubleParamsTag).ok()?;
    let is_there = entry.0 == Tag::GeoDoubleParamsTag.to_u16();
    doubles
        .get(usize::from(entry.1))
        .copied()
        .filter(|value| is_there && value.is_finite())
}

/// Where a key's value is, and its value or index there.
fn entry(tiff: &mut Tiff, key: u16) -> Option<(u16, u16)> {
    let directory = tiff.get_tag_u16_vec(Tag::GeoKeyDirectoryTag).ok()?;
    let mut entries = directory.chunks_exact(4).skip(1);
    entries.find(|entry| entry[0] == key).map(|entry| (entry[1], entry[3]))
}

/// The system; `None` where the file names none.
pub fn system(tiff: &mut Tiff) -> Option<Result<System, What>> {
    match (number(tiff, PROJECTED), number(tiff, GEOGRAPHIC)) {
        (Some(USER_DEFINED) | None, _) if number(tiff, METHOD).is_some() => Some(by_parameters(tiff)),
        (Some(code), _) if code != USER_DEFINED => Some(System::from_epsg(code)),
        (None, Some(code)) => Some(System::from_epsg(code)),
        _ => None,
    }
}

/// A projection by its parameters, on GRS 1980 or WGS84, which differ by less than a millimeter here.
fn by_parameters(tiff: &mut Tiff) -> Result<System, What> {
    let method = number(tiff, METHOD).unwrap_or_default();
    let unknown = || What::UnknownSystem {
        system: format!("GeoTIFF {method}"),
    };
    let unit_m = match number(tiff, LINEAR_UNIT) {
        None | Some(9001) => 1.0,
        Some(9002) => 0.3048,
        Some(9003) => 1200.0 / 3937.0,
        Some(USER_DEFINED) => value(tiff, LINEAR_UNIT_SIZE).ok_or_else(unknown)?,
        Some(_) => return Err(unknown()),
    };
    // Other ellipsoids have other shifts, which no key tells.
    let geographic = number(tiff, GEOGRAPHIC);
    if geographic.is_some_and(|code| code != USER_DEFINED && System::from_epsg(code).is_err()) {
        return Err(unknown());
    }
    let mut of = |keys: [u16; 2], usual: f64| {
        let first = value(tiff, keys[0]);
        first.or_else(|| value(tiff, keys[1])).unwrap_or(usual)
    };
    let longitude = of([ORIGIN_LONGITUDE, FALSE_ORIGIN_LONGITUDE], 0.0);
    let latitude = of([ORIGIN_LATITUDE, FALSE_ORIGIN_LATITUDE], 0.0);
    let east_m = of([FALSE_EAST, FALSE_ORIGIN_EAST], 0.0) * unit_m;
    let north_m = of([FALSE_NORTH, FALSE_ORIGIN_NORTH], 0.0) * unit_m;
    let scale = of([SCALE; 2], 1.0);
    let parallels = [of([PARALLEL_1; 2], latitude), of([PARALLEL_2; 2], latitude)];
    let shape = match method {
        1 => format!("+proj=tmerc +k={scale:?}"),
        7 => format!("+proj=merc +k={scale:?}"),
        8 => format!("+proj=lcc +lat_1={:?} +lat_2={:?}", parallels[0], parallels[1]),
        9 => format!("+proj=lcc +lat_1={latitude:?} +k_0={scale:?}"),
        _ => return Err(unknown()),
    };
    System::from_proj(&format!(
        "{shape} +lat_0={latitude:?} +lon_0={longitude:?} +x_0={east_m:?} +y_0={north_m:?} +ellps=GRS80 \
         +towgs84=0,0,0,0,0,0,0 +to_meter={unit_m:?}"
    ))
}

/// Meters in a unit of height, by the vertical unit; meters where none is named.
pub fn height_unit_m(tiff: &mut Tiff) -> f64 {
    match number(tiff, VERTICAL_UNIT) {
        Some(9002) => 0.3048,
        Some(9003) => 1200.0 / 3937.0,
        _ => 1.0,
    }
}
