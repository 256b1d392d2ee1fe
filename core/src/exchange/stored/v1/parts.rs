//! Parts of a document without a palette of their own: heading, program, settings, topography, base image, ids, points.

use crate::exchange::base64;
use crate::exchange::fault::FileFaultKind;
use crate::exchange::json::Json;
use crate::exchange::stored::{Members, Reader, Stored, Writing, stored_record, stored_words};
use crate::plan::coordinates::PlanPoint;
use crate::plan::document::{BaseImage, FactorOverride, Heading, Settings, Target, TargetKind, Topography, UnitSystem};
use crate::plan::ids::{AlternativeId, BuildingTypeId, MarkId, PhaseId, StreetSectionId};
use crate::plan::journal::EntryNumber;
use crate::plan::projection::GeographicPoint;
use crate::say;

macro_rules! stored_ids {
    ($($id:ident),*) => {
        $(impl Stored for $id {
            fn to_json(&self) -> Json {
                self.0.to_json()
            }

            fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
                Stored::from_json(json, reader).map($id)
            }
        })*
    };
}

stored_ids!(
    MarkId,
    AlternativeId,
    StreetSectionId,
    BuildingTypeId,
    PhaseId,
    EntryNumber
);

/// `[x, y]` in millimeters, within the legal range.
impl Stored for PlanPoint {
    fn to_json(&self) -> Json {
        [self.x_mm, self.y_mm].to_json()
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let [x_mm, y_mm] = Stored::from_json(json, reader)?;
        let point = Self::new(x_mm, y_mm);
        if !point.is_legal() {
            reader.fault(FileFaultKind::BeyondPlan);
            return None;
        }
        Some(point)
    }
}

/// A position on Earth as `[longitude, latitude]` in degrees.
struct Origin(GeographicPoint);

impl Stored for Origin {
    fn to_json(&self) -> Json {
        let (longitude_deg, latitude_deg) = self.0.to_deg();
        [longitude_deg, latitude_deg].to_json()
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let [longitude_deg, latitude_deg] = Stored::from_json(json, reader)?;
        let point = GeographicPoint::checked_from_deg(longitude_deg, latitude_deg);
        if point.is_none() {
            reader.fault(FileFaultKind::NotAPosition);
        }
        point.map(Self)
    }
}

impl Stored for Heading {
    fn to_json(&self) -> Json {
        let mut writing = Writing::default();
        writing.put("name", &self.name);
        writing.put("about", &self.about);
        writing.put("origin", &Origin(self.geographic_origin()));
        writing.done()
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let mut members = Members::of(json, reader)?;
        let (name, about) = (members.take("name", reader), members.take("about", reader));
        let origin: Option<Origin> = members.take("origin", reader);
        members.finish(reader);
        let Origin(origin) = origin?;
        Some(Self {
            name: name?,
            about: about?,
            origin_longitude_ndeg: origin.longitude_ndeg,
            origin_latitude_ndeg: origin.latitude_ndeg,
        })
    }
}

impl Stored for Target {
    fn to_json(&self) -> Json {
        let mut writing = Writing::default();
        writing.put_word(
            "what",
            match self.what {
                TargetKind::Homes => "homes",
                TargetKind::HomesOf(_) => "homes_of",
                TargetKind::ShopFloorM2 => "shop_floor_m2",
                TargetKind::WorkFloorM2 => "work_floor_m2",
                TargetKind::SchoolSeats => "school_seats",
                TargetKind::ParkLandM2 => "park_land_m2",
                TargetKind::ParkingSpaces => "parking_spaces",
            },
        );
        if let TargetKind::HomesOf(building_type) = self.what {
            writing.put("building_type", &building_type);
        }
        writing.put("asked", &self.asked);
        writing.done()
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let mut members = Members::of(json, reader)?;
        let word: Option<TargetWord> = members.take("what", reader);
        let what = match word {
            Some(TargetWord::HomesOf) => members.take("building_type", reader).map(TargetKind::HomesOf),
            Some(TargetWord::Homes) => Some(TargetKind::Homes),
            Some(TargetWord::ShopFloor) => Some(TargetKind::ShopFloorM2),
            Some(TargetWord::WorkFloor) => Some(TargetKind::WorkFloorM2),
            Some(TargetWord::SchoolSeats) => Some(TargetKind::SchoolSeats),
            Some(TargetWord::ParkLand) => Some(TargetKind::ParkLandM2),
            Some(TargetWord::ParkingSpaces) => Some(TargetKind::ParkingSpaces),
            None => None,
        };
        let asked = members.take("asked", reader);
        members.finish(reader);
        Some(Self {
            what: what?,
            asked: asked?,
        })
    }
}

/// [`TargetKind`] without what it carries.
#[derive(Clone, Copy)]
enum TargetWord {
    Homes,
    HomesOf,
    ShopFloor,
    WorkFloor,
    SchoolSeats,
    ParkLand,
    ParkingSpaces,
}

stored_words!(TargetWord {
    "homes" => Homes,
    "homes_of" => HomesOf,
    "shop_floor_m2" => ShopFloor,
    "work_floor_m2" => WorkFloor,
    "school_seats" => SchoolSeats,
    "park_land_m2" => ParkLand,
    "parking_spaces" => ParkingSpaces,
});

stored_record!(Settings {
    "walking_pace_mm_per_s" => walking_pace_mm_per_s,
    "units" => units,
    "chosen" => chosen,
    "overridden_factors" => overridden_factors,
    "rule_lists" => rule_lists,
});

stored_record!(FactorOverride { "low" => low, "typical" => typical, "high" => high, "source" => source });

stored_words!(UnitSystem { "metric" => Metric, "us_customary" => UsCustomary });

stored_record!(Topography {
    "source" => source,
    "south_west_mm" => south_west,
    "spacing_mm" => spacing_mm,
    "columns" => columns,
    "heights_mm" => heights_mm,
});

impl Stored for BaseImage {
    fn to_json(&self) -> Json {
        let mut writing = Writing::default();
        writing.put("name", &self.name);
        writing.put("media_type", &self.media_type);
        writing.put("corners_mm", &self.corners);
        writing.put("opacity_thousandths", &self.opacity_thousandths);
        writing.put("base64", &base64::encode(&self.bytes));
        writing.done()
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let mut members = Members::of(json, reader)?;
        let (name, media_type) = (members.take("name", reader), members.take("media_type", reader));
        let corners = members.take("corners_mm", reader);
        let opacity_thousandths = members.take("opacity_thousandths", reader);
        let text: Option<String> = members.take("base64", reader);
        members.finish(reader);
        let bytes = base64::decode(&text?);
        if bytes.is_none() {
            reader.fault(FileFaultKind::Expected {
                expected: say!("exchange-value-base64").to_owned(),
                found: say!("exchange-value-other-text").to_owned(),
            });
        }
        Some(Self {
            name: name?,
            media_type: media_type?,
            corners: corners?,
            opacity_thousandths: opacity_thousandths?,
            bytes: bytes?.into(),
        })
    }
}
