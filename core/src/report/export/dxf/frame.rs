//! The sections around the entities that a file of this version has: header, tables, blocks, objects.

use super::writer::{MODEL, SHEET, Writer, layer_name};
use crate::report::export::sheet::LAYERS;

/// Names of what a table's entries are, by table, in the order of the file, each with its handle.
const TABLES: [(&str, &str); 9] = [
    ("VPORT", "8"),
    ("LTYPE", "5"),
    ("LAYER", "2"),
    ("STYLE", "3"),
    ("VIEW", "6"),
    ("UCS", "7"),
    ("APPID", "9"),
    ("DIMSTYLE", "A"),
    ("BLOCK_RECORD", "1"),
];

/// Handle of the paper's space, which is empty.
const PAPER: &str = "1B";

/// The whole file around these entities, in units of a code, of a drawing within bounds in meters.
pub(super) fn around(entities: Writer, unit: u32, unit_m: f64, bounds: [(f64, f64); 2]) -> String {
    let handle = entities.handle;
    let mut out = Writer::new(unit_m);
    header(&mut out, handle, unit, bounds.map(|(x, y)| (x / unit_m, y / unit_m)));
    section(&mut out, "CLASSES");
    out.pair(0, "ENDSEC");
    tables(&mut out, unit_m, bounds.map(|(x, y)| (x / unit_m, y / unit_m)));
    blocks(&mut out);
    section(&mut out, "ENTITIES");
    out.text.push_str(&entities.text);
    out.pair(0, "ENDSEC");
    section(&mut out, "OBJECTS");
    pairs(
        &mut out,
        "0 DICTIONARY|5 C|330 0|100 AcDbDictionary|281 1|3 ACAD_GROUP|350 D|0 DICTIONARY|5 D|330 C|100 AcDbDictionary|281 1|0 ENDSEC|0 EOF",
    );
    out.text
}

/// Several pairs, parted by bars.
fn pairs(out: &mut Writer, list: &str) {
    for pair in list.split('|') {
        let (code, value) = pair.split_once(' ').unwrap_or((pair, ""));
        out.text.extend([code, "\n", value, "\n"]);
    }
}

fn section(out: &mut Writer, name: &str) {
    out.pair(0, "SECTION");
    out.pair(2, name);
}

fn header(out: &mut Writer, next_handle: u32, unit: u32, [(west, south), (east, north)]: [(f64, f64); 2]) {
    section(out, "HEADER");
    pairs(out, "9 $ACADVER|1 AC1015|9 $DWGCODEPAGE|3 ANSI_1252|9 $HANDSEED");
    out.pair(5, &format!("{next_handle:X}"));
    out.pair(9, "$INSUNITS");
    out.pair(70, &unit.to_string());
    // Metric or English hatchings and line types; lengths as decimals with four places.
    out.pair(9, "$MEASUREMENT");
    out.pair(70, if unit == 6 { "1" } else { "0" });
    pairs(out, "9 $LUNITS|70 2|9 $LUPREC|70 4");
    for (name, x, y) in [("$EXTMIN", west, south), ("$EXTMAX", east, north)] {
        out.pair(9, name);
        out.pair(10, &decimal(x));
        out.pair(20, &decimal(y));
        out.pair(30, "0.0");
    }
    out.pair(0, "ENDSEC");
}

fn tables(out: &mut Writer, unit_m: f64, bounds: [(f64, f64); 2]) {
    section(out, "TABLES");
    for (name, handle) in TABLES {
        out.pair(0, "TABLE");
        out.pair(2, name);
        out.pair(5, handle);
        pairs(out, "330 0|100 AcDbSymbolTable");
        let entries = match name {
            "VPORT" | "STYLE" | "APPID" | "DIMSTYLE" => 1,
            "LTYPE" => 4,
            "LAYER" => LAYERS.len() + 2,
            "BLOCK_RECORD" => 2,
            _ => 0,
        };
        out.pair(70, &entries.to_string());
        match name {
            "VPORT" => viewport(out, bounds),
            "LTYPE" => line_types(out, unit_m),
            "LAYER" => layers(out),
            "STYLE" => {
                entry(out, "STYLE", "11", "3", "AcDbTextStyleTableRecord", "Standard");
                pairs(out, "70 0|40 0.0|41 1.0|50 0.0|71 0|42 2.5|3 arial.ttf|4 ");
            }
            "APPID" => {
                entry(out, "APPID", "12", "9", "AcDbRegAppTableRecord", "ACAD");
                out.pair(70, "0");
            }
            "DIMSTYLE" => {
                pairs(
                    out,
                    "100 AcDbDimStyleTable|71 1|0 DIMSTYLE|105 27|330 A|100 AcDbSymbolTableRecord",
                );
                pairs(out, "100 AcDbDimStyleTableRecord|2 Standard|70 0");
            }
            "BLOCK_RECORD" => {
                for (handle, name) in [(MODEL, "*Model_Space"), (PAPER, "*Paper_Space")] {
                    entry(out, "BLOCK_RECORD", handle, "1", "AcDbBlockTableRecord", name);
                }
            }
            _ => {}
        }
        out.pair(0, "ENDTAB");
    }
    out.pair(0, "ENDSEC");
}

/// The beginning of a table's entry.
fn entry(out: &mut Writer, kind: &str, handle: &str, owner: &str, class: &str, name: &str) {
    out.pair(0, kind);
    out.pair(5, handle);
    out.pair(330, owner);
    out.pair(100, "AcDbSymbolTableRecord");
    out.pair(100, class);
    out.pair(2, name);
}

/// The view the file opens with: all of the drawing.
fn viewport(out: &mut Writer, [(west, south), (east, north)]: [(f64, f64); 2]) {
    entry(out, "VPORT", "10", "8", "AcDbViewportTableRecord", "*ACTIVE");
    pairs(out, "70 0|10 0.0|20 0.0|11 1.0|21 1.0");
    out.pair(12, &decimal(f64::midpoint(west, east)));
    out.pair(22, &decimal(f64::midpoint(south, north)));
    pairs(
        out,
        "13 0.0|23 0.0|14 10.0|24 10.0|15 10.0|25 10.0|16 0.0|26 0.0|36 1.0|17 0.0|27 0.0|37 0.0",
    );
    out.pair(40, &decimal((north - south).max((east - west) / 1.5) * 1.1));
    pairs(
        out,
        "41 1.5|42 50.0|43 0.0|44 0.0|50 0.0|51 0.0|71 0|72 100|73 1|74 3|75 0|76 0|77 0|78 0",
    );
}

fn line_types(out: &mut Writer, unit_m: f64) {
    for (handle, name) in [("14", "ByBlock"), ("15", "ByLayer"), ("16", "Continuous")] {
        entry(out, "LTYPE", handle, "5", "AcDbLinetypeTableRecord", name);
        pairs(out, "70 0|3 |72 65|73 0|40 0.0");
    }
    entry(out, "LTYPE", "17", "5", "AcDbLinetypeTableRecord", "DASHED");
    pairs(out, "70 0|3 |72 65|73 2");
    let (dash, gap) = (3.0 / unit_m, 1.5 / unit_m);
    out.pair(40, &decimal(dash + gap));
    out.pair(49, &decimal(dash));
    out.pair(74, "0");
    out.pair(49, &decimal(-gap));
    out.pair(74, "0");
}

fn layers(out: &mut Writer) {
    let held = LAYERS
        .iter()
        .map(|held| (held.id, held.color, held.weight, held.is_dashed));
    let all = [("0", 7, 25, false)]
        .into_iter()
        .chain(held)
        .chain([(SHEET, 7, 18, false)]);
    for (place, (id, color, weight, is_dashed)) in (0x40_u32..).zip(all) {
        entry(
            out,
            "LAYER",
            &format!("{place:X}"),
            "2",
            "AcDbLayerTableRecord",
            &layer_name(id),
        );
        out.pair(70, "0");
        out.pair(62, &color.to_string());
        out.pair(6, if is_dashed { "DASHED" } else { "Continuous" });
        out.pair(370, &weight.to_string());
    }
}

fn blocks(out: &mut Writer) {
    section(out, "BLOCKS");
    for (record, name, handles, space) in [
        (MODEL, "*Model_Space", ["20", "21"], ""),
        (PAPER, "*Paper_Space", ["1C", "1D"], "67 1|"),
    ] {
        out.pair(0, "BLOCK");
        out.pair(5, handles[0]);
        out.pair(330, record);
        pairs(out, &["100 AcDbEntity|", space, "8 0|100 AcDbBlockBegin"].concat());
        out.pair(2, name);
        pairs(out, "70 0|10 0.0|20 0.0|30 0.0");
        out.pair(3, name);
        out.pair(1, "");
        out.pair(0, "ENDBLK");
        out.pair(5, handles[1]);
        out.pair(330, record);
        pairs(out, &["100 AcDbEntity|", space, "8 0|100 AcDbBlockEnd"].concat());
    }
    out.pair(0, "ENDSEC");
}

fn decimal(value: f64) -> String {
    format!("{value:.4}")
}
