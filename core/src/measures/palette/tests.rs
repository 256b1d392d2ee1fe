use super::*;
use crate::fabric::sides::side_spoken_of;
use crate::measures::form::tests::{at, check, feet, measured, number, plan, rectangle_ft, street, use_at};
use crate::measures::frontage::painted_faces;
use crate::plan::land::{Hand, Portion};
use crate::plan::projection::GeographicPoint;
use crate::plan::{Mark, MarkId, PlanPoint, UseMark};

mod beside;

const FIRST: AlternativeId = AlternativeId(0);

fn document() -> Document {
    let origin = GeographicPoint {
        longitude_ndeg: 0,
        latitude_ndeg: 0,
    };
    Document::new("Palette", origin)
}

fn named(document: &Document, name: &str) -> BuildingTypeId {
    let mut types = document.building_types.iter();
    *types.find(|(_, held)| held.name == name).expect("a default").0
}

fn side(own: Option<BuildingTypeId>, stories: Option<u8>, shopfront: bool) -> SideUse {
    SideUse {
        street: MarkId(0),
        hand: Hand::Left,
        at: PlanPoint::new(0, 0),
        fronting: Fronting::Front,
        building_type: own,
        shopfront,
        stories,
        setback_mm: None,
    }
}

/// The types of a plan with one use mark: this program, these sides.
fn palette_of(document: &mut Document, program: &[BuildingTypeId], sides: Vec<SideUse>) -> Palette {
    let portion = |building_type: &BuildingTypeId| Portion {
        building_type: *building_type,
        share_ppm: 1_000_000 / program.len() as u32,
    };
    let mark = Mark::Use(UseMark {
        anchor: PlanPoint::new(0, 0),
        program: program.iter().map(portion).collect(),
        land_m2: 0,
        sides,
        phase: None,
    });
    let held = document.alternatives.get_mut(&FIRST).expect("the first");
    held.marks.insert(MarkId(1), mark);
    Palette::of(document, FIRST)
}

#[test]
fn three_stories_only_lower_the_building_and_its_homes_by_their_floor() {
    let mut document = document();
    let shops = named(&document, "Homes above shops");
    let palette = palette_of(&mut document, &[shops], vec![side(None, Some(3), false)]);
    assert_eq!(palette.len(), document.building_types.len() + 1);
    let said = Said::of(&side(None, Some(3), false));
    let built = palette.get(palette.built(shops, said)).expect("it is built so");
    // A shop below three floors of homes, ten homes on 900 m²: two floors hold 600 m², so six whole homes.
    assert_eq!(built.stories.len(), 3);
    assert_eq!(built.homes_per_lot, 6);
    assert_eq!(built.floor_area_m2(FloorUse::Home), 600);
    assert_eq!(built.floor_area_m2(FloorUse::Shop), 320);
    assert_eq!(built.name, "Homes above shops, 3 stories");
}

#[test]
fn a_shopfront_takes_the_ground_floor_and_brings_its_jobs() {
    let mut document = document();
    let apartments = named(&document, "Apartment house");
    let said = side(Some(apartments), None, true);
    let palette = palette_of(&mut document, &[apartments], vec![said.clone()]);
    let built = palette
        .get(palette.built(apartments, Said::of(&said)))
        .expect("it is built so");
    // Fourteen homes on three floors of 480 m²: two floors hold nine whole homes.
    assert_eq!(built.homes_per_lot, 9);
    assert_eq!(built.floor_area_m2(FloorUse::Shop), 480);
    assert_eq!(
        built.jobs_per_lot_ten_thousandths(),
        480 * u64::from(usual_jobs_per_floor_hectare(FloorUse::Shop))
    );
}

#[test]
fn a_house_of_one_story_stays_a_house_and_as_a_shop_holds_none() {
    let mut document = document();
    let house = named(&document, "Attached house");
    let sides = vec![
        side(None, Some(1), false),
        side(None, Some(1), true),
        side(None, Some(0), false),
    ];
    let palette = palette_of(&mut document, &[house], sides.clone());
    let built = |place: usize| palette.built(house, Said::of(&sides[place]));
    let homes = |place: usize| palette.get(built(place)).expect("it is built so").homes_per_lot;
    assert_eq!((homes(0), homes(1)), (1, 0));
    assert_eq!(built(2), built(0), "a building of no story is as low as can be");
}

#[test]
fn what_changes_nothing_is_no_type_of_its_own() {
    let mut document = document();
    let shops = named(&document, "Homes above shops");
    let higher = side(None, Some(9), true);
    let mut sideways = side(None, Some(1), true);
    sideways.fronting = Fronting::Side;
    let palette = palette_of(&mut document, &[shops], vec![higher.clone(), sideways.clone()]);
    assert_eq!(palette.len(), document.building_types.len());
    assert_eq!(palette.built(shops, Said::of(&higher)), shops);
    assert_eq!(palette.built(shops, Said::of(&sideways)), shops);
}

#[test]
fn sides_that_say_the_same_share_a_type_and_its_entry_is_stable() {
    let mut document = document();
    let house = named(&document, "Two-family house");
    let apartments = named(&document, "Apartment house");
    let sides = vec![side(None, Some(1), true), side(Some(house), Some(1), true)];
    let palette = palette_of(&mut document, &[house, apartments], sides);
    let own = document.building_types.len();
    let added: Vec<&str> = palette.iter().skip(own).map(|built| built.entry_id.as_str()).collect();
    let expected = [house, apartments].map(|id| format!("type_{id}_1_stories_shopfront"));
    assert_eq!(added, expected);
    for (place, built) in palette.iter().enumerate() {
        assert_eq!(palette.place(built.id), Some(place));
        assert_eq!(document.building_types.contains_key(&built.id), place < own);
    }
}

/// A block of apartment houses between four streets; its southern side says this.
fn block(sides: Vec<SideUse>) -> Document {
    let corners = rectangle_ft(0, 0, 600, 300);
    let mut marks: Vec<Mark> = (0..4)
        .map(|place| street(&[corners[place], corners[(place + 1) % 4]], 60))
        .collect();
    let Mark::Use(mut held) = use_at(feet(300, 150), &[(5, 100)]) else {
        panic!("a use")
    };
    held.sides = sides;
    marks.push(Mark::Use(held));
    plan(corners, marks)
}

#[test]
fn every_figure_follows_what_one_side_says() {
    let south = |stories, shopfront| SideUse {
        at: feet(300, 0),
        ..side(None, stories, shopfront)
    };
    let plain = block(vec![south(None, false)]);
    assert_eq!(plain.building_types[&BuildingTypeId(5)].name, "Apartment house");
    let fabric = crate::fabric::Fabric::of(&plain, FIRST, &mut crate::fabric::LandCache::default());
    let painted = painted_faces(
        &plain,
        FIRST,
        &fabric,
        &mut crate::measures::frontage::PaintedCache::default(),
    );
    let laid = &painted[0].laid.lots;
    let faced = fabric.face(painted[0].face).expect("the block");
    let spoken = side_spoken_of(&fabric.arrangement, &fabric.lines, &faced.sides, &south(None, false));
    let south_lots = laid.iter().filter(|lot| Some(lot.side as usize) == spoken).count() as f64;
    let all_lots = laid.len() as f64;
    assert!(south_lots >= 3.0 && south_lots < all_lots, "{south_lots} of {all_lots}");

    let before = measured(&plain);
    let after = measured(&block(vec![south(Some(2), true)]));
    check(
        "homes of the type's own",
        number(&before, "homes.count"),
        14.0 * all_lots,
        1e-9,
    );
    // One floor of homes out of three holds four whole homes.
    let lower = 14.0 * (all_lots - south_lots) + 4.0 * south_lots;
    check("homes", number(&after, "homes.count"), lower, 1e-9);
    check("people", number(&after, "people.count"), 2.0 * lower, 1e-9);
    let row = |of| at(&after, "homes.by_building_type", of);
    check(
        "homes of the side",
        row("type_5_2_stories_shopfront"),
        4.0 * south_lots,
        1e-9,
    );
    check("homes elsewhere", row("type_5"), 14.0 * (all_lots - south_lots), 1e-9);
    check(
        "shop floor",
        at(&after, "mix.floor_area", "shops"),
        480.0 * south_lots,
        1e-9,
    );
    check(
        "home floor",
        at(&after, "mix.floor_area", "homes"),
        1_440.0 * (all_lots - south_lots) + 480.0 * south_lots,
        1e-9,
    );
    for land in ["land.site", "land.buildable", "density.residential_lot_land"] {
        check(land, number(&after, land), number(&before, land), 1e-6);
    }
}

#[test]
fn painted_land_kept_from_another_document_is_that_painted_anew() {
    use crate::measures::frontage::{Painted, PaintedCache};
    let south = |stories, shopfront| SideUse {
        at: feet(300, 0),
        ..side(None, stories, shopfront)
    };
    let north = |stories| SideUse {
        street: MarkId(2),
        at: feet(300, 300),
        ..side(None, stories, false)
    };
    let changed = |change: fn(&mut Document)| {
        let mut document = block(vec![south(Some(2), true)]);
        change(&mut document);
        document
    };
    // Of each document: whether its land is that of the one before.
    let documents = [
        (block(Vec::new()), false),
        (block(Vec::new()), true),
        (block(vec![south(None, false)]), false),
        (block(vec![south(Some(2), true)]), false),
        (block(vec![south(Some(2), true)]), true),
        // Built as the same types by their ids; what those hold is the palette's.
        (block(vec![south(Some(1), true)]), true),
        (block(vec![south(Some(1), false)]), true),
        (block(vec![north(Some(1))]), false),
        (block(vec![north(Some(1)), south(Some(1), false)]), false),
        (changed(|_| {}), false),
        // Its name and its homes are counted elsewhere.
        (
            changed(|document| {
                if let Some(held) = document.building_types.get_mut(&BuildingTypeId(5)) {
                    held.name = "Flats".to_owned();
                    held.homes_per_lot += 1;
                }
            }),
            true,
        ),
        // No more stories than are said, and no homes on the ground: built as it is.
        (
            changed(|document| {
                if let Some(held) = document.building_types.get_mut(&BuildingTypeId(5)) {
                    held.stories.truncate(1);
                    held.stories[0].floor_use = FloorUse::Gathering;
                }
            }),
            false,
        ),
        (
            changed(|document| {
                if let Some(held) = document.building_types.get_mut(&BuildingTypeId(5)) {
                    held.lot_width_mm += 1_000;
                }
            }),
            false,
        ),
    ];
    let mut lands = crate::fabric::LandCache::default();
    let (mut painted, mut cache) = (Painted::default(), PaintedCache::default());
    for (place, (document, is_kept)) in documents.into_iter().enumerate() {
        let fabric = crate::fabric::Fabric::of(&document, FIRST, &mut lands);
        let before = painted.faces.first().map(|face| std::sync::Arc::clone(&face.land));
        painted.renew(&document, FIRST, &fabric, &mut cache);
        let anew = painted_faces(&document, FIRST, &fabric, &mut PaintedCache::default());
        assert_eq!(painted, anew, "document {place}");
        assert!(!painted[0].laid.lots.is_empty(), "document {place}");
        let same = before.is_some_and(|before| std::sync::Arc::ptr_eq(&before, &painted[0].land));
        assert_eq!(same, is_kept, "document {place}");
    }
}
