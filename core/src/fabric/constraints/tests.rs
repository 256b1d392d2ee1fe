use super::*;
use crate::fabric::land::{Bounds, land_key, land_of};
use crate::fabric::{Arrangement, FaceId, Outliner, SourceId, SourceSegment};

fn rectangle(west: i32, south: i32, east: i32, north: i32) -> Vec<PlanPoint> {
    let at = |x: i32, y: i32| PlanPoint::new(x * 1000, y * 1000);
    vec![at(west, south), at(east, south), at(east, north), at(west, north)]
}

/// A constraint with its answers as letters: b, s, d, w where it says no to building, site, buildable density, walking.
fn constraint(held_by: HeldBy, says_no: &str, outline: Vec<PlanPoint>) -> Constraint {
    Constraint {
        held_by,
        answers: ["b", "s", "d", "w"].map(|letter| !says_no.contains(letter)),
        outline,
    }
}

/// A face of 100 m by 80 m along streets of 20 m, so 80 m by 60 m between rights-of-way.
fn land(constraints: Vec<Constraint>) -> crate::fabric::land::Land {
    let ring = rectangle(0, 0, 100, 80);
    let segments: Vec<SourceSegment> = (0..4)
        .map(|side| SourceSegment::new(ring[side], ring[(side + 1) % 4], SourceId(side as u32)))
        .collect();
    let arrangement = Arrangement::of(&segments);
    let bounded: Vec<(Bounds, Constraint)> = constraints
        .into_iter()
        .map(|one| (Bounds::of(&one.outline), one))
        .collect();
    let key = land_key(
        &arrangement,
        &mut Outliner::new(&arrangement),
        FaceId(1),
        |_| 10_000.0,
        &bounded,
    );
    land_of(&key)
}

/// Square meters, from twice the square millimeters.
fn m2(twice_mm2: i128) -> i128 {
    assert_eq!(twice_mm2 % 2_000_000, 0);
    twice_mm2 / 2_000_000
}

#[track_caller]
fn check(land: &crate::fabric::land::Land, switch: Option<LandSwitch>, expected: &[(HeldBy, i128)]) {
    let counted: Vec<(HeldBy, i128)> = match switch {
        None => land.constrained.under_any().collect(),
        Some(switch) => land.constrained.says_no_to(switch).collect(),
    };
    let counted: Vec<_> = counted
        .into_iter()
        .filter(|(_, area)| *area != 0)
        .map(|(held_by, area)| (held_by, m2(area)))
        .collect();
    assert_eq!(counted, expected, "{switch:?}");
}

#[test]
fn land_without_constraints_is_streets_and_buildable_land() {
    let land = land(vec![constraint(HeldBy::Water, "b", rectangle(200, 0, 300, 80))]);
    assert_eq!(land.constrained, ConstrainedLand::default());
    assert_eq!(
        (m2(land.twice_area_mm2), m2(land.twice_right_of_way_mm2())),
        (4_800, 3_200)
    );
}

#[test]
fn overlapping_constraints_are_counted_once_in_the_stated_order() {
    // The floodplain is the western half, 30 m of it between rights-of-way; the creek takes 10 m by 60 m out of it.
    let land = land(vec![
        constraint(HeldBy::Floodplain, "bd", rectangle(-10, -10, 40, 90)),
        constraint(HeldBy::Water, "bdw", rectangle(20, -10, 30, 90)),
    ]);
    let both = [(HeldBy::Water, 600), (HeldBy::Floodplain, 1_200)];
    check(&land, None, &both);
    check(&land, Some(LandSwitch::Buildable), &both);
    check(&land, Some(LandSwitch::CountsInBuildable), &both);
    check(&land, Some(LandSwitch::CountsInSite), &[]);
    check(&land, Some(LandSwitch::Walkable), &[(HeldBy::Water, 600)]);
    assert_eq!(
        (m2(land.twice_area_mm2), m2(land.twice_right_of_way_mm2())),
        (3_000, 3_200)
    );
}

#[test]
fn the_strictest_of_overlapping_answers_holds() {
    // The wood may be built upon and does not count; half of it is an easement that counts and may not be built upon.
    let land = land(vec![
        constraint(HeldBy::Keep, "s", rectangle(10, 10, 30, 70)),
        constraint(HeldBy::Easement, "b", rectangle(20, 10, 40, 70)),
    ]);
    check(&land, None, &[(HeldBy::Easement, 1_200), (HeldBy::Keep, 600)]);
    check(&land, Some(LandSwitch::Buildable), &[(HeldBy::Easement, 1_200)]);
    check(&land, Some(LandSwitch::CountsInSite), &[(HeldBy::Keep, 1_200)]);
}

#[test]
fn a_parcel_holds_land_back_when_its_owner_is_left_out() {
    let parcel = Mark::Parcel(Parcel {
        label: "7".to_owned(),
        outline: rectangle(10, 10, 20, 20),
        owner: OwnerGroup::Unwilling,
        beside: None,
    });
    let made = |group| Constraint::of(&parcel, |owner| owner == group);
    assert_eq!(made(OwnerGroup::Willing), None);
    let land = land(made(OwnerGroup::Unwilling).into_iter().collect());
    for switch in [
        LandSwitch::Buildable,
        LandSwitch::CountsInSite,
        LandSwitch::CountsInBuildable,
    ] {
        check(&land, Some(switch), &[(HeldBy::OwnerLeftOut, 100)]);
    }
    check(&land, Some(LandSwitch::Walkable), &[]);
}
