//! Made-up extracts of some size: the same towns in three formats, the same on every machine.
//!
//! A town is cells of some 100 m: a street, six buildings, and in every other cell a shop. Numbers of nodes and places
//! are what they are in extracts of OpenStreetMap, nodes before ways.

mod pbf;

use std::fmt::Write as _;

pub use pbf::pbf;

/// West, south, east and north of a part of every extract.
pub const TOWN_DEG: [f64; 4] = [10.0, 0.0, 10.03, 0.03];

/// Cells in a row.
const ROW: usize = 400;

/// Ten-millionths of a degree from a cell to the next.
const CELL: i64 = 10_000;

/// Nodes of a cell: of its street, of its buildings, and its shop.
const STREET_NODES: usize = 5;
const BUILDINGS: usize = 6;
const CORNERS: usize = 4;
const NODES: usize = STREET_NODES + BUILDINGS * CORNERS + 1;

/// Numbers of a way's nodes, and its tags.
type Way = (Vec<i64>, Vec<(&'static str, String)>);

/// A cell of a town.
struct Cell {
    /// The number of its first node.
    first: i64,
    /// Longitudes and latitudes of its nodes, in ten-millionths of a degree.
    nodes: [[i64; 2]; NODES],
    number: usize,
}

/// The splitmix64 generator.
/// Source: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
fn random(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
    let z = (*state ^ (*state >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

impl Cell {
    fn new(number: usize) -> Self {
        let mut state = number as u64;
        let mut within = |most: i64| (random(&mut state) % most as u64) as i64;
        let corner = [100_000_000 + (number % ROW) as i64 * CELL, (number / ROW) as i64 * CELL];
        let mut nodes = [corner; NODES];
        for (place, node) in nodes.iter_mut().enumerate() {
            let [east, north] = if place < STREET_NODES {
                [place as i64 * CELL / 5 + within(300), within(300)]
            } else {
                let building = (place - STREET_NODES) / CORNERS;
                let (x, y) = [(0, 0), (1, 0), (1, 1), (0, 1)][(place - STREET_NODES) % CORNERS];
                let from = [building as i64 % 3 * 3_000 + 500, building as i64 / 3 * 4_000 + 1_500];
                [from[0] + x * (1_000 + within(500)), from[1] + y * (900 + within(500))]
            };
            *node = [node[0] + east, node[1] + north];
        }
        Self {
            first: (number * NODES) as i64 + 1,
            nodes,
            number,
        }
    }

    /// Its ways: numbers of nodes, tags.
    fn ways(&self) -> Vec<Way> {
        let kind = ["residential", "service", "footway", "tertiary"][self.number % 4];
        let street = (0..STREET_NODES as i64).map(|place| self.first + place).collect();
        let name = format!("Street {}", self.number % 5_000);
        let mut ways = vec![(street, vec![("highway", kind.to_owned()), ("name", name)])];
        for building in 0..BUILDINGS {
            let from = self.first + (STREET_NODES + building * CORNERS) as i64;
            let around = [0, 1, 2, 3, 0].map(|corner| from + corner).to_vec();
            ways.push((around, vec![("building", "house".to_owned())]));
        }
        ways
    }

    fn shop(&self) -> Option<(i64, [i64; 2])> {
        let place = NODES - 1;
        self.number
            .is_multiple_of(2)
            .then_some((self.first + place as i64, self.nodes[place]))
    }

    /// A node's place in degrees, from its number.
    fn place(&self, node: i64) -> [f64; 2] {
        self.nodes[(node - self.first) as usize].map(|place| place as f64 / 1e7)
    }
}

/// Cells that fill so many bytes, by what some of them take.
fn cells(bytes: usize, length: impl Fn(usize) -> usize) -> usize {
    const SAMPLE: usize = 2_000;
    (bytes * SAMPLE / length(SAMPLE)).max(1)
}

/// OpenStreetMap XML of about so many bytes.
pub fn xml(bytes: usize) -> Vec<u8> {
    let made = |count: usize| {
        let mut text = String::from("<?xml version='1.0' encoding='UTF-8'?>\n<osm version=\"0.6\">\n");
        for cell in (0..count).map(Cell::new) {
            for (node, [longitude, latitude]) in
                (cell.first..).zip(cell.nodes.map(|place| place.map(|at| at as f64 / 1e7)))
            {
                let shop = cell.shop().is_some_and(|(shop, _)| shop == node);
                let end = if shop {
                    ">\n    <tag k=\"shop\" v=\"bakery\"/>\n  </node>"
                } else {
                    "/>"
                };
                let said = writeln!(
                    text,
                    "  <node id=\"{node}\" version=\"1\" timestamp=\"2026-01-01T00:00:00Z\" lat=\"{latitude:.7}\" lon=\"{longitude:.7}\"{end}"
                );
                said.expect("a string can always be written to");
            }
        }
        let mut id = 0;
        for cell in (0..count).map(Cell::new) {
            for (nodes, tags) in cell.ways() {
                id += 1;
                let mut way = format!("  <way id=\"{id}\" version=\"1\" timestamp=\"2026-01-01T00:00:00Z\">\n");
                for node in nodes {
                    way += &format!("    <nd ref=\"{node}\"/>\n");
                }
                for (key, value) in tags {
                    way += &format!("    <tag k=\"{key}\" v=\"{value}\"/>\n");
                }
                text += &way;
                text += "  </way>\n";
            }
        }
        text += "</osm>\n";
        text.into_bytes()
    };
    made(cells(bytes, |count| made(count).len()))
}

/// GeoJSON of about so many bytes.
pub fn geojson(bytes: usize) -> Vec<u8> {
    let made = |count: usize| {
        let mut text = String::from("{ \"type\": \"FeatureCollection\", \"features\": [\n");
        for cell in (0..count).map(Cell::new) {
            for (nodes, tags) in cell.ways() {
                let points: Vec<String> = nodes
                    .iter()
                    .map(|node| {
                        let [longitude, latitude] = cell.place(*node);
                        format!("[{longitude:.7}, {latitude:.7}]")
                    })
                    .collect();
                let tags: Vec<String> = tags
                    .iter()
                    .map(|(key, value)| format!("\"{key}\": \"{value}\""))
                    .collect();
                let (kind, open, close) = if nodes.first() == nodes.last() {
                    ("Polygon", "[[", "]]")
                } else {
                    ("LineString", "[", "]")
                };
                let comma = if text.ends_with("}\n") { "," } else { "" };
                text += &format!(
                    "{comma}{{ \"type\": \"Feature\", \"properties\": {{ {} }}, \"geometry\": {{ \"type\": \"{kind}\", \"coordinates\": {open}{}{close} }} }}\n",
                    tags.join(", "),
                    points.join(", ")
                );
            }
        }
        text += "] }\n";
        text.into_bytes()
    };
    made(cells(bytes, |count| made(count).len()))
}
