//! What stands in the compact village: shops around the square, workshops toward the state road, the school and the
//! greens beside the creek, and homes of many kinds between.

use hobnail_core::plan::land::{Certainty, Fronting};
use hobnail_core::plan::{BuildingTypeId, Footprint, PlaceKind};

use super::palette::{
    APARTMENT_HOUSE, CORNER_STORE, COTTAGE, FARM, FIRST, HALL, PAIR, PARK, ROW_HOUSE, SECOND, SHOP_HOUSE, SQUARE,
    VILLAGE_SCHOOL, WORK_HOUSE, WORKSHOP,
};
use super::sheet::{At, Sheet, Side, free_point, free_points};
use super::village::Streets;

/// Land, and the percent of it each type takes.
type Painted<'a> = (At, &'a [(BuildingTypeId, u32)]);

/// Gives the land its uses, names the places and pins two notes.
pub fn draw(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    around_the_square(sheet, streets)?;
    toward_the_state_road(sheet, streets)?;
    toward_the_town_road(sheet, streets)?;
    toward_the_creek(sheet, streets)?;
    beyond_the_creek(sheet)?;
    places(sheet)?;
    sheet.note(
        (-196.0, -96.0),
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
    let shops = |street, at| Side::front(street, at, SHOP_HOUSE).shops().stories(4);
    sheet.land((-196.0, -92.0), &[(SQUARE, 100)], &[], FIRST)?;
    sheet.land(
        (-189.0, -49.0),
        &[(HALL, 100)],
        &[Side::other(streets.hall_row, (-205.0, -66.0), front).setback(4.0)],
        FIRST,
    )?;
    sheet.land(
        (-135.0, -95.0),
        &[(APARTMENT_HOUSE, 100)],
        &[shops(streets.hall_row, (-152.0, -112.0))],
        FIRST,
    )?;
    sheet.land(
        (-222.0, -165.0),
        &[(ROW_HOUSE, 100)],
        &[
            shops(streets.pearmain_square, (-220.0, -130.0)),
            Side::other(streets.pearmain_south, (-180.0, -180.0), front).setback(2.0),
        ],
        FIRST,
    )?;
    sheet.land((-215.0, -220.0), &[(ROW_HOUSE, 100)], &[], FIRST)?;
    sheet.land(
        (-290.0, -95.0),
        &[(ROW_HOUSE, 100)],
        &[Side::other(streets.pearmain_west, (-310.0, -75.0), front).setback(2.0)],
        FIRST,
    )?;
    sheet.land((-300.0, -140.0), &[(ROW_HOUSE, 100)], &[], FIRST)?;
    sheet.land(
        (-275.0, -50.0),
        &[(ROW_HOUSE, 100)],
        &[
            shops(streets.thimble, (-236.0, -75.0)),
            Side::other(streets.pearmain_west, (-310.0, -75.0), front).setback(2.0),
        ],
        FIRST,
    )?;
    sheet.land(
        (-150.0, -185.0),
        &[(ROW_HOUSE, 100)],
        &[
            shops(streets.candlewick, (-160.0, -142.0)),
            Side::other(streets.pearmain_south, (-166.0, -215.0), front).setback(2.0),
        ],
        FIRST,
    )?;
    sheet.land(
        (-95.0, -185.0),
        &[(APARTMENT_HOUSE, 30), (ROW_HOUSE, 70)],
        &[Side::other(streets.candlewick, (-100.0, -131.3), Fronting::Side)],
        FIRST,
    )?;
    sheet.land((-283.0, -8.0), &[(ROW_HOUSE, 50), (PAIR, 50)], &[], FIRST)?;
    sheet.land((-307.0, -185.0), &[(ROW_HOUSE, 50), (PAIR, 50)], &[], FIRST)?;
    sheet.land((-307.0, -228.0), &[(ROW_HOUSE, 100)], &[], FIRST)?;
    Ok(())
}

fn toward_the_state_road(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    let on_the_road = |at| Side::other(streets.land.state_road, at, Fronting::Front).setback(8.0);
    let land: [Painted<'_>; 10] = [
        ((-405.0, -278.0), &[(WORK_HOUSE, 100)]),
        ((-405.0, -315.0), &[(WORKSHOP, 100)]),
        ((-310.0, -270.0), &[(PAIR, 100)]),
        ((-311.0, -318.0), &[(WORKSHOP, 100)]),
        ((-215.0, -268.0), &[(APARTMENT_HOUSE, 40), (ROW_HOUSE, 60)]),
        ((-218.0, -316.0), &[(WORK_HOUSE, 100)]),
        ((-119.0, -268.0), &[(APARTMENT_HOUSE, 65), (PAIR, 35)]),
        ((-120.0, -314.0), &[(APARTMENT_HOUSE, 100)]),
        ((-24.0, -266.0), &[(PAIR, 70), (COTTAGE, 30)]),
        ((-26.0, -314.0), &[(WORK_HOUSE, 100)]),
    ];
    for (anchor, portions) in land {
        let sides = if anchor.1 < -300.0 {
            vec![on_the_road((anchor.0, -347.0))]
        } else {
            Vec::new()
        };
        let phase = if anchor.0 > -70.0 { SECOND } else { FIRST };
        sheet.land(anchor, portions, &sides, phase)?;
    }
    sheet.land(
        (88.0, -295.0),
        &[(VILLAGE_SCHOOL, 78), (PARK, 22)],
        &[Side::other(streets.medlar, (24.0, -290.0), Fronting::Front).setback(6.0)],
        SECOND,
    )?;
    Ok(())
}

fn toward_the_town_road(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    let main_street = |at| [Side::other(streets.pearmain_west, at, Fronting::Front).setback(2.0)];
    sheet.land(
        (-405.0, -103.0),
        &[(ROW_HOUSE, 100)],
        &main_street((-405.0, -79.0)),
        FIRST,
    )?;
    sheet.land(
        (-400.0, -57.0),
        &[(CORNER_STORE, 12), (ROW_HOUSE, 88)],
        &main_street((-405.0, -79.0)),
        FIRST,
    )?;
    let houses: [Painted<'_>; 12] = [
        ((-405.0, -232.0), &[(COTTAGE, 60), (PAIR, 40)]),
        ((-405.0, -187.0), &[(COTTAGE, 60), (PAIR, 40)]),
        ((-405.0, -145.0), &[(PAIR, 100)]),
        ((-400.0, -15.0), &[(PAIR, 100)]),
        ((-400.0, 28.0), &[(COTTAGE, 60), (PAIR, 40)]),
        ((-400.0, 70.0), &[(PAIR, 60), (COTTAGE, 40)]),
        ((-395.0, 115.0), &[(COTTAGE, 60), (PAIR, 40)]),
        ((-395.0, 155.0), &[(COTTAGE, 100)]),
        ((-255.0, 37.0), &[(PAIR, 100)]),
        ((-275.0, 77.0), &[(PAIR, 60), (COTTAGE, 40)]),
        ((-273.0, 119.0), &[(COTTAGE, 60), (PAIR, 40)]),
        ((-315.0, 34.0), &[(PARK, 100)]),
    ];
    for (anchor, portions) in houses {
        let phase = if anchor.1 > 0.0 { SECOND } else { FIRST };
        sheet.land(anchor, portions, &[], phase)?;
    }
    sheet.land(
        (-270.0, 162.0),
        &[(COTTAGE, 100)],
        &[Side::other(streets.bank, (-272.0, 187.0), Fronting::Front).setback(4.0)],
        SECOND,
    )?;
    Ok(())
}

fn toward_the_creek(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    for green in [(-80.0, 168.0), (84.0, 24.0), (144.0, -180.0)] {
        sheet.land(green, &[(PARK, 100)], &[], SECOND)?;
    }
    let bank = |at| Side::other(streets.bank, at, Fronting::Front).setback(4.0);
    let on_the_bank: [Painted<'_>; 3] = [
        ((-155.0, 150.0), &[(COTTAGE, 100)]),
        ((60.0, -30.0), &[(COTTAGE, 100)]),
        ((97.0, -185.0), &[(COTTAGE, 100)]),
    ];
    for (anchor, portions) in on_the_bank {
        let (x_m, y_m) = anchor;
        sheet.land(anchor, portions, &[bank((x_m + 25.0, y_m + 10.0))], SECOND)?;
    }
    let lantern = Side::front(streets.lantern, (-42.0, 51.0), ROW_HOUSE).stories(3);
    for anchor in [(-62.0, 62.0), (-31.0, 33.0)] {
        sheet.land(anchor, &[(COTTAGE, 100)], &[lantern], SECOND)?;
    }
    let sorrel = |at| [Side::other(streets.sorrel, at, Fronting::Front).setback(2.0)];
    sheet.land((-165.0, -5.0), &[(ROW_HOUSE, 100)], &sorrel((-185.0, -19.0)), FIRST)?;
    sheet.land((-95.0, -72.0), &[(ROW_HOUSE, 100)], &sorrel((-110.0, -90.0)), FIRST)?;
    let houses: [Painted<'_>; 9] = [
        ((-165.0, 115.0), &[(PAIR, 40), (COTTAGE, 60)]),
        ((-97.0, 90.0), &[(PAIR, 100)]),
        ((-4.0, 3.0), &[(PAIR, 100)]),
        ((25.0, -60.0), &[(COTTAGE, 50), (PAIR, 50)]),
        ((-140.0, 35.0), &[(PAIR, 70), (COTTAGE, 30)]),
        ((-55.0, -47.0), &[(PAIR, 70), (COTTAGE, 30)]),
        ((-48.0, -180.0), &[(PAIR, 100)]),
        ((2.0, -180.0), &[(PAIR, 100)]),
        ((49.0, -180.0), &[(PAIR, 60), (COTTAGE, 40)]),
    ];
    for (anchor, portions) in houses {
        sheet.land(anchor, portions, &[], SECOND)?;
    }
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
    // Where the streets end, to the meter.
    let square = [(-232.0, -100.0), (-191.0, -140.0), (-138.0, -130.0), (-224.0, -54.0)];
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
        point((-194.0, -55.0))?,
        Certainty::Committed,
        FIRST,
    );
    sheet.place(
        "Bakery corner",
        PlaceKind::Shop,
        point((-246.0, -99.0))?,
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
        point((-142.0, -103.0))?,
        Certainty::HopedFor,
        FIRST,
    );
    sheet.place(
        "Tibberow School",
        PlaceKind::School,
        point((42.0, -290.0))?,
        Certainty::Committed,
        SECOND,
    );
    // The same land has its name already.
    sheet.place("", PlaceKind::Park, area(&square)?, Certainty::Committed, FIRST);
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
        point((-315.0, 30.0))?,
        Certainty::Committed,
        SECOND,
    );
    Ok(())
}
