//! Small files of each format, good and bad.

use std::io::{Cursor, Write};

use hobnail_readers::base::{Coordinates, Format, Geometry, PlaceKind, Position, Suggestion};
use hobnail_readers::fault::{Fault, Place, What};
use hobnail_readers::options::Options;
use hobnail_readers::pieces::{BEHIND, Piece, Pieces};
use hobnail_readers::{Progress, Reader};

use super::{bytes, refused, text};

#[track_caller]
fn read(name: &str, text: &str, options: Options) -> hobnail_readers::base::Base {
    hobnail_readers::read(name, text.as_bytes().to_vec(), options).unwrap_or_else(|faults| panic!("{faults:?}"))
}

pub(super) fn zipped(files: &[(&str, &[u8])]) -> Vec<u8> {
    let mut writer = zip::ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in files {
        writer
            .start_file(*name, zip::write::SimpleFileOptions::default())
            .unwrap();
        writer.write_all(bytes).unwrap();
    }
    writer.finish().unwrap().into_inner()
}

#[test]
fn a_format_is_recognized_by_content_whatever_the_name() {
    for (name, format) in [
        ("readers/network/streets.osm.pbf", Format::OsmPbf),
        ("readers/network/streets.zip", Format::Shapefile),
        ("readers/heights/strips.tif", Format::GeoTiff),
        ("readers/heights/strips.asc", Format::AsciiGrid),
        ("readers/drawing/bends_and_blocks.dxf", Format::Dxf),
        ("streets/dr_helsinki/streets.geojson", Format::GeoJson),
        ("readers/systems/points.csv", Format::Csv),
    ] {
        assert_eq!(
            hobnail_readers::recognized("file.bin", &bytes(name)),
            Ok(format),
            "{name}"
        );
    }
    let what = |bytes: &[u8]| hobnail_readers::recognized("file", bytes);
    assert_eq!(what(b""), Err(What::Empty));
    assert_eq!(what(b"<html></html>"), Err(What::UnknownFormat));
    assert_eq!(what(b"\x7fELF\0\0\0"), Err(What::UnknownFormat));
    assert_eq!(what(b"\xef\xbb\xbf  {}"), Ok(Format::GeoJson));
    assert_eq!(what(b"10\n0\n0\n-10\n500000\n4000000\n"), Ok(Format::WorldFile));
    assert_eq!(what(b"999\na remark\n0\nSECTION\n"), Ok(Format::Dxf));
}

#[test]
fn rows_of_a_table_are_places_by_their_category() {
    let rows = "name,Type,lon,lat\nMill School,School,10,0\nMill Pond,pond,10.001,0\n";
    let base = read("t.csv", rows, Options::default());
    let features = &base.layers[0].features;
    let school = Suggestion::Place {
        place: PlaceKind::School,
    };
    assert_eq!(features[0].suggested, school);
    assert_eq!(features[1].suggested, Suggestion::Unknown);
    let pieces: Vec<Piece> = Pieces::new(base).collect();
    let kinds: Vec<&str> = pieces[0].words.split_terminator(BEHIND).collect();
    assert!(kinds[0].starts_with("Type=School\u{1f}\u{1f}name\u{1f}"), "{kinds:?}");
    assert!(kinds[1].starts_with("Type=pond\u{1f}\u{1f}name\u{1f}"), "{kinds:?}");

    // A column that names each row tells no kinds apart.
    let many = (0..150).map(|row| format!("{row},{row},0\n")).collect::<String>();
    let base = read("t.csv", &format!("class,lon,lat\n{many}"), Options::default());
    let words: String = Pieces::new(base).map(|piece| piece.words).collect();
    let told_apart = words
        .split_terminator(BEHIND)
        .filter(|row| row.starts_with("class="))
        .count();
    assert_eq!(told_apart, 100);
}

#[test]
fn tables_are_read_by_their_columns() {
    let rows = "name,Lon,LAT,shop\nBakery,24.94,60.17,bakery\n,24.95,x,\n\"A, B\",24.96,60.18,\n";
    let base = read("t.csv", rows, Options::default());
    let features = &base.layers[0].features;
    assert_eq!(features.len(), 2);
    assert_eq!(features[0].geometry, Geometry::Points(vec![[24.94, 60.17]]));
    assert_eq!(features[0].suggested, Suggestion::Place { place: PlaceKind::Shop });
    assert_eq!(features[1].tags[0].1, "A, B");
    let value = "x".to_owned();
    assert_eq!(base.faults, [What::NotANumber { value }.at(Place::Line(3))]);
    let decimal_commas = "x;y\n385000,5;6671000,25\n";
    let system = || Options {
        system: Some("EPSG:3067".to_owned()),
        ..Options::default()
    };
    let base = read("t.csv", decimal_commas, system());
    let Geometry::Points(points) = &base.layers[0].features[0].geometry else {
        panic!("points")
    };
    assert!(
        (points[0][0] - 24.93).abs() < 0.01 && (points[0][1] - 60.16).abs() < 0.02,
        "{points:?}"
    );
    assert_eq!(
        refused("t.csv", b"x;y\n1;2\n", Options::default())[0].what,
        What::NoPlace
    );
    assert_eq!(
        refused("t.csv", b"a;b\n1;2\n", Options::default())[0].what,
        What::NoCoordinates
    );
    let chosen = Options {
        columns: Some(["a".to_owned(), "b".to_owned()]),
        ..system()
    };
    assert_eq!(
        read("t.csv", "a;b\n385000;6671000\n", chosen).layers[0].features.len(),
        1
    );
    let well_known = read(
        "t.csv",
        "id,wkt\n1,POINT (24.9 60.1)\n2,\"LINESTRING (0 0, 1 1)\"\n",
        Options::default(),
    );
    assert_eq!(well_known.layers[0].features.len(), 1);
    assert!(matches!(&well_known.faults[0].what, What::NotRead { kind, .. } if kind == "LINESTRING"));
}

#[test]
fn geojson_names_its_faults_and_reads_on() {
    let text = r#"{"type":"FeatureCollection","features":[
        {"type":"Feature","properties":{"amenity":"school"},"geometry":{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]]]}},
        {"type":"Feature","properties":null,"geometry":{"type":"Point","coordinates":["a"]}},
        {"type":"Feature","properties":null,"geometry":{"type":"Point","coordinates":[500,0]}},
        {"type":"Feature","properties":{"n":1},"geometry":{"type":"GeometryCollection","geometries":[
            {"type":"Point","coordinates":[1,2,3]},{"type":"LineString","coordinates":[[0,0],[1,1]]}]}}
    ]}"#;
    let base = read("g", text, Options::default());
    assert_eq!(base.layers[0].features.len(), 3);
    assert_eq!(
        base.layers[0].features[0].geometry,
        Geometry::Areas(vec![vec![vec![[0.0, 0.0], [1.0, 0.0], [1.0, 1.0]]]])
    );
    assert_eq!(base.faults.len(), 2);
    assert_eq!(base.faults[1].what, What::OffEarth);
    let layer = "features".to_owned();
    assert_eq!(base.faults[1].place, Place::Record { layer, number: 3 });
    let projected = r#"{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::3857"}},
        "features":[{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[0,0]}}]}"#;
    let base = read("g", projected, Options::default());
    assert_eq!(base.layers[0].features[0].geometry, Geometry::Points(vec![[0.0, 0.0]]));
    let unknown = projected.replace("3857", "99999");
    assert!(matches!(
        refused("g", unknown.as_bytes(), Options::default())[0].what,
        What::UnknownSystem { .. }
    ));
    assert!(matches!(
        refused("g", b"{\"type\":", Options::default())[0].what,
        What::Broken { .. }
    ));
    let deep = format!("{{\"type\":\"Feature\",\"properties\":{}", "[".repeat(100_000));
    assert!(matches!(
        refused("g", deep.as_bytes(), Options::default())[0].what,
        What::Broken { .. }
    ));
}

#[test]
fn openstreetmap_areas_are_put_together_and_lacking_points_are_told() {
    let text = r#"<?xml version="1.0"?><osm version="0.6">
        <node id="1" lat="0" lon="0"/><node id="2" lat="0" lon="1"/><node id="3" lat="1" lon="1"/><node id="4" lat="1" lon="0"/>
        <node id="5" lat="0.2" lon="0.2"/><node id="6" lat="0.2" lon="0.4"/><node id="7" lat="0.4" lon="0.4"/>
        <node id="8" lat="0.5" lon="0.5"><tag k="highway" v="bus_stop"/><tag k="name" v="Mill &amp; Main"/></node>
        <node id="9" lat="9" lon="9" visible="false"/>
        <way id="1"><nd ref="1"/><nd ref="2"/><nd ref="3"/></way>
        <way id="2"><nd ref="1"/><nd ref="4"/><nd ref="3"/></way>
        <way id="3"><nd ref="5"/><nd ref="6"/><nd ref="7"/><nd ref="5"/></way>
        <way id="4"><nd ref="1"/><nd ref="99"/><nd ref="2"/><nd ref="3"/><tag k="highway" v="residential"/></way>
        <way id="5"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="1"/><tag k="leisure" v="park"/></way>
        <relation id="1"><member type="way" ref="1" role="outer"/><member type="way" ref="2" role="outer"/>
            <member type="way" ref="3" role="inner"/><tag k="type" v="multipolygon"/><tag k="natural" v="water"/></relation>
        <relation id="2"><member type="way" ref="1" role="outer"/><tag k="type" v="multipolygon"/><tag k="natural" v="wetland"/></relation>
        </osm>"#;
    let base = read("a.osm", text, Options::default());
    let layer = |name: &str| base.layers.iter().find(|layer| layer.name == name).unwrap();
    let water = &layer("constraints").features[0];
    assert_eq!(
        water.geometry,
        Geometry::Areas(vec![vec![
            vec![[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]],
            vec![[0.2, 0.2], [0.4, 0.2], [0.4, 0.4]]
        ]])
    );
    let places = &layer("places").features;
    assert_eq!(places[0].tags[1].1, "Mill & Main");
    assert_eq!(places[1].suggested, Suggestion::Place { place: PlaceKind::Park });
    assert!(matches!(&places[1].geometry, Geometry::Areas(areas) if areas[0][0].len() == 3));
    let street = &layer("streets").features[0];
    assert_eq!(street.geometry, Geometry::Lines(vec![vec![[1.0, 0.0], [1.0, 1.0]]]));
    let named = |name: &str| Place::Named(name.to_owned());
    assert_eq!(
        base.faults,
        [
            What::OpenRing.at(named("relation 2")),
            What::MissingPoints { count: 1 }.at(named("way 4"))
        ]
    );
    let broken = text.replace("lat=\"0.5\"", "lat=\"north\"");
    let value = "north".to_owned();
    assert_eq!(
        refused("a.osm", broken.as_bytes(), Options::default())[0].what,
        What::NotANumber { value }
    );
}

#[test]
fn shapefiles_without_their_companions_say_what_is_missing() {
    let whole = bytes("readers/network/streets.zip");
    let mut archive = zip::ZipArchive::new(Cursor::new(whole)).unwrap();
    let mut file = |name: &str| {
        let mut bytes = Vec::new();
        std::io::Read::read_to_end(&mut archive.by_name(name).unwrap(), &mut bytes).unwrap();
        bytes
    };
    let (shapes, system) = (file("streets.shp"), file("streets.prj"));
    let alone = zipped(&[("streets.shp", &shapes)]);
    assert_eq!(refused("a.zip", &alone, Options::default())[0].what, What::NoPlace);
    let without_table = zipped(&[("in/Streets.SHP", &shapes), ("in/Streets.PRJ", &system)]);
    let base = hobnail_readers::read("a.zip", without_table, Options::default()).unwrap();
    assert_eq!(base.layers[0].features.len(), 699);
    let name = "Streets.dbf".to_owned();
    assert_eq!(base.faults[0].what, What::Missing { name });
    let cut = zipped(&[("streets.shp", &shapes[..5_000]), ("streets.prj", &system)]);
    let base = hobnail_readers::read("a.zip", cut, Options::default()).unwrap();
    assert!(base.layers[0].features.len() > 10);
    assert!(matches!(base.faults.last().unwrap().what, What::Broken { .. }));
}

#[test]
fn a_shape_that_announces_more_than_it_has_room_for_ends_the_layer() {
    let file = |archive: &[u8], name: &str| {
        let mut archive = zip::ZipArchive::new(Cursor::new(archive)).unwrap();
        let mut bytes = Vec::new();
        std::io::Read::read_to_end(&mut archive.by_name(name).unwrap(), &mut bytes).unwrap();
        bytes
    };
    let whole = bytes("readers/small/lots.zip");
    let system = file(&whole, "lots.prj");
    let mut shapes = file(&whole, "lots.shp");
    let good = zipped(&[
        ("lots.shp", &shapes),
        ("lots.prj", &system),
        ("lots.dbf", &file(&whole, "lots.dbf")),
    ]);
    let base = hobnail_readers::read("a.zip", good, Options::default()).unwrap();
    let [first, second] = base.layers[0].features.as_slice() else {
        panic!("{base:?}")
    };
    let count = |geometry: &Geometry| match geometry {
        Geometry::Areas(areas) => areas.iter().map(Vec::len).collect::<Vec<_>>(),
        other => panic!("{other:?}"),
    };
    // One lot with a hole, one of two pieces; text of code page 1252.
    assert_eq!((count(&first.geometry), count(&second.geometry)), (vec![2], vec![1, 1]));
    assert_eq!(first.tags[0], ("owner".to_owned(), "Café".to_owned()));
    assert_eq!(base.faults, []);
    // The second record's number of points.
    let second = 100 + 8 + 2 * u32::from_be_bytes(shapes[104..108].try_into().unwrap()) as usize;
    shapes[second + 48..second + 52].copy_from_slice(&0x0fff_ffff_u32.to_le_bytes());
    let cut = zipped(&[("lots.shp", &shapes), ("lots.prj", &system)]);
    let base = hobnail_readers::read("a.zip", cut, Options::default()).unwrap();
    assert_eq!(base.layers[0].features.len(), 1);
    assert!(matches!(base.faults.last().unwrap().what, What::Broken { .. }));
}

#[test]
fn a_zip_of_another_format_is_read_and_pictures_are_placed() {
    let table = zipped(&[("readme", b"nothing"), ("points.csv", b"lon,lat\n1,2\n")]);
    let base = hobnail_readers::read("a.zip", table, Options::default()).unwrap();
    assert_eq!((base.format, base.layers[0].features.len()), (Format::Csv, 1));
    let world = b"0.00001\n0\n0\n-0.00001\n-71.1\n42.3\n";
    let picture = zipped(&[("map.jpg", b"\xff\xd8\xff"), ("map.jgw", world)]);
    let base = hobnail_readers::read("a.zip", picture, Options::default());
    let faults: Vec<What> = base.unwrap_err().into_iter().map(|fault| fault.what).collect();
    assert_eq!(faults[..2], [What::PictureApart, What::NoSystem]);
    let options = Options {
        system: Some("EPSG:4326".to_owned()),
        ..Options::default()
    };
    let picture = zipped(&[("map.jpg", b"\xff\xd8\xff"), ("map.jgw", world)]);
    let base = hobnail_readers::read("a.zip", picture, options).unwrap();
    assert_eq!(base.pictures[0].name, "map");
    let corners = base.pictures[0].world.corners([100, 50]);
    assert!((corners[2][0] - (-71.1 + 0.000_995)).abs() < 1e-9 && (corners[2][1] - (42.3 - 0.000_495)).abs() < 1e-9);
    let alone = hobnail_readers::read("map.jgw", world.to_vec(), Options::default());
    assert_eq!(alone.unwrap_err()[0].what, What::PictureApart);
}

/// What is read of a world file of a picture of 200 by 100 pixels, with a system beside it and one that was typed.
fn placed(world: &str, beside: Option<&str>, typed: Option<&str>) -> Result<[Position; 4], What> {
    let options = Options {
        system: typed.map(str::to_owned),
        picture_px: Some([200, 100]),
        ..Options::default()
    };
    let faulty = |faults: Vec<Fault>| faults[0].what.clone();
    let mut reader = Reader::new("map.jgw", world.as_bytes().to_vec(), options).map_err(faulty)?;
    if let Some(beside) = beside {
        reader.add_beside("MAP.PRJ", text(beside).into_bytes());
    }
    while reader.step() != Progress::Done {}
    let base = reader.finish().map_err(faulty)?;
    assert_eq!(
        (base.format, base.coordinates),
        (Format::WorldFile, Coordinates::Degrees)
    );
    Ok(base.pictures[0].corners.unwrap())
}

#[test]
fn a_world_file_places_its_picture_turned_or_sheared_in_any_system() {
    let near = |found: [Position; 4], expected: [Position; 4], most: f64| {
        for (found, expected) in found.iter().flatten().zip(expected.iter().flatten()) {
            assert!((found - expected).abs() < most, "{found} is not {expected}");
        }
    };
    // Centers of pixels: the outer corners lie half a pixel beyond.
    let plain = placed("0.00001\n0\n0\n-0.00001\n-71.1\n42.3\n", None, None).unwrap();
    let (west, north) = (-71.100_005, 42.300_005);
    let (east, south) = (west + 0.002, north - 0.001);
    near(
        plain,
        [[west, north], [east, north], [east, south], [west, south]],
        1e-9,
    );
    // A quarter turn: columns run north, rows run east.
    let turned = placed("0\n0.00001\n0.00001\n0\n10\n50\n", None, None).unwrap();
    let (west, south) = (9.999_995, 49.999_995);
    let (east, north) = (west + 0.001, south + 0.002);
    near(
        turned,
        [[west, south], [west, north], [east, north], [east, south]],
        1e-9,
    );

    // About the middle of zone 18 north, where a meter east is 1/111,320 of a degree (WGS84, at the equator: radius
    // 6,378,137 m, scale 0.9996), by hand.
    let utm = "10\n0\n0\n-10\n499005\n495\n";
    assert_eq!(placed(utm, None, None).unwrap_err(), What::NoSystem);
    let by_prj = placed(utm, Some("readers/small/utm.prj"), None).unwrap();
    let degrees = |m: f64| (m / 0.9996 / 6_378_137.0).to_degrees();
    let [west, east] = [-75.0 - degrees(1000.0), -75.0 + degrees(1000.0)];
    assert!(
        (by_prj[0][0] - west).abs() < 1e-8 && (by_prj[2][0] - east).abs() < 1e-8,
        "{by_prj:?}"
    );
    assert!(by_prj[0][1] > 0.004 && by_prj[2][1] < -0.004, "{by_prj:?}");
    near(placed(utm, None, Some("EPSG:32618")).unwrap(), by_prj, 1e-9);
    // Small numbers of a site's own grid are no degrees: 200 pixels of 5 cm are 10 units.
    assert_eq!(
        placed("0.05\n0\n0\n-0.05\n100\n50\n", None, None).unwrap_err(),
        What::NoSystem
    );
    let nowhere = placed("1\n0\n0\n-1\n500\n500\n", None, Some("EPSG:4326"));
    assert_eq!(nowhere.unwrap_err(), What::OffEarth);
}

#[test]
fn what_expands_without_end_is_stopped() {
    // Half a gigabyte of blanks and more is half a megabyte of gzip.
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::fast());
    let blanks = vec![b' '; 1 << 20];
    for _ in 0..513 {
        encoder.write_all(&blanks).unwrap();
    }
    let bomb = encoder.finish().unwrap();
    assert!(matches!(
        refused("a.osm.gz", &bomb, Options::default())[0].what,
        What::TooMuch { .. }
    ));
}

#[test]
fn blocks_within_themselves_end() {
    let mut text = "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\na\n".to_owned();
    text.push_str(&"0\nINSERT\n2\na\n70\n1000\n71\n1000\n".repeat(50));
    text.push_str("0\nLINE\n10\n0\n20\n0\n11\n1\n21\n1\n0\nENDBLK\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nINSERT\n2\na\n0\nENDSEC\n0\nEOF\n");
    let faults = refused("a.dxf", text.as_bytes(), Options::default());
    assert!(
        faults.iter().any(|fault| matches!(fault.what, What::TooMuch { .. })),
        "{faults:?}"
    );
    let one = text.replace(&"0\nINSERT\n2\na\n70\n1000\n71\n1000\n".repeat(50), "0\nINSERT\n2\na\n");
    let base = read("a.dxf", &one, Options::default());
    assert_eq!(base.layers[0].features.len(), 8);
    let is_deep = |what: &What| matches!(what, What::TooDeep { name } if name == "a");
    assert!(
        base.faults.iter().any(|fault| is_deep(&fault.what)),
        "{:?}",
        base.faults
    );
}

#[test]
fn a_shapefile_is_read_with_what_lies_beside_it_as_from_a_zip() {
    let zipped = bytes("readers/small/lots.zip");
    let mut archive = zip::ZipArchive::new(Cursor::new(&zipped)).unwrap();
    let mut files = Vec::new();
    for place in 0..archive.len() {
        let mut file = archive.by_index(place).unwrap();
        let mut held = Vec::new();
        std::io::copy(&mut file, &mut held).unwrap();
        files.push((file.name().unwrap().to_ascii_uppercase(), held));
    }
    let leads = files.iter().position(|(name, _)| name.ends_with(".SHP")).unwrap();
    let (name, shapes) = files.swap_remove(leads);
    let of_zip = hobnail_readers::read("lots.zip", zipped, Options::default()).unwrap();
    let begin = || Reader::new(&name, shapes.clone(), Options::default()).unwrap();

    let mut reader = begin();
    for (name, bytes) in files {
        reader.add_beside(&name, bytes);
    }
    while reader.step() != Progress::Done {}
    let base = reader.finish().unwrap();
    assert_eq!(base.layers[0].features, of_zip.layers[0].features);
    assert_eq!((base.system, base.faults), (of_zip.system, of_zip.faults));

    // Alone it does not say where it lies.
    let mut alone = begin();
    while alone.step() != Progress::Done {}
    let faults = alone.finish().unwrap_err();
    assert_eq!(faults[0].what, What::NoPlace);
}

#[test]
fn what_has_no_place_on_earth_is_read_as_a_drawing_where_that_is_chosen() {
    let local = |unit_m| Options {
        system: Some(" Local".to_owned()),
        unit_m,
        box_deg: Some([0.0, 0.0, 1.0, 1.0]),
        ..Options::default()
    };
    let rows = "x,y\n5000.25,9000\n5010.25,8990\n";
    let base = read("survey.csv", rows, local(None));
    let drawing = |unit_m| Coordinates::DrawingMillimeters {
        east: 5000.0,
        north: 9000.0,
        unit_m,
    };
    assert_eq!((base.coordinates, base.system.as_str()), (drawing(1.0), ""));
    assert_eq!(base.faults, [What::NoUnit.at(Place::File)]);
    let points = |base: &hobnail_readers::base::Base| -> Vec<Position> {
        let features = base.layers[0].features.iter();
        let points = features.map(|feature| match &feature.geometry {
            Geometry::Points(points) => points[0],
            other => panic!("{other:?}"),
        });
        points.collect()
    };
    assert_eq!(points(&base), [[250.0, 0.0], [10_250.0, -10_000.0]]);
    let in_feet = read("survey.csv", rows, local(Some(0.3048)));
    assert_eq!((in_feet.coordinates, in_feet.faults.len()), (drawing(0.3048), 0));
    assert_eq!(points(&in_feet), [[76.0, 0.0], [3_124.0, -3_048.0]]);

    let shape = |x: f64| format!(r#"{{"type":"Point","coordinates":[{x},9000]}}"#);
    let feature = |x: f64| format!(r#"{{"type":"Feature","properties":{{}},"geometry":{}}}"#, shape(x));
    let file = format!(
        r#"{{"type":"FeatureCollection","features":[{},{}]}}"#,
        feature(5000.0),
        feature(5003.0)
    );
    assert_eq!(
        points(&read("a.geojson", &file, local(None))),
        [[0.0, 0.0], [3_000.0, 0.0]]
    );
}
