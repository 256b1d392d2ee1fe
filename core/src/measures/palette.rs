//! The building types of a plan as they are built: those of the palette, then those that what is said of a side, or of the lots beside a
//! line, changes.
//!
//! A side may say how many stories are built along it at most, and that the ground floor opens to the street as shops; a
//! fence or a property line may say how many stories are built beside it at most. The fewest count.
//! A lot there is built as its type but
//! - stories above the most are left out; its homes go down with their floor area, to whole homes, and never to none
//!   while floor for homes is left: a house of fewer stories is a smaller house;
//! - a ground floor of homes or work is a shop, with the usual jobs of shop floor; the homes go down as before, and to none
//!   where no floor for homes is left.
//!
//! Lot, coverage, parking, people per home and price stay as the type has them. What is not counted: a side that asks for
//! more stories than its type has builds no more than the type.

use crate::order::OrderedSet;

use crate::plan::building::Story;
use crate::plan::defaults::usual_jobs_per_floor_hectare;
use crate::plan::land::Fronting;
use crate::plan::{AlternativeId, BuildingType, BuildingTypeId, Document, FloorUse, SideUse};
use crate::say;

/// One building type as it is built.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuiltType {
    /// Its id here: the palette's own, or one that the palette does not have.
    pub id: BuildingTypeId,
    /// The type of the palette that it is.
    pub base: BuildingTypeId,
    /// Its entry on the axis `building_type`.
    pub entry_id: String,
    /// What one lot of it holds.
    pub held: BuildingType,
    /// What a side says of it; nothing for the palette's own.
    said: Said,
}

/// What a side says of how its lots are built.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Said {
    /// Most stories.
    pub stories: Option<u8>,
    /// Whether the ground floor opens to the street as shops.
    pub shopfront: bool,
}

impl Said {
    /// What is said of a side that lots front on; nothing of one they stand sideways to.
    #[must_use]
    pub fn of(side: &SideUse) -> Self {
        if side.fronting == Fronting::Front {
            Self {
                stories: side.stories,
                shopfront: side.shopfront,
            }
        } else {
            Self::default()
        }
    }

    /// With no more stories than these.
    #[must_use]
    pub fn at_most(self, stories: Option<u8>) -> Self {
        Self {
            stories: self.stories.into_iter().chain(stories).min(),
            ..self
        }
    }

    /// What of it changes a type: fewer stories than it has, of which one always stays, and a ground floor of homes or
    /// work.
    fn of_type(self, held: &BuildingType) -> Self {
        let lower = self.stories.map(|stories| stories.max(1));
        let ground = held.stories.first().map(|story| story.floor_use);
        Self {
            stories: lower.filter(|stories| usize::from(*stories) < held.stories.len()),
            shopfront: self.shopfront && matches!(ground, Some(FloorUse::Home | FloorUse::Work)),
        }
    }
}

/// The id of a building type's entry on the axis `building_type`.
#[must_use]
pub fn type_entry_id(id: BuildingTypeId) -> String {
    format!("type_{id}")
}

/// The building types of a plan as they are built. See the [module](self).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Palette {
    types: Vec<BuiltType>,
}

impl Palette {
    /// The types of a document, then those that sides of the alternative change, by type and by what is said. Cost: the
    /// sides that say something.
    #[must_use]
    pub fn of(document: &Document, alternative: AlternativeId) -> Self {
        let own = document.building_types.iter().map(|(id, held)| BuiltType {
            id: *id,
            base: *id,
            entry_id: type_entry_id(*id),
            held: held.clone(),
            said: Said::default(),
        });
        let mut types: Vec<BuiltType> = own.collect();
        let mut next = document.building_types.keys().next_back().map_or(0, |id| id.0);
        for (base, said) in spoken_of(document, alternative) {
            let Some(held) = document.building_types.get(&base) else {
                continue;
            };
            // A plan has no four thousand million building types; should it, the last are built as their type.
            let Some(id) = next.checked_add(1) else { continue };
            next = id;
            let shopfront = if said.shopfront { "_shopfront" } else { "" };
            let stories = said.stories.map(|stories| format!("_{stories}_stories"));
            types.push(BuiltType {
                id: BuildingTypeId(id),
                base,
                entry_id: [&type_entry_id(base), &*stories.unwrap_or_default(), shopfront].concat(),
                held: built_as(held, said),
                said,
            });
        }
        Self { types }
    }

    /// The types, in order.
    pub fn iter(&self) -> std::slice::Iter<'_, BuiltType> {
        self.types.iter()
    }

    /// How many types there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.types.len()
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.types.is_empty()
    }

    /// The place of a type in the order. Ids grow with places.
    #[must_use]
    pub fn place(&self, id: BuildingTypeId) -> Option<usize> {
        // Ids mostly count up from none, so a type stands where its id says; otherwise it is looked for.
        let expected = id.0 as usize;
        if self.types.get(expected).is_some_and(|held| held.id == id) {
            return Some(expected);
        }
        self.types.binary_search_by(|held| held.id.cmp(&id)).ok()
    }

    /// What one lot of a type holds.
    #[must_use]
    pub fn get(&self, id: BuildingTypeId) -> Option<&BuildingType> {
        self.built_type(id).map(|found| &found.held)
    }

    /// The type of this id, as built.
    #[must_use]
    pub fn built_type(&self, id: BuildingTypeId) -> Option<&BuiltType> {
        self.place(id).map(|place| &self.types[place])
    }

    /// How a type is built where a side says this of it.
    #[must_use]
    pub fn built(&self, base: BuildingTypeId, said: Said) -> BuildingTypeId {
        if said == Said::default() {
            return base;
        }
        let said = self.get(base).map_or(said, |held| said.of_type(held));
        let mut types = self.types.iter();
        types
            .find(|held| held.base == base && held.said == said)
            .map_or(base, |held| held.id)
    }
}

/// Every type that a side of the alternative changes, with how, in order.
fn spoken_of(document: &Document, alternative: AlternativeId) -> OrderedSet<(BuildingTypeId, Said)> {
    let mut spoken = OrderedSet::new();
    let marks = document.alternatives.get(&alternative).map(|held| &held.marks);
    let marks = || marks.into_iter().flat_map(|marks| marks.values());
    let beside = marks().filter_map(|mark| (*mark.beside()?)?.stories);
    let limits: OrderedSet<Option<u8>> = beside.map(Some).chain([None]).collect();
    let changed = |id: BuildingTypeId, said: Said| {
        let changed = said.of_type(document.building_types.get(&id)?);
        (changed != Said::default()).then_some((id, changed))
    };
    for limit in limits.iter() {
        let said = Said::default().at_most(*limit);
        spoken.extend(document.building_types.keys().filter_map(|id| changed(*id, said)));
    }
    for held in marks().filter_map(|mark| mark.as_use()) {
        for side in &held.sides {
            let said = Said::of(side);
            if said == Said::default() {
                continue;
            }
            let program = held.program.iter().map(|portion| portion.building_type);
            let types = side.building_type.map_or_else(|| program.collect(), |own| vec![own]);
            for limit in limits.iter() {
                let said = said.at_most(*limit);
                spoken.extend(types.iter().filter_map(|id| changed(*id, said)));
            }
        }
    }
    spoken
}

/// A type built as a side changes it.
fn built_as(held: &BuildingType, said: Said) -> BuildingType {
    let mut built = held.clone();
    if let Some(stories) = said.stories {
        built.stories.truncate(usize::from(stories));
    }
    if said.shopfront
        && let Some(ground) = built.stories.first_mut()
    {
        *ground = Story {
            floor_use: FloorUse::Shop,
            jobs_per_floor_hectare: usual_jobs_per_floor_hectare(FloorUse::Shop),
            ..*ground
        };
    }
    let homes_m2 = held.floor_area_m2(FloorUse::Home);
    let left_m2 = built.floor_area_m2(FloorUse::Home);
    if let Some(whole) = (u64::from(held.homes_per_lot) * left_m2).checked_div(homes_m2) {
        let least = u64::from(held.homes_per_lot > 0 && left_m2 > 0);
        built.homes_per_lot = u32::try_from(whole.max(least)).unwrap_or(held.homes_per_lot);
    }
    built.name = match (said.stories, said.shopfront) {
        (None, false) => held.name.clone(),
        (None, true) => say!("measures-built-shopfront", name = held.name),
        (Some(stories), false) => say!("measures-built-stories", name = held.name, stories = stories),
        (Some(stories), true) => say!("measures-built-stories-shopfront", name = held.name, stories = stories),
    };
    built
}

#[cfg(test)]
mod tests;
