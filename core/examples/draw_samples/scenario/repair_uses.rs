//! What stands on the worn-out strip and in its subdivision, and what the loosened rules let stand there.

use hobnail_core::plan::land::{Certainty, Fronting};
use hobnail_core::plan::{BuildingTypeId, Footprint, PlaceKind};

use super::conventional::Streets;
use super::palette::{
    APARTMENT_HOUSE, CAMPUS_SCHOOL, CORNER_STORE, FARM, FIRST, GARDEN_APARTMENTS, HALL, HOUSE_AND_COTTAGE, OLDER_HOUSE,
    PARK, ROW_HOUSE, SECOND, SHOP_HOUSE, SQUARE, STRIP_OFFICES, WORK_HOUSE, WORKSHOP, WORN_STRIP,
};
use super::repair::NewStreets;
use super::sheet::{At, Sheet, Side, free_point, free_points};

/// Land, and the percent of it each type takes.
type Painted<'a> = (At, &'a [(BuildingTypeId, u32)]);

/// Uses and places as they stand.
pub fn today(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    for (anchor, drive) in [(-316.0, -300.0), (-26.0, -300.0)].into_iter().zip(streets.strips) {
        let (road_side, drive_side) = ((anchor.0, -347.0), (anchor.0, -250.0));
        sheet.land(
            anchor,
            &[(WORN_STRIP, 50), (STRIP_OFFICES, 33)],
            &[
                Side::other(streets.land.state_road, road_side, Fronting::Front).setback(38.0),
                Side::other(drive, drive_side, Fronting::Rear),
            ],
            FIRST,
        )?;
    }
    let land: [Painted<'_>; 12] = [
        ((-320.0, -190.0), &[(GARDEN_APARTMENTS, 100)]),
        ((-40.0, -200.0), &[(GARDEN_APARTMENTS, 100)]),
        ((-120.0, -60.0), &[(OLDER_HOUSE, 100)]),
        ((-290.0, 90.0), &[(OLDER_HOUSE, 100)]),
        ((430.0, 0.0), &[(OLDER_HOUSE, 100)]),
        ((300.0, 0.0), &[(OLDER_HOUSE, 100)]),
        ((-428.0, 40.0), &[(OLDER_HOUSE, 86)]),
        ((390.0, -250.0), &[(CAMPUS_SCHOOL, 100)]),
        ((130.0, -240.0), &[(PARK, 100)]),
        ((0.0, 280.0), &[(FARM, 100)]),
        ((165.0, -60.0), &[(FARM, 100)]),
        ((180.0, -250.0), &[(FARM, 100)]),
    ];
    for (anchor, portions) in land {
        sheet.land(anchor, portions, &[], FIRST)?;
    }
    let point = |at| free_point(at).map(Footprint::Point);
    let strip = Footprint::Line(free_points(&[(-146.0, -260.0), (90.0, -260.0)])?);
    for (name, kind, footprint) in [
        ("The strip", PlaceKind::Center, strip),
        ("Strip shops", PlaceKind::Shop, point((-26.0, -262.0))?),
        ("Campus school", PlaceKind::School, point((336.0, -226.0))?),
        ("Ball field", PlaceKind::Park, point((130.0, -190.0))?),
    ] {
        sheet.place(name, kind, footprint, Certainty::Existing, FIRST);
    }
    sheet.note(
        (-318.0, -262.0),
        "Table 1",
        "A third of the shops here have been empty for years.",
        9,
        24,
    )?;
    Ok(())
}

/// Uses and places when repaired.
pub fn repaired(sheet: &mut Sheet, new: &NewStreets) -> Result<(), String> {
    along_mender_street(sheet, new)?;
    behind_the_strip(sheet)?;
    among_the_houses(sheet)?;
    repaired_places(sheet)?;
    sheet.note(
        (-130.0, -262.0),
        "Table 1",
        "The square first: it is all parking today and nobody has to move.",
        15,
        24,
    )?;
    Ok(())
}

fn along_mender_street(sheet: &mut Sheet, new: &NewStreets) -> Result<(), String> {
    sheet.land(
        (-408.0, -308.0),
        &[(WORKSHOP, 45), (WORK_HOUSE, 30), (PARK, 25)],
        &[Side::other(new.mender_west, (-408.0, -261.0), Fronting::Front)],
        FIRST,
    )?;
    sheet.land(
        (-267.0, -317.0),
        &[(SHOP_HOUSE, 26), (APARTMENT_HOUSE, 26), (ROW_HOUSE, 48)],
        &[Side::other(new.mender_west, (-240.0, -290.6), Fronting::Front).shops()],
        FIRST,
    )?;
    sheet.land(
        (-75.0, -319.0),
        &[(SHOP_HOUSE, 26), (APARTMENT_HOUSE, 26), (ROW_HOUSE, 48)],
        &[Side::other(new.mender_east, (-120.0, -292.7), Fronting::Front).shops()],
        FIRST,
    )?;
    sheet.land(
        (-43.0, -262.0),
        &[(SHOP_HOUSE, 45), (ROW_HOUSE, 55)],
        &[
            Side::front(new.awl, (-106.0, -264.0), HALL).setback(4.0),
            Side::other(new.town_houses, (-40.0, -240.5), Fronting::Rear),
            Side::other(new.mender_east, (-60.0, -292.4), Fronting::Front)
                .shops()
                .stories(4),
        ],
        FIRST,
    )?;
    sheet.land((-136.0, -262.0), &[(SQUARE, 60), (PARK, 40)], &[], FIRST)?;
    sheet.land(
        (-230.0, -262.0),
        &[(SHOP_HOUSE, 20), (ROW_HOUSE, 58), (PARK, 22)],
        &[Side::other(new.mender_west, (-240.0, -290.6), Fronting::Front)
            .shops()
            .stories(3)],
        FIRST,
    )?;
    sheet.land(
        (90.0, -290.0),
        &[(WORN_STRIP, 30), (WORKSHOP, 20), (PARK, 50)],
        &[],
        SECOND,
    )?;
    Ok(())
}

fn behind_the_strip(sheet: &mut Sheet) -> Result<(), String> {
    let land: [Painted<'_>; 5] = [
        ((-445.0, -176.0), &[(PARK, 100)]),
        ((-384.0, -175.0), &[(GARDEN_APARTMENTS, 100)]),
        ((-265.0, -185.0), &[(GARDEN_APARTMENTS, 100)]),
        ((-64.0, -199.0), &[(GARDEN_APARTMENTS, 80), (ROW_HOUSE, 20)]),
        ((66.0, -202.0), &[(GARDEN_APARTMENTS, 100)]),
    ];
    for (anchor, portions) in land {
        sheet.land(anchor, portions, &[], SECOND)?;
    }
    Ok(())
}

fn among_the_houses(sheet: &mut Sheet) -> Result<(), String> {
    let loosened = [(OLDER_HOUSE, 82), (HOUSE_AND_COTTAGE, 18)];
    for anchor in [
        (-354.0, -59.0),
        (-275.0, -68.0),
        (-105.0, -71.0),
        (-23.0, -64.0),
        (-360.0, 77.0),
        (-283.0, 95.0),
        (-206.0, 86.0),
        (-125.0, 98.0),
        (-60.0, 100.0),
        (60.0, -60.0),
        (128.0, -100.0),
        (-429.0, -22.0),
        (-407.0, 163.0),
    ] {
        sheet.land(anchor, &loosened, &[], SECOND)?;
    }
    sheet.land(
        (-190.0, -65.0),
        &[(CORNER_STORE, 5), (OLDER_HOUSE, 77), (HOUSE_AND_COTTAGE, 18)],
        &[],
        SECOND,
    )?;
    for anchor in [
        (306.0, 34.0),
        (326.0, -66.0),
        (236.0, -102.0),
        (199.0, 28.0),
        (216.0, 120.0),
        (287.0, 185.0),
        (369.0, 168.0),
    ] {
        sheet.land(anchor, &[(OLDER_HOUSE, 90), (HOUSE_AND_COTTAGE, 10)], &[], SECOND)?;
    }
    sheet.land((399.0, -228.0), &[(CAMPUS_SCHOOL, 100)], &[], SECOND)?;
    for creek_side in [(0.0, 280.0), (178.0, -260.0), (140.0, 10.0), (165.0, -100.0)] {
        sheet.land(creek_side, &[(FARM, 100)], &[], SECOND)?;
    }
    Ok(())
}

fn repaired_places(sheet: &mut Sheet) -> Result<(), String> {
    let point = |at| free_point(at).map(Footprint::Point);
    let square = [(-160.0, -280.0), (-112.0, -281.0), (-112.0, -243.0), (-160.0, -243.0)];
    let area = free_points(&square).map(Footprint::Area)?;
    for (name, kind, footprint, certainty) in [
        ("Mender Square", PlaceKind::Center, area.clone(), Certainty::Committed),
        ("", PlaceKind::Park, area, Certainty::Committed),
        (
            "Mender Street shops",
            PlaceKind::Shop,
            point((-230.0, -302.0))?,
            Certainty::Committed,
        ),
        (
            "Corner store",
            PlaceKind::Shop,
            point((-196.0, 8.0))?,
            Certainty::HopedFor,
        ),
        (
            "Mender Hall",
            PlaceKind::CommunityHall,
            point((-30.0, -264.0))?,
            Certainty::HopedFor,
        ),
        (
            "Campus school",
            PlaceKind::School,
            point((336.0, -226.0))?,
            Certainty::Existing,
        ),
        (
            "Ball field",
            PlaceKind::Park,
            point((120.0, -200.0))?,
            Certainty::Existing,
        ),
    ] {
        sheet.place(name, kind, footprint, certainty, FIRST);
    }
    Ok(())
}
