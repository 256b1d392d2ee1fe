//! The leaf values of streets and blocks.

use super::ways::CountedPlace;
use super::{StreetInputs, counts_heads, no_boundary};
use crate::figures::axis::{Entry, Places};
use crate::figures::inputs::{Inputs, numbers};
use crate::figures::leaf::Cell;
use crate::network::counting_rule::COUNTING_RULES;
use crate::plan::PlanPoint;
use crate::plan::document::UnitSystem;
use crate::say;

/// Why no home is behind a single place when there is no way in.
#[must_use]
pub fn no_way_in() -> &'static str {
    say!("measures-no-way-in")
}

impl StreetInputs {
    /// Sets the leaves that [`StreetInputs::of_first_level`] counts.
    pub fn set_first_level(&self, inputs: &mut Inputs) {
        inputs.set_entries("street_section", self.sections.clone());
        inputs.set_counted("streets.drawn", numbers(&self.length_m.concat()), Some("streets"));
        set_listed(
            inputs,
            ("dead_end", "head"),
            "streets.dead_end_lengths",
            &self.dead_ends,
            "dead_ends",
        );
        self.set_ways(inputs);
        self.set_blocks(inputs);
    }

    /// Sets all other leaves that [`super::declare`] declares.
    pub fn set_rest(&self, inputs: &mut Inputs) {
        self.set_counts(inputs);
        set_listed(
            inputs,
            ("street_part", "part"),
            "streets.part_nodes",
            &self.parts,
            "street_parts",
        );
        inputs.set_counted("streets.part_links", numbers(&self.part_links), Some("street_parts"));
        set_listed(
            inputs,
            ("boundary_gap", "gap"),
            "streets.boundary_gaps",
            &self.boundary_gaps,
            "boundary_gaps",
        );
        inputs.set_counted("streets.frontage", numbers(&self.frontage_m), Some("frontage"));
        inputs.set_counted(
            "land.standing_right_of_way",
            numbers(&[self.standing_m2]),
            Some("streets"),
        );
        self.sides.set(inputs);
        self.set_sun(inputs);
    }

    fn set_counts(&self, inputs: &mut Inputs) {
        // A table over all rules even where nothing was counted.
        let rows = || {
            COUNTING_RULES
                .iter()
                .enumerate()
                .map(|(place, rule)| (rule, self.rules.get(place)))
        };
        let intersections: Vec<f64> = rows()
            .flat_map(|(_, row)| row.map_or([0; 3], |row| row.intersections).map(f64::from))
            .collect();
        inputs.set_counted(
            "streets.counted_intersections",
            numbers(&intersections),
            Some("counted_nodes"),
        );
        let heads = rows().map(|(rule, row)| {
            if counts_heads(rule) {
                Cell::Number(row.map_or(0.0, |row| f64::from(row.heads)))
            } else {
                Cell::Unknown(say!("measures-no-heads").to_owned())
            }
        });
        inputs.set_counted("streets.counted_heads", heads.collect(), Some("counted_nodes"));
        let links: Vec<f64> = rows()
            .map(|(_, row)| row.map_or(0.0, |row| row.link_halves as f64 / 2.0))
            .collect();
        inputs.set_counted("streets.counted_links", numbers(&links), Some("streets"));
        let lands = rows().map(|(_, row)| {
            let land_m2 = row.and_then(|row| row.land_m2);
            land_m2.map_or_else(|| Cell::Unknown(no_boundary().to_owned()), Cell::Number)
        });
        inputs.set_counted("streets.density_land", lands.collect(), Some("site"));
        let least = rows().map(|(rule, _)| {
            let asked = rule.least_ratio;
            asked.map_or_else(|| Cell::Unknown(say!("measures-no-least").to_owned()), Cell::Number)
        });
        inputs.set_chosen("streets.least_link_node_ratio", least.collect());
    }

    fn set_ways(&self, inputs: &mut Inputs) {
        let ways = &self.ways;
        set_listed(
            inputs,
            ("way_in", "way"),
            "streets.leading_in",
            &ways.ways_in,
            "ways_in",
        );
        let streets = ways.streets_leading_in.iter().map(|count| f64::from(*count));
        let streets: Vec<f64> = streets.collect();
        inputs.set_counted("streets.streets_leading_in", numbers(&streets), Some("ways_in"));
        if ways.behind.is_empty() {
            inputs.set_entries("single_place", vec![Entry::new("none", say!("measures-none-way-in"))]);
            let unknown = vec![Cell::Unknown(no_way_in().to_owned())];
            inputs.set_counted("streets.homes_behind", unknown, Some("single_places"));
        } else {
            set_listed(
                inputs,
                ("single_place", "place"),
                "streets.homes_behind",
                &ways.behind,
                "single_places",
            );
        }
        let unreached = [ways.homes_cut_off, ways.homes_on_paths, ways.homes_without_front];
        inputs.set_counted(
            "streets.fronts_not_reached",
            numbers(&unreached),
            Some("fronts_not_reached"),
        );
    }

    fn set_blocks(&self, inputs: &mut Inputs) {
        let told = match self.units {
            UnitSystem::Metric => |at| block_at(at, UnitSystem::Metric),
            UnitSystem::UsCustomary => |at| block_at(at, UnitSystem::UsCustomary),
        };
        let places = Places {
            word: "block",
            at: self.blocks.iter().map(|block| [block.at.x_mm, block.at.y_mm]).collect(),
            told,
        };
        inputs.set_places("block", places);
        let perimeters = self.blocks.iter().map(|block| Cell::Number(block.perimeter_m));
        inputs.set_counted("blocks.perimeters", perimeters.collect(), Some("blocks"));
        let sides = self.blocks.iter().map(|block| Cell::Number(block.longest_side_m));
        inputs.set_counted("blocks.longest_sides", sides.collect(), Some("blocks"));
    }

    fn set_sun(&self, inputs: &mut Inputs) {
        inputs.set_counted("sun.east_west_streets", numbers(&[self.east_west_m]), Some("streets"));
        inputs.set_counted(
            "sun.east_west_blocks",
            numbers(&[f64::from(self.east_west_blocks)]),
            Some("blocks"),
        );
        let (all, solar) = self.solar_lots;
        inputs.set_counted("sun.lots", numbers(&[all]), Some("lots"));
        inputs.set_counted("sun.solar_lots", numbers(&[solar]), Some("lots"));
    }
}

fn block_at([x_mm, y_mm]: [i32; 2], units: UnitSystem) -> String {
    say!("measures-block-at").to_owned() + " " + &PlanPoint::new(x_mm, y_mm).in_words(units)
}

/// Sets an axis of places, each with a number after `word` as its id, and what is counted at them.
fn set_listed(inputs: &mut Inputs, (axis, word): (&str, &str), leaf: &str, places: &[CountedPlace], counted: &str) {
    let entries = (1..).zip(places);
    let entries = entries.map(|(number, place): (u32, _)| {
        let id = [word, "_", &number.to_string()].concat();
        Entry::new(id, place.title.clone())
    });
    inputs.set_entries(axis, entries.collect());
    let cells = places.iter().map(|place| Cell::Number(place.count));
    inputs.set_counted(leaf, cells.collect(), Some(counted));
}
