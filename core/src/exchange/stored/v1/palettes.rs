//! Street sections, building types, phases.

use crate::exchange::stored::{stored_palette, stored_record, stored_words};
use crate::plan::building::{BuildingType, EnvelopeClass, FloorUse, LandUse, PriceBand, Story};
use crate::plan::document::Phase;
use crate::plan::ids::{BuildingTypeId, PhaseId, StreetSectionId};
use crate::plan::street::{StreetSection, Strip, StripKind};

stored_palette!(StreetSectionId, StreetSection);
stored_palette!(BuildingTypeId, BuildingType);
stored_palette!(PhaseId, Phase);

stored_record!(StreetSection {
    "name" => name,
    "strips" => strips,
    "target_speed_km_h" => target_speed_km_h,
    "walkable" => walkable,
    "cyclable" => cyclable,
    "drivable" => drivable,
    "fronts_left" => fronts_left,
    "fronts_right" => fronts_right,
});

stored_record!(Strip { "kind" => kind, "width_mm" => width_mm });

stored_words!(StripKind {
    "walk" => Walk,
    "planting" => Planting,
    "parking" => Parking,
    "bicycle" => Bicycle,
    "travel" => Travel,
    "median" => Median,
    "swale" => Swale,
});

stored_record!(BuildingType {
    "name" => name,
    "land_use" => land_use,
    "lot_width_mm" => lot_width_mm,
    "lot_depth_mm" => lot_depth_mm,
    "stories" => stories,
    "homes_per_lot" => homes_per_lot,
    "persons_per_home_thousandths" => persons_per_home_thousandths,
    "coverage_thousandths" => coverage_thousandths,
    "paved_thousandths" => paved_thousandths,
    "planted_thousandths" => planted_thousandths,
    "parking_per_lot_hundredths" => parking_per_lot_hundredths,
    "envelope" => envelope,
    "price_band" => price_band,
});

stored_record!(Story {
    "use" => floor_use,
    "floor_area_m2" => floor_area_m2,
    "height_mm" => height_mm,
    "jobs_per_floor_hectare" => jobs_per_floor_hectare,
});

stored_words!(FloorUse {
    "home" => Home,
    "work" => Work,
    "shop" => Shop,
    "learning" => Learning,
    "gathering" => Gathering,
    "parking" => Parking,
});

stored_words!(LandUse {
    "residential" => Residential,
    "business" => Business,
    "industrial" => Industrial,
    "civic" => Civic,
    "leisure" => Leisure,
    "natural" => Natural,
});

stored_words!(EnvelopeClass { "older" => Older, "code" => Code, "better" => Better });

stored_words!(PriceBand { "lower" => Lower, "middle" => Middle, "upper" => Upper });

stored_record!(Phase { "name" => name });
