//! Extracts in OpenStreetMap's binary format, written by hand (OpenStreetMap wiki, "PBF Format", from memory).

use std::io::Write;

use flate2::Compression;
use flate2::write::ZlibEncoder;

use super::{Cell, cells};

/// Nodes or ways in a block.
const IN_BLOCK: usize = 8_000;

/// A message as it grows.
#[derive(Default)]
struct Message(Vec<u8>);

impl Message {
    fn number(&mut self, mut value: u64) {
        while value > 127 {
            self.0.push(value as u8 | 128);
            value >>= 7;
        }
        self.0.push(value as u8);
    }

    fn whole(&mut self, field: u64, value: u64) {
        self.number(field << 3);
        self.number(value);
    }

    fn bytes(&mut self, field: u64, bytes: &[u8]) {
        self.number(field << 3 | 2);
        self.number(bytes.len() as u64);
        self.0.extend(bytes);
    }

    /// Numbers one behind the other, each as what it differs from the one before.
    fn steps(&mut self, field: u64, values: impl Iterator<Item = i64>) {
        let (mut inner, mut before) = (Self::default(), 0);
        for value in values {
            let step = value - before;
            inner.number(((step << 1) ^ (step >> 63)) as u64);
            before = value;
        }
        self.bytes(field, &inner.0);
    }

    fn numbers(&mut self, field: u64, values: impl Iterator<Item = u64>) {
        let mut inner = Self::default();
        values.for_each(|value| inner.number(value));
        self.bytes(field, &inner.0);
    }
}

/// A block with its head.
fn add_blob(file: &mut Vec<u8>, kind: &str, block: &[u8]) {
    let mut encoder = ZlibEncoder::new(Vec::new(), Compression::fast());
    encoder.write_all(block).expect("memory can be written");
    let mut blob = Message::default();
    blob.whole(2, block.len() as u64);
    blob.bytes(3, &encoder.finish().expect("memory can be written"));
    let mut head = Message::default();
    head.bytes(1, kind.as_bytes());
    head.whole(3, blob.0.len() as u64);
    file.extend((head.0.len() as u32).to_be_bytes());
    file.extend(head.0);
    file.extend(blob.0);
}

/// Texts of a block; the first is none.
struct Texts(Vec<String>);

impl Texts {
    fn place_of(&mut self, text: &str) -> u64 {
        let found = self.0.iter().rposition(|held| held == text);
        found.unwrap_or_else(|| {
            self.0.push(text.to_owned());
            self.0.len() - 1
        }) as u64
    }

    fn block(&self, group: &Message) -> Vec<u8> {
        let mut texts = Message::default();
        for text in &self.0 {
            texts.bytes(1, text.as_bytes());
        }
        let mut block = Message::default();
        block.bytes(1, &texts.0);
        block.bytes(2, &group.0);
        block.0
    }
}

/// PBF of about so many bytes.
pub fn pbf(bytes: usize) -> Vec<u8> {
    made(cells(bytes, |count| made(count).len()))
}

fn made(count: usize) -> Vec<u8> {
    let mut file = Vec::new();
    let mut head = Message::default();
    for feature in ["OsmSchema-V0.6", "DenseNodes"] {
        head.bytes(4, feature.as_bytes());
    }
    add_blob(&mut file, "OSMHeader", &head.0);
    let each_block = IN_BLOCK / super::NODES;
    for from in (0..count).step_by(each_block) {
        let cells: Vec<Cell> = (from..count.min(from + each_block)).map(Cell::new).collect();
        let mut texts = Texts(vec![String::new()]);
        let shop = [texts.place_of("shop"), texts.place_of("bakery")];
        let nodes = || cells.iter().flat_map(|cell| (cell.first..).zip(cell.nodes));
        let mut dense = Message::default();
        dense.steps(1, nodes().map(|(id, _)| id));
        dense.steps(8, nodes().map(|(_, [_, latitude])| latitude));
        dense.steps(9, nodes().map(|(_, [longitude, _])| longitude));
        let of_cell = |cell: &Cell| {
            let mut tags = vec![0; super::NODES - 1];
            tags.extend(cell.shop().map_or(Vec::new(), |_| shop.to_vec()));
            tags.push(0);
            tags
        };
        dense.numbers(10, cells.iter().flat_map(of_cell));
        let mut group = Message::default();
        group.bytes(2, &dense.0);
        add_blob(&mut file, "OSMData", &texts.block(&group));
    }
    let mut id = 0;
    let each_block = IN_BLOCK / (super::BUILDINGS + 1);
    for from in (0..count).step_by(each_block) {
        let mut texts = Texts(vec![String::new()]);
        let mut group = Message::default();
        for cell in (from..count.min(from + each_block)).map(Cell::new) {
            for (nodes, tags) in cell.ways() {
                id += 1;
                let tags: Vec<[u64; 2]> = tags
                    .iter()
                    .map(|(key, value)| [texts.place_of(key), texts.place_of(value)])
                    .collect();
                let mut way = Message::default();
                way.whole(1, id);
                way.numbers(2, tags.iter().map(|[key, _]| *key));
                way.numbers(3, tags.iter().map(|[_, value]| *value));
                way.steps(8, nodes.into_iter());
                group.bytes(3, &way.0);
            }
        }
        add_blob(&mut file, "OSMData", &texts.block(&group));
    }
    file
}
