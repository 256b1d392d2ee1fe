//! What stands in the compact village: shops around the square, workshops toward the state road, the school and the
//! greens beside the creek, and homes of many kinds between.

use hobnail_core::plan::land::{Certainty, Fronting};
use hobnail_core::plan::{Footprint, PlaceKind};

use super::palette::{
    APARTMENT_HOUSE, CORNER_STORE, COTTAGE, FARM, FIRST, HALL, PAIR, PARK, ROW_HOUSE, SECOND, SHOP_HOUSE, SQUARE,
    VILLAGE_SCHOOL, WORK_HOUSE, WORKSHOP,
};
use super::sheet::{Sheet, Side, free_point, free_points};
use super::village::Streets;

/// Gives the land its uses, names the places and pins two notes.
pub fn draw(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    around_the_square(sheet, streets)?;
    toward_the_state_road(sheet, streets)?;
    toward_the_town_road(sheet, streets)?;
    toward_the_creek(sheet, streets)?;
    beyond_the_creek(sheet)?;
    places(sheet)?;
    sheet.note(
        (-206.0, -92.0),
        "Table 2",
        "Market stalls on Saturdays: keep the paving level from wall to wall.",
        17,
        31,
    )?;
    sheet.note(
        (26.0, 118.0),
        "Table 4",
        "Footbridge wide enough for a farm cart, closed to cars.",
        22,
        31,
    )?;
    Ok(())
}

fn around_the_square(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    let front = Fronting::Front;
    sheet.land((-204.0, -88.0), &[(SQUARE, 100)], &[], FIRST)?;
    sheet.land(
        (-191.0, -48.0),
        &[(HALL, 100)],
        &[Side::other(streets.hall_row, (-200.0, -61.0), front).setback(4.0)],
        FIRST,
    )?;
    sheet.land(
        (-129.0, -106.0),
        &[(SHOP_HOUSE, 60), (APARTMENT_HOUSE, 40)],
        &[Side::other(streets.hall_row, (-148.0, -109.0), front)
            .shops()
            .stories(4)],
        FIRST,
    )?;
    sheet.land(
        (-222.0, -170.0),
        &[(ROW_HOUSE, 60), (PAIR, 40)],
        &[Side::front(streets.pearmain_square, (-196.0, -132.0), SHOP_HOUSE)
            .shops()
            .stories(4)],
        FIRST,
    )?;
    sheet.land(
        (-285.0, -108.0),
        &[(ROW_HOUSE, 60), (PAIR, 40)],
        &[
            Side::front(streets.pearmain_square, (-224.0, -105.0), SHOP_HOUSE)
                .shops()
                .stories(4),
            Side::other(streets.damson, (-346.0, -117.0), Fronting::Side),
        ],
        FIRST,
    )?;
    sheet.land(
        (-288.0, -54.0),
        &[(ROW_HOUSE, 100)],
        &[
            Side::front(streets.thimble, (-235.0, -68.0), SHOP_HOUSE)
                .shops()
                .stories(3),
            Side::other(streets.pearmain_west, (-300.0, -75.0), front).setback(2.0),
        ],
        FIRST,
    )?;
    sheet.land(
        (-143.0, -185.0),
        &[(ROW_HOUSE, 100)],
        &[
            Side::front(streets.candlewick, (-152.0, -140.0), SHOP_HOUSE)
                .shops()
                .stories(3),
            Side::other(streets.pearmain_south, (-164.0, -215.0), front).setback(2.0),
        ],
        FIRST,
    )?;
    sheet.land((-95.0, -182.0), &[(ROW_HOUSE, 70), (PAIR, 30)], &[], FIRST)?;
    sheet.land((-283.0, -13.0), &[(ROW_HOUSE, 50), (PAIR, 50)], &[], FIRST)?;
    sheet.land(
        (-307.0, -200.0),
        &[(ROW_HOUSE, 30), (PAIR, 30), (COTTAGE, 40)],
        &[],
        FIRST,
    )?;
    Ok(())
}

fn toward_the_state_road(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    let road = streets.land.state_road;
    let front = Fronting::Front;
    sheet.land(
        (-402.0, -290.0),
        &[(WORKSHOP, 75), (WORK_HOUSE, 5), (PARK, 20)],
        &[
            Side::other(road, (-402.0, -345.0), front).setback(8.0),
            Side::front(streets.damson, (-356.0, -295.0), WORK_HOUSE),
        ],
        FIRST,
    )?;
    sheet.land(
        (-311.0, -314.0),
        &[(WORKSHOP, 30), (WORK_HOUSE, 70)],
        &[Side::other(road, (-311.0, -347.0), front).setback(8.0)],
        FIRST,
    )?;
    sheet.land(
        (-218.0, -315.0),
        &[(WORKSHOP, 60), (WORK_HOUSE, 40)],
        &[
            Side::front(streets.pearmain_south, (-171.0, -318.0), ROW_HOUSE),
            Side::other(road, (-218.0, -349.0), front).setback(8.0),
        ],
        FIRST,
    )?;
    sheet.land(
        (-122.0, -314.0),
        &[(ROW_HOUSE, 60), (PARK, 40)],
        &[
            Side::front(streets.pearmain_south, (-171.0, -318.0), APARTMENT_HOUSE),
            Side::other(road, (-122.0, -348.5), front).setback(8.0),
        ],
        FIRST,
    )?;
    sheet.land(
        (-26.0, -313.0),
        &[(WORKSHOP, 40), (WORK_HOUSE, 60)],
        &[Side::other(road, (-26.0, -347.5), front).setback(8.0)],
        SECOND,
    )?;
    sheet.land((-309.0, -270.0), &[(PAIR, 60), (COTTAGE, 40)], &[], FIRST)?;
    sheet.land((-215.0, -269.0), &[(ROW_HOUSE, 60), (PAIR, 40)], &[], FIRST)?;
    sheet.land((-119.0, -269.0), &[(ROW_HOUSE, 60), (PAIR, 40)], &[], FIRST)?;
    sheet.land((-24.0, -262.0), &[(PAIR, 70), (COTTAGE, 30)], &[], SECOND)?;
    sheet.land(
        (88.0, -288.0),
        &[(VILLAGE_SCHOOL, 78), (PARK, 22)],
        &[Side::other(streets.medlar, (22.0, -285.0), front).setback(6.0)],
        SECOND,
    )?;
    Ok(())
}

fn toward_the_town_road(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    let main_street_houses = |at| Side::front(streets.pearmain_west, at, ROW_HOUSE).setback(2.0);
    let quiet_houses = [(COTTAGE, 60), (PAIR, 20), (PARK, 20)];
    sheet.land((-400.0, -206.0), &quiet_houses, &[], FIRST)?;
    sheet.land(
        (-398.0, -122.0),
        &[(COTTAGE, 70), (PARK, 30)],
        &[main_street_houses((-400.0, -79.0))],
        FIRST,
    )?;
    sheet.land(
        (-397.0, -44.0),
        &[(CORNER_STORE, 10), (COTTAGE, 65), (PARK, 25)],
        &[main_street_houses((-400.0, -79.0))],
        FIRST,
    )?;
    sheet.land((-395.0, 44.0), &quiet_houses, &[], SECOND)?;
    sheet.land((-392.0, 128.0), &quiet_houses, &[], SECOND)?;
    sheet.land((-279.0, 33.0), &[(PARK, 45), (PAIR, 55)], &[], SECOND)?;
    sheet.land((-276.0, 74.0), &[(PAIR, 60), (COTTAGE, 40)], &[], SECOND)?;
    sheet.land((-273.0, 119.0), &[(COTTAGE, 60), (PAIR, 40)], &[], SECOND)?;
    sheet.land(
        (-270.0, 162.0),
        &[(COTTAGE, 100)],
        &[Side::other(streets.bank, (-272.0, 187.0), Fronting::Front).setback(4.0)],
        SECOND,
    )?;
    Ok(())
}

fn toward_the_creek(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    for green in [(-80.0, 168.0), (84.0, 24.0), (140.0, -180.0)] {
        sheet.land(green, &[(PARK, 100)], &[], SECOND)?;
    }
    let bank = |at| Side::other(streets.bank, at, Fronting::Front).setback(4.0);
    sheet.land(
        (-160.0, 123.0),
        &[(PAIR, 20), (COTTAGE, 80)],
        &[bank((-164.0, 180.0))],
        SECOND,
    )?;
    sheet.land(
        (-74.0, 79.0),
        &[(PAIR, 60), (COTTAGE, 40)],
        &[
            Side::front(streets.lantern, (-42.0, 51.0), ROW_HOUSE).stories(3),
            bank((-60.0, 126.0)),
        ],
        SECOND,
    )?;
    sheet.land(
        (-16.0, 23.0),
        &[(PAIR, 60), (COTTAGE, 40)],
        &[
            Side::front(streets.lantern, (-42.0, 51.0), ROW_HOUSE).stories(3),
            bank((16.0, 59.0)),
        ],
        SECOND,
    )?;
    sheet.land(
        (41.0, -43.0),
        &[(COTTAGE, 60), (PAIR, 20), (PARK, 20)],
        &[bank((84.0, -16.0))],
        SECOND,
    )?;
    let sorrel = |at| Side::other(streets.sorrel, at, Fronting::Front).setback(2.0);
    let behind_the_square = [(ROW_HOUSE, 92), (APARTMENT_HOUSE, 8)];
    sheet.land((-169.0, -9.0), &behind_the_square, &[sorrel((-190.0, -25.0))], FIRST)?;
    sheet.land((-102.0, -75.0), &behind_the_square, &[sorrel((-115.0, -98.0))], FIRST)?;
    sheet.land((-130.0, 29.0), &[(PAIR, 40), (COTTAGE, 60)], &[], SECOND)?;
    sheet.land((-49.0, -52.0), &[(PAIR, 40), (COTTAGE, 60)], &[], SECOND)?;
    sheet.land((-50.0, -177.0), &[(PAIR, 60), (PARK, 40)], &[], SECOND)?;
    sheet.land((-3.0, -178.0), &[(PAIR, 30), (COTTAGE, 70)], &[], SECOND)?;
    sheet.land((47.0, -178.0), &[(PAIR, 30), (COTTAGE, 70)], &[], SECOND)?;
    sheet.land((97.0, -185.0), &[(COTTAGE, 100)], &[bank((121.0, -170.0))], SECOND)?;
    Ok(())
}

fn beyond_the_creek(sheet: &mut Sheet) -> Result<(), String> {
    for field in [(-331.0, 201.0), (392.0, -120.0), (250.0, -92.0), (313.0, 20.0)] {
        sheet.land(field, &[(FARM, 100)], &[], FIRST)?;
    }
    Ok(())
}

fn places(sheet: &mut Sheet) -> Result<(), String> {
    let area = |outline: &[_]| free_points(outline).map(Footprint::Area);
    let point = |at| free_point(at).map(Footprint::Point);
    let square = [(-227.0, -86.0), (-185.0, -126.5), (-140.0, -127.0), (-219.0, -50.0)];
    sheet.place(
        "Lantern Square",
        PlaceKind::Center,
        area(&square)?,
        Certainty::Committed,
        FIRST,
    );
    sheet.place(
        "Lantern Hall",
        PlaceKind::CommunityHall,
        point((-196.0, -56.0))?,
        Certainty::Committed,
        FIRST,
    );
    sheet.place(
        "Bakery corner",
        PlaceKind::Shop,
        point((-232.0, -106.0))?,
        Certainty::Committed,
        FIRST,
    );
    sheet.place(
        "Corner store",
        PlaceKind::Shop,
        point((-442.0, -70.0))?,
        Certainty::HopedFor,
        FIRST,
    );
    sheet.place(
        "Health room",
        PlaceKind::Clinic,
        point((-142.0, -112.0))?,
        Certainty::HopedFor,
        FIRST,
    );
    sheet.place(
        "Tibberow School",
        PlaceKind::School,
        point((40.0, -284.0))?,
        Certainty::Committed,
        SECOND,
    );
    sheet.place("Square", PlaceKind::Park, area(&square)?, Certainty::Committed, FIRST);
    sheet.place(
        "Withy Green",
        PlaceKind::Park,
        point((-8.0, 100.0))?,
        Certainty::Committed,
        SECOND,
    );
    sheet.place(
        "Sorrel Green",
        PlaceKind::Park,
        point((-279.0, 22.0))?,
        Certainty::Committed,
        SECOND,
    );
    Ok(())
}
