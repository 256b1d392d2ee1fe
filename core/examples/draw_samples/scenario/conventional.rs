//! The conventional layout: one entrance from the state road, a loop with culs-de-sac, a commercial strip behind
//! parking lots, over all of the land.

use hobnail_core::plan::MarkId;
use hobnail_core::plan::land::{Certainty, Fronting};
use hobnail_core::plan::street::Status;
use hobnail_core::plan::{Footprint, PlaceKind};

use super::palette::{
    CAMPUS_SCHOOL, COLLECTOR_STREET, DETACHED, DRIVE, FARM, FIRST, FOOTPATH, GARDEN_APARTMENTS, PARK, SECOND,
    STRIP_OFFICES, STRIP_SHOPS, SUBDIVISION_STREET, TOWN_HOUSE,
};
use super::sheet::{At, Corner, Sheet, Side, at, bend, beside, free_point, free_points, on};
use super::site::{self, Land};

/// The streets that other drawings change.
pub struct Streets {
    /// The land as it is found.
    pub land: Land,
    /// From the state road to the loop.
    pub spine: MarkId,
    /// The loop's western arm.
    pub west_arm: MarkId,
    /// The loop's eastern arm.
    pub east_arm: MarkId,
    /// Across the middle of the western arm.
    pub way: MarkId,
    /// Drives through the parking lots of the strip, west and east of the entrance.
    pub strips: [MarkId; 2],
    /// Drive of the town houses.
    pub town_houses: MarkId,
    /// Culs-de-sac.
    pub courts: Vec<MarkId>,
}

/// Draws streets and paths; what is there gets `status`.
pub fn streets(sheet: &mut Sheet, land: Land, status: Status) -> Result<Streets, String> {
    let (road, lane) = (land.state_road, land.town_road);
    let (collector, court, drive, path) = (
        COLLECTOR_STREET.status(status),
        SUBDIVISION_STREET.status(status),
        DRIVE.status(status),
        FOOTPATH.status(status),
    );
    let spine = sheet.street(
        collector,
        "Meadowfall Drive",
        &[on(road, -174.0, -349.0), bend(-172.0, -240.0, 90.0), at(-156.0, -148.0)],
    )?;
    let west_arm = sheet.street(
        court,
        "Meadowfall Loop",
        &[
            on(spine, -156.0, -148.0),
            bend(-290.0, -150.0, 80.0),
            bend(-392.0, -104.0, 70.0),
            bend(-402.0, 40.0, 120.0),
            bend(-372.0, 158.0, 70.0),
            bend(-270.0, 178.0, 70.0),
            bend(-150.0, 190.0, 90.0),
            bend(-56.0, 146.0, 90.0),
            at(10.0, 92.0),
        ],
    )?;
    let east_arm = sheet.street(
        court,
        "Meadowfall Loop",
        &[
            on(spine, -156.0, -148.0),
            bend(-30.0, -164.0, 120.0),
            bend(110.0, -170.0, 120.0),
            bend(300.0, -196.0, 90.0),
            bend(394.0, -130.0, 70.0),
            bend(404.0, 20.0, 70.0),
            bend(320.0, 92.0, 80.0),
            bend(180.0, 78.0, 80.0),
            bend(100.0, 46.0, 60.0),
            on(west_arm, 10.0, 92.0),
        ],
    )?;
    let way = sheet.street(
        court,
        "Fawnbell Way",
        &[
            on(west_arm, -401.0, 16.0),
            bend(-290.0, 8.0, 60.0),
            bend(-200.0, 22.0, 60.0),
            bend(-110.0, 8.0, 60.0),
            bend(-48.0, 52.0, 50.0),
            on(west_arm, -24.0, 120.0),
        ],
    )?;
    let mut courts = Vec::new();
    let lines: [(&str, Vec<Corner>); 17] = [
        (
            "Pippin Court",
            vec![
                on(west_arm, -316.0, -138.0),
                bend(-322.0, -84.0, 60.0),
                bend(-302.0, -36.0, 25.0),
                at(-336.0, -30.0),
            ],
        ),
        (
            "Russet Court",
            vec![
                on(west_arm, -236.0, -149.0),
                bend(-240.0, -86.0, 60.0),
                at(-224.0, -28.0),
            ],
        ),
        (
            "Tansy Court",
            vec![
                on(spine, -156.0, -148.0),
                bend(-154.0, -86.0, 80.0),
                bend(-136.0, -36.0, 25.0),
                at(-166.0, -28.0),
            ],
        ),
        (
            "Brindle Court",
            vec![
                on(east_arm, -68.0, -160.0),
                bend(-66.0, -90.0, 80.0),
                bend(-52.0, -26.0, 40.0),
                at(-76.0, 6.0),
            ],
        ),
        (
            "Dewlap Court",
            vec![
                on(east_arm, 14.0, -166.0),
                bend(20.0, -92.0, 80.0),
                bend(4.0, -16.0, 60.0),
                bend(16.0, 40.0, 30.0),
                at(-18.0, 58.0),
            ],
        ),
        (
            "Dewlap Place",
            vec![on(east_arm, 92.0, -169.0), bend(94.0, -96.0, 60.0), at(78.0, -30.0)],
        ),
        (
            "Thistledown Court",
            vec![on(west_arm, -324.0, 167.0), bend(-318.0, 108.0, 60.0), at(-334.0, 56.0)],
        ),
        (
            "Marigold Court",
            vec![on(west_arm, -240.0, 181.0), bend(-236.0, 116.0, 60.0), at(-254.0, 62.0)],
        ),
        (
            "Bellwort Court",
            vec![on(west_arm, -158.0, 189.0), bend(-156.0, 120.0, 60.0), at(-172.0, 64.0)],
        ),
        (
            "Clover Court",
            vec![on(way, -76.0, 32.0), bend(-92.0, 76.0, 40.0), at(-84.0, 122.0)],
        ),
        (
            "Otterslide Court",
            vec![on(east_arm, 396.0, -104.0), bend(320.0, -114.0, 80.0), at(258.0, -98.0)],
        ),
        (
            "Sedge Court",
            vec![on(east_arm, 401.0, -24.0), bend(322.0, -34.0, 80.0), at(250.0, -16.0)],
        ),
        (
            "Reedmace Court",
            vec![on(east_arm, 300.0, 90.0), bend(304.0, 52.0, 20.0), at(216.0, 40.0)],
        ),
        (
            "Sparrow Court",
            vec![
                on(east_arm, 384.0, 38.0),
                bend(416.0, 84.0, 50.0),
                bend(404.0, 190.0, 90.0),
                at(414.0, 266.0),
            ],
        ),
        (
            "Finch Court",
            vec![
                on(east_arm, 330.0, 83.0),
                bend(338.0, 140.0, 80.0),
                bend(320.0, 220.0, 80.0),
                at(330.0, 270.0),
            ],
        ),
        (
            "Wren Court",
            vec![
                on(east_arm, 244.0, 85.0),
                bend(254.0, 150.0, 80.0),
                bend(236.0, 230.0, 80.0),
                at(246.0, 270.0),
            ],
        ),
        (
            "School Drive",
            vec![
                on(east_arm, 334.0, -172.0),
                bend(350.0, -206.0, 15.0),
                at(330.0, -236.0),
            ],
        ),
    ];
    for (name, line) in lines {
        courts.push(sheet.street(court, name, &line)?);
    }
    let strips = [
        sheet.street(
            drive,
            "",
            &[
                on(road, -438.0, -344.3),
                bend(-438.0, -250.0, 12.0),
                bend(-196.0, -250.0, 12.0),
                on(road, -196.0, -348.8),
            ],
        )?,
        sheet.street(
            drive,
            "",
            &[
                on(road, -150.0, -348.0),
                bend(-150.0, -250.0, 12.0),
                bend(96.0, -250.0, 12.0),
                on(road, 96.0, -346.0),
            ],
        )?,
    ];
    sheet.street(
        drive,
        "",
        &[
            on(spine, -172.0, -236.0),
            at(-438.0, -236.0),
            bend(-438.0, -120.0, 12.0),
            on(west_arm, -394.0, -112.0),
        ],
    )?;
    let town_houses = sheet.street(
        drive,
        "",
        &[
            on(east_arm, -143.0, -149.5),
            at(-150.0, -240.0),
            at(108.0, -241.0),
            on(east_arm, 112.0, -170.0),
        ],
    )?;
    let west_bank = beside(&site::creek(), -32.0);
    let east_bank = beside(&site::creek(), 32.0);
    let corners = |line: &[At]| line.iter().map(|&(x_m, y_m)| at(x_m, y_m)).collect::<Vec<_>>();
    let lines: [(Corner, &[At], Corner); 6] = [
        (on(lane, -464.0, 212.0), &west_bank[6..26], on(west_arm, -8.0, 106.0)),
        (
            on(east_arm, 56.0, 68.0),
            &west_bank[32..42],
            on(east_arm, 150.0, -175.0),
        ),
        (on(east_arm, 150.0, -175.0), &west_bank[45..52], on(road, 176.0, -346.0)),
        (
            on(east_arm, 152.0, 66.0),
            &east_bank[33..42],
            on(east_arm, 217.0, -184.0),
        ),
        (on(east_arm, 217.0, -184.0), &east_bank[45..52], on(road, 238.0, -346.0)),
        (
            on(east_arm, 190.0, 79.0),
            &[(200.0, 160.0), (204.0, 230.0)],
            at(196.0, 314.0),
        ),
    ];
    for (start, line, end) in lines {
        let mut path_line = vec![start];
        path_line.extend(corners(line));
        path_line.push(end);
        sheet.street(path, "", &path_line)?;
    }
    sheet.street(path, "", &[on(east_arm, 394.0, -130.0), at(458.0, -118.0)])?;
    Ok(Streets {
        land,
        spine,
        west_arm,
        east_arm,
        way,
        strips,
        town_houses,
        courts,
    })
}

/// Draws the conventional layout.
pub fn draw() -> Result<Sheet, String> {
    let mut sheet = Sheet::numbered_from(0);
    let land = site::draw(&mut sheet)?;
    site::farm_drive(&mut sheet, land, Status::Removed)?;
    site::accesses(&mut sheet, land, &site::ACCESSES[..1])?;
    let streets = streets(&mut sheet, land, Status::New)?;
    uses(&mut sheet, &streets)?;
    places(&mut sheet)?;
    Ok(sheet)
}

fn uses(sheet: &mut Sheet, streets: &Streets) -> Result<(), String> {
    let strip = [(STRIP_SHOPS, 50), (STRIP_OFFICES, 50)];
    for (anchor, drive) in [(-316.0, -300.0), (-26.0, -300.0)].into_iter().zip(streets.strips) {
        let (road_side, drive_side) = ((anchor.0, -347.0), (anchor.0, -250.0));
        sheet.land(
            anchor,
            &strip,
            &[
                Side::other(streets.land.state_road, road_side, Fronting::Front).setback(38.0),
                Side::other(drive, drive_side, Fronting::Rear),
            ],
            FIRST,
        )?;
    }
    for anchor in [(-320.0, -190.0), (-40.0, -200.0)] {
        sheet.land(anchor, &[(GARDEN_APARTMENTS, 100)], &[], FIRST)?;
    }
    sheet.land((-120.0, -60.0), &[(DETACHED, 60), (TOWN_HOUSE, 40)], &[], FIRST)?;
    for (anchor, phase) in [((-290.0, 90.0), FIRST), ((430.0, 0.0), SECOND)] {
        sheet.land(anchor, &[(DETACHED, 100)], &[], phase)?;
    }
    let backs_to_the_lane = Side::other(streets.land.town_road, (-462.0, 100.0), Fronting::Rear);
    sheet.land(
        (-428.0, 40.0),
        &[(DETACHED, 92), (PARK, 8)],
        &[backs_to_the_lane],
        FIRST,
    )?;
    sheet.land((300.0, 0.0), &[(TOWN_HOUSE, 100)], &[], SECOND)?;
    sheet.land((390.0, -250.0), &[(CAMPUS_SCHOOL, 100)], &[], SECOND)?;
    sheet.land((130.0, -240.0), &[(PARK, 100)], &[], FIRST)?;
    sheet.land((0.0, 280.0), &[(PARK, 20), (FARM, 80)], &[], SECOND)?;
    for creek_side in [(165.0, -60.0), (180.0, -250.0)] {
        sheet.land(creek_side, &[(PARK, 100)], &[], FIRST)?;
    }
    Ok(())
}

fn places(sheet: &mut Sheet) -> Result<(), String> {
    let point = |at| free_point(at).map(Footprint::Point);
    let strip = Footprint::Line(free_points(&[(-146.0, -260.0), (90.0, -260.0)])?);
    for (name, kind, footprint, phase) in [
        ("The strip", PlaceKind::Center, strip, FIRST),
        ("Strip shops, west", PlaceKind::Shop, point((-316.0, -262.0))?, FIRST),
        ("Strip shops, east", PlaceKind::Shop, point((-26.0, -262.0))?, FIRST),
        (
            "Meeting room behind the strip",
            PlaceKind::CommunityHall,
            point((60.0, -262.0))?,
            FIRST,
        ),
        ("Campus school", PlaceKind::School, point((336.0, -226.0))?, SECOND),
        ("Meadowfall Park", PlaceKind::Park, point((130.0, -190.0))?, FIRST),
    ] {
        sheet.place(name, kind, footprint, Certainty::Committed, phase);
    }
    Ok(())
}
