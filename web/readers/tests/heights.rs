//! Heights as GDAL writes them; core's slopes and contours of them as `gdaldem` and `gdal_contour` work them out
//! (`tests/fixtures/readers/README.md`).

use hobnail_core::measures::slopes::Slopes;
use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::document::Topography;
use hobnail_core::report::drawing::contours::{Field, levels};
use hobnail_readers::base::{Coordinates, Format};
use hobnail_readers::fault::{Place, What};
use hobnail_readers::grid::Grid;
use hobnail_readers::grid::resampled::{about, resampled};
use hobnail_readers::options::Options;
use hobnail_readers::system::System;

use super::{bytes, read, refused, text};

const COLUMNS: usize = 40;
const ROWS: usize = 30;

fn grid(name: &str, options: Options) -> Grid {
    let mut base = read(&format!("readers/heights/{name}"), options);
    assert_eq!(base.faults, [], "{name}");
    base.grids.pop().expect("it holds heights")
}

fn in_system(system: &str) -> Options {
    Options {
        system: Some(system.to_owned()),
        ..Options::default()
    }
}

#[test]
fn heights_are_the_same_however_they_are_written() {
    let first = grid("strips.asc", in_system("EPSG:26986"));
    assert_eq!((first.columns, first.rows), (COLUMNS, ROWS));
    assert_eq!(first.cell_m(0), [10.0, 10.0]);
    // The northwestern cell's center, half a cell from the corner that the maker was given.
    assert_eq!(first.first, [230_005.0, 899_995.0]);
    for name in [
        "strips.tif",
        "tiles_deflate.tif",
        "tiles_lzw.tif",
        "double.tif",
        "parameters.tif",
    ] {
        let other = grid(name, Options::default());
        assert_eq!((other.columns, other.rows), (COLUMNS, ROWS), "{name}");
        let is_same = |(one, other): (&f32, &f32)| (one - other).abs() <= one.abs() * 1e-7;
        assert!(first.values.iter().zip(&other.values).all(is_same), "{name}");
        let is_in_feet = name == "parameters.tif";
        assert_eq!(
            other.system.unit_m(),
            Some(if is_in_feet { 1200.0 / 3937.0 } else { 1.0 }),
            "{name}"
        );
    }
    let whole = grid("whole.tif", Options::default());
    let off = first
        .values
        .iter()
        .zip(&whole.values)
        .map(|(one, other)| (one - other / 100.0).abs());
    assert!(off.fold(0.0, f32::max) < 0.0051);
}

#[test]
fn the_same_ground_in_feet_is_in_the_same_place() {
    let (metric, feet) = (
        grid("strips.tif", Options::default()),
        grid("feet.tif", Options::default()),
    );
    for cell in [[0.0, 0.0], [39.0, 29.0], [17.5, 3.25]] {
        // The false easting of the system in feet is that in meters and a tenth of a millimeter.
        let degrees = metric.system.to_degrees(metric.position(cell)).unwrap();
        let other = feet.system.to_degrees(feet.position(cell)).unwrap();
        assert!(
            (0..2).all(|axis| (degrees[axis] - other[axis]).abs() < 2e-9),
            "{degrees:?} {other:?}"
        );
    }
    assert!((feet.cell_m(0)[0] - 10.0).abs() < 1e-6);
}

/// Percents of each cell as `gdaldem slope -alg Horn -p` prints them.
fn percents(name: &str) -> Vec<Option<f64>> {
    let table = text(&format!("readers/heights/{name}_slope_percent.txt"));
    table.split_whitespace().map(|word| word.parse().ok()).collect()
}

/// A grid's cells as a plan's heights, sample by sample: rows from south to north, whole millimeters; 0 where a cell has
/// none.
fn topography(grid: &Grid) -> Topography {
    let [width_m, height_m] = grid.cell_m(0);
    assert_eq!(width_m, height_m);
    let rows = grid.values.chunks_exact(grid.columns).rev();
    let height_mm = |value: &f32| (f64::from(*value) * grid.height_unit_m * 1e3).round() as i32;
    Topography {
        south_west: PlanPoint::new(0, 0),
        spacing_mm: (width_m * 1e3).round() as u32,
        columns: grid.columns as u32,
        heights_mm: rows.flatten().map(height_mm).collect(),
        source: "made by a formula".to_owned(),
    }
}

#[test]
fn slopes_are_those_of_gdaldem_cell_by_cell() {
    for (name, given) in [("strips", (COLUMNS - 2) * (ROWS - 2)), ("hole", 0)] {
        let held = topography(&grid(&format!("{name}.tif"), Options::default()));
        let slopes = Slopes::of(&held);
        assert_eq!(slopes.columns, COLUMNS - 2);
        let expected = percents(name);
        assert_eq!(expected.len(), COLUMNS * ROWS);
        let mut count = 0;
        for (index, expected) in expected.iter().enumerate() {
            // Beside the hole a plan has a neighbor's heights, and no sample at the edge has a slope.
            let Some(percent) = expected else { continue };
            let (column, row) = (index % COLUMNS - 1, ROWS - 2 - index / COLUMNS);
            let found = f64::from(slopes.values[row * slopes.columns + column]) / 1e3;
            // Half a millimeter in each of the heights is at most a twenty thousandth of the ten meters, and half a
            // thousandth of a percent is rounded.
            assert!(
                (found - percent).abs() < 0.0056,
                "{name} {column} {row}: {found} is not {percent}"
            );
            count += 1;
        }
        assert!(count > 800 && (given == 0 || count == given), "{name}: {count}");
    }
}

#[test]
fn samples_between_centers_are_those_of_scipy() {
    let grid = grid("strips.tif", Options::default());
    let table = text("readers/heights/samples.csv");
    for line in table.lines().skip(1) {
        let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
        let found = grid.height_m([cells[0], cells[1]]).unwrap();
        assert!((found - cells[2]).abs() < 1e-4, "{line}: {found}");
        // There and back by degrees, as the page asks.
        let degrees = grid.system.to_degrees([cells[0], cells[1]]).unwrap();
        let again = grid.height_at_deg_m(degrees).unwrap();
        assert!((again - found).abs() < 1e-5);
    }
}

#[test]
fn closed_contours_are_as_long_as_gdals() {
    let held = topography(&grid("strips.tif", Options::default()));
    let field = Field::of(&held);
    let (_, levels) = levels(field.range().unwrap(), 5_000.0);
    let lines = field.lines(&levels);
    let table = text("readers/heights/closed_contours.csv");
    let mut count = 0;
    for row in table.lines().skip(1) {
        let (height, expected) = row.split_once(',').unwrap();
        let (height, expected): (f64, f64) = (height.parse().unwrap(), expected.parse().unwrap());
        let is_ring = |place: usize, is_closed: bool| is_closed && f64::from(levels[place]) == height * 1e3;
        let mut rings = lines
            .iter()
            .filter(|(place, (_, is_closed))| is_ring(*place, *is_closed));
        let (_, (ring, _)) = rings.next().unwrap_or_else(|| panic!("{height} m is not closed"));
        let ends = ring.iter().cycle().skip(1);
        let found: f64 = ring.iter().zip(ends).map(|(a, b)| (b.0 - a.0).hypot(b.1 - a.1)).sum();
        assert!(
            (found / expected - 1.0).abs() < 1e-4,
            "{height} m: {found} is not {expected}"
        );
        count += 1;
    }
    assert!(count > 5);
}

#[test]
fn a_box_keeps_a_window_of_the_grid() {
    let whole = grid("tiles_deflate.tif", Options::default());
    let corners = [[10.0, 20.0], [14.0, 16.0]].map(|cell| whole.system.to_degrees(whole.position(cell)).unwrap());
    let options = Options {
        box_deg: Some([corners[0][0], corners[0][1], corners[1][0], corners[1][1]]),
        margin_m: 0.0,
        ..Options::default()
    };
    for name in ["tiles_deflate.tif", "strips.tif"] {
        let part = grid(name, options.clone());
        assert!(part.columns < 12 && part.rows < 12, "{} {}", part.columns, part.rows);
        let asked = whole.position([12.3, 18.6]);
        assert_eq!(
            part.height_m(asked).map(|height| (height * 1e4).round()),
            whole.height_m(asked).map(|height| (height * 1e4).round())
        );
    }
}

#[test]
fn a_tiff_of_colors_is_a_picture_with_its_corners() {
    let base = read("readers/heights/picture.tif", Options::default());
    assert_eq!((base.format, base.grids.len()), (Format::GeoTiff, 0));
    assert_eq!(base.faults.len(), 1);
    assert_eq!(base.faults[0].what, What::NoHeights);
    let picture = &base.pictures[0];
    assert_eq!(picture.size, Some([40, 30]));
    let corners = picture.corners.unwrap();
    let system = hobnail_readers::system::System::from_epsg(26986).unwrap();
    let [x, y] = system.from_degrees(corners[0]).unwrap();
    assert!((x - 230_000.0).abs() < 1e-3 && (y - 900_000.0).abs() < 1e-3, "{x} {y}");
    let [x, y] = system.from_degrees(corners[2]).unwrap();
    assert!((x - 230_400.0).abs() < 1e-3 && (y - 899_700.0).abs() < 1e-3, "{x} {y}");
}

/// Case F-07 of the collected check cases: the header printed in "Esri ASCII raster format", read; and X-14, all on one
/// line and no word on cells without a value.
#[test]
fn an_ascii_grid_is_placed_by_its_corner_and_counted_not_lined() {
    let mut file = "ncols 480\nNROWS 450\nxllcorner 378923\nyllcorner 4072345\ncellsize 30\n".to_owned();
    file.push_str(&"7 -9999 ".repeat(480 * 450 / 2));
    let base = hobnail_readers::read("grid.asc", file.into_bytes(), in_system("EPSG:26918")).unwrap();
    let grid = &base.grids[0];
    assert_eq!(grid.first, [378_938.0, 4_085_830.0]);
    assert_eq!(grid.position([479.5, -0.5]), [393_323.0, 4_085_845.0]);
    assert_eq!((grid.value(0, 0), grid.value(1, 0)), (Some(7.0), None));
}

#[test]
fn an_hgt_file_lies_where_its_name_says() {
    let mut file = vec![0_u8; 1201 * 1201 * 2];
    // The second row's third sample.
    let place = (1201 + 2) * 2;
    file[place..place + 2].copy_from_slice(&250_i16.to_be_bytes());
    file[0..2].copy_from_slice(&i16::MIN.to_be_bytes());
    let base = hobnail_readers::read("N42W072.hgt", file.clone(), Options::default()).unwrap();
    let grid = &base.grids[0];
    assert_eq!(
        (grid.value(2, 1), grid.value(0, 0), grid.value(1, 0)),
        (Some(250.0), None, Some(0.0))
    );
    let step = 1.0 / 1200.0;
    let height = grid.height_at_deg_m([-72.0 + 2.0 * step, 43.0 - step]).unwrap();
    assert!((height - 250.0).abs() < 1e-6, "{height}");
    assert_eq!(
        refused("heights.hgt", &file, Options::default())[0].what,
        What::UnnamedCorner
    );
}

#[test]
fn grids_that_end_early_or_hold_words_say_so() {
    let short = b"ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 0.01\n1 2 3";
    let base = hobnail_readers::read("short.asc", short.to_vec(), Options::default()).unwrap();
    assert_eq!(base.faults[0].what, What::TooFewValues { expected: 4, found: 3 });
    let words = b"ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 0.01\n1 2 high 3";
    let faults = refused("words.asc", words, Options::default());
    assert_eq!(
        faults[0].what,
        What::NotANumber {
            value: "high".to_owned()
        }
    );
    let unplaced = b"ncols 2\nnrows 2\nxllcorner 900000\nyllcorner 0\ncellsize 10\n1 2 3 4";
    assert_eq!(
        refused("unplaced.asc", unplaced, Options::default())[0].what,
        What::NoPlace
    );
    let huge = b"ncols 100000000\nnrows 100000000\nxllcorner 0\nyllcorner 0\ncellsize 0.01\n1";
    assert!(matches!(
        refused("huge.asc", huge, in_system("EPSG:26986"))[0].what,
        What::TooMuch { .. }
    ));
    let broken = bytes("readers/heights/strips.tif");
    assert!(!refused("broken.tif", &broken[..300], Options::default()).is_empty());
}

#[test]
fn a_grid_of_no_system_is_laid_by_hand_and_said_to_be_so_where_none_was_chosen() {
    let text = "ncols 2\nnrows 3\nxllcorner 1000.5\nyllcorner 2000\ncellsize 20\n1 2 3 4 5 6";
    let read = |name: &str, bytes: Vec<u8>, system: Option<&str>| {
        let system = system.map(str::to_owned);
        let options = Options {
            system,
            box_deg: Some([10.0, 50.0, 11.0, 51.0]),
            ..Options::default()
        };
        hobnail_readers::read(name, bytes, options)
    };
    let refused = read("a.asc", text.as_bytes().to_vec(), None).unwrap_err();
    assert_eq!(refused, [What::NoPlace.at(Place::File)]);
    let zip = super::small::zipped(&[("a.asc", text.as_bytes())]);
    for (name, bytes) in [("a.asc", text.as_bytes().to_vec()), ("a.zip", zip)] {
        let base = read(name, bytes, Some("local")).unwrap();
        let zero = Coordinates::DrawingMillimeters {
            east: 1000.5,
            north: 2000.0,
            unit_m: 1.0,
        };
        assert_eq!(base.coordinates, zero);
        assert_eq!(base.faults, [What::NoUnit.at(Place::File)]);
        let said = about(&base.grids).unwrap();
        // Between the outermost centers, in millimeters from the southwestern corner.
        assert_eq!(said.bounds_deg, [10_000.0, 10_000.0, 30_000.0, 50_000.0]);
        assert_eq!((said.cell_m, said.lowest, said.highest), ([20.0, 20.0], 1.0, 6.0));
        let plan = System::plan([10.5, 50.5]).unwrap();
        let found = resampled(&base.grids, &plan, [0.0, 0.0, 40_000.0, 60_000.0], None);
        // A point every 20 m, of which one column and two rows lie between centers: 4 and 6, 3 and 5 and so on, each half.
        assert_eq!((found.south_west_mm, found.columns), ([20_000, 20_000], 1));
        assert_eq!(found.heights_mm, [4_500, 2_500]);
    }
}
