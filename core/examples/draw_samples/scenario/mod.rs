//! One invented scenario on one invented site, drawn four ways.

mod conventional;
mod palette;
mod repair;
mod repair_uses;
mod sheet;
mod site;
mod village;
mod village_uses;

use hobnail_core::fabric::{Fabric, LandCache};
use hobnail_core::plan::document::{Target, TargetKind};
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::street::Status;
use hobnail_core::plan::{Alternative, AlternativeId, Document, Mark};

use sheet::Sheet;

/// A sample: its file name without extension, and the document.
pub struct Sample {
    /// File name without extension.
    pub name: &'static str,
    /// What the file holds.
    pub document: Document,
}

/// Draws all samples.
pub fn samples() -> Result<Vec<Sample>, String> {
    Ok(vec![
        Sample {
            name: "compact-village",
            document: document(
                "Tibberow, a compact village",
                ABOUT_VILLAGE,
                vec![("Compact village", village::draw()?)],
            )?,
        },
        Sample {
            name: "conventional-subdivision",
            document: document(
                "Tibberow, a conventional subdivision",
                ABOUT_CONVENTIONAL,
                vec![("Conventional subdivision", conventional::draw()?)],
            )?,
        },
        Sample {
            name: "repaired-strip",
            document: document(
                "Tibberow, a worn-out strip repaired",
                ABOUT_REPAIR,
                vec![
                    ("As it stands", repair::draw_today()?),
                    ("Repaired", repair::draw_repaired()?),
                ],
            )?,
        },
        Sample {
            name: "blank-site",
            document: document(
                "Tibberow, the blank site",
                ABOUT_BLANK,
                vec![("Alternative 1", blank()?)],
            )?,
        },
    ])
}

const ABOUT_VILLAGE: &str =
    "About 700 homes around one square on less than half of the land; creek, wood and fields are kept.";
const ABOUT_CONVENTIONAL: &str = "The same program as the compact village, laid out as a subdivision with one entrance and \
                                  a commercial strip, over all of the land.";
const ABOUT_REPAIR: &str = "A strip and a dead-end subdivision that have stood for fifty years, as they stand and as new \
                            connections and loosened uses would repair them.";
const ABOUT_BLANK: &str = "The site before anything is drawn: boundary, edge roads, creek, marsh, wood, the places where \
                           streets may connect, and the typed program.";

/// What every sample says of itself.
const INVENTED: &str = "An invented place: names, people and numbers are made up, and the origin is an arbitrary point in \
                        open ocean.";

/// The land as it is found, ready to be drawn on.
fn blank() -> Result<Sheet, String> {
    let mut sheet = Sheet::numbered_from(0);
    let land = site::draw(&mut sheet)?;
    site::farm_drive(&mut sheet, land, Status::Existing)?;
    site::keep_wood(&mut sheet)?;
    site::accesses(&mut sheet, land, &site::ACCESSES)?;
    Ok(sheet)
}

fn document(name: &str, about: &str, sheets: Vec<(&str, Sheet)>) -> Result<Document, String> {
    let origin = GeographicPoint {
        longitude_ndeg: -40_000_000_000,
        latitude_ndeg: 40_000_000_000,
    };
    let mut document = Document::new(name, origin);
    document.heading.about = format!("{about} {INVENTED}");
    document.site = site::site()?;
    document.program = program();
    document.street_sections = palette::street_sections();
    document.building_types = palette::building_types();
    document.phases = palette::phases();
    document.alternatives = (0..)
        .map(AlternativeId)
        .zip(sheets)
        .map(|(id, (name, sheet))| {
            let alternative = Alternative {
                name: name.to_owned(),
                table: String::new(),
                marks: sheet.into_marks(),
            };
            (id, alternative)
        })
        .collect();
    measure_land(&mut document);
    Ok(document)
}

/// Writes into every use mark the buildable land it covers, as laying it by hand would.
fn measure_land(document: &mut Document) {
    let ids: Vec<_> = document.alternatives.keys().copied().collect();
    for id in ids {
        let fabric = Fabric::of(document, id, &mut LandCache::default());
        let Some(alternative) = document.alternatives.get_mut(&id) else {
            continue;
        };
        for face in &fabric.faces {
            let mark = face.use_mark.and_then(|mark| alternative.marks.get_mut(&mark));
            if let Some(Mark::Use(use_mark)) = mark {
                use_mark.land_m2 = face.land_m2().round() as u32;
            }
        }
    }
}

fn program() -> Vec<Target> {
    [
        (TargetKind::Homes, 700),
        (TargetKind::ShopFloorM2, 4_300),
        (TargetKind::WorkFloorM2, 6_600),
        (TargetKind::SchoolSeats, 240),
        (TargetKind::ParkLandM2, 30_000),
    ]
    .map(|(what, asked)| Target { what, asked })
    .into()
}
