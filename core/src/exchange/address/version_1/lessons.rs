//! What both sides know before the first word: the plans that were shipped when this version began, and how plans and
//! their names usually look.
//!
//! The chances learn words, then the site that every shipped sample stands on, told by this very version. A plan begun
//! from a new sheet or from a sample is told as what differs; any other gains what was learned.

use std::cell::OnceCell;
use std::rc::Rc;

use crate::order::OrderedMap;
use crate::plan::building::BuildingType;
use crate::plan::defaults::default_settings;
use crate::plan::document::{Document, Heading, Site};
use crate::plan::ids::{BuildingTypeId, StreetSectionId};
use crate::plan::street::StreetSection;

use super::coder::Coder;
use super::palettes::Entries;
use super::walk::{Walk, fields};

/// Words of plans in the languages of the program, one line after the other.
const VOCABULARY: &str = include_str!("vocabulary.txt");

/// The shipped names of street sections and building types in Spanish, in the order of their ids.
const SPANISH: &str = include_str!("spanish.txt");

/// The samples' site and palettes, told by this version to one who has learned words alone. Never written anew.
pub(super) const SHIPPED: &[u8] = include_bytes!("shipped.bin");

/// Entries of the palettes from this id on belong to the samples.
const FIRST_OF_SAMPLES: u32 = 100;

/// Palettes as they were shipped.
pub(super) struct Palettes {
    pub sections: Entries<StreetSection>,
    pub types: Entries<BuildingType>,
}

/// What was shipped: palettes of new sheets by language, then those of the samples; and the site of the samples.
pub(super) struct Shipped {
    pub palettes: Vec<Palettes>,
    pub sample: Document,
}

impl Shipped {
    /// Nothing: for telling the samples' site itself.
    pub(super) fn nothing() -> Self {
        Self {
            palettes: vec![Palettes {
                sections: Vec::new(),
                types: Vec::new(),
            }],
            sample: nowhere(),
        }
    }

    /// The number of the palettes that a document's are most like.
    pub(super) fn likest(&self, document: &Document) -> usize {
        let same = |palettes: &Palettes| {
            let sections = palettes.sections.iter();
            let types = palettes.types.iter();
            let same_sections =
                sections.filter(|(id, held)| document.street_sections.get(&StreetSectionId(*id)) == Some(held));
            let same_types = types.filter(|(id, held)| document.building_types.get(&BuildingTypeId(*id)) == Some(held));
            same_sections.count() + same_types.count()
        };
        let mut best = (0, 0);
        for (place, palettes) in self.palettes.iter().enumerate() {
            let same = same(palettes);
            if same > best.1 {
                best = (place, same);
            }
        }
        best.0
    }

    /// Whether these palettes are those of the samples.
    pub(super) fn is_sample(&self, number: usize) -> bool {
        number > 0 && number + 1 == self.palettes.len()
    }
}

/// A document with nothing in it.
pub(super) fn nowhere() -> Document {
    Document {
        heading: Heading {
            name: String::new(),
            about: String::new(),
            origin_longitude_ndeg: 0,
            origin_latitude_ndeg: 0,
        },
        site: Site::default(),
        program: Vec::new(),
        street_sections: OrderedMap::new(),
        building_types: OrderedMap::new(),
        phases: OrderedMap::new(),
        settings: default_settings(),
        topography: None,
        base_image: None,
        alternatives: OrderedMap::new(),
    }
}

/// Has learned words alone.
pub(super) fn with_words() -> Coder {
    let mut coder = Coder::learning();
    for line in VOCABULARY.lines().chain(SPANISH.lines()) {
        coder.letters(fields::NAME, &mut line.to_owned());
    }
    coder
}

thread_local! {
    /// What was learned: some milliseconds of work that every address begins with.
    static LEARNED: OnceCell<(Coder, Rc<Shipped>)> = const { OnceCell::new() };
}

/// Has learned all, and what was shipped. Cost: a copy of a megabyte, but for the first time.
pub(super) fn learned() -> (Coder, Rc<Shipped>) {
    LEARNED.with(|held| held.get_or_init(learn).clone())
}

fn learn() -> (Coder, Rc<Shipped>) {
    let mut coder = with_words();
    coder.read(SHIPPED.to_vec());
    let mut walk = Walk::new(coder);
    let mut sample = nowhere();
    walk.document(&mut sample, &mut [false; 2], &Shipped::nothing());
    let sections: Entries<StreetSection> = sample
        .street_sections
        .iter()
        .map(|(id, held)| (id.0, held.clone()))
        .collect();
    let types: Entries<BuildingType> = sample
        .building_types
        .iter()
        .map(|(id, held)| (id.0, held.clone()))
        .collect();
    let english = Palettes {
        sections: sections
            .iter()
            .filter(|(id, _)| *id < FIRST_OF_SAMPLES)
            .cloned()
            .collect(),
        types: types.iter().filter(|(id, _)| *id < FIRST_OF_SAMPLES).cloned().collect(),
    };
    let mut spanish = Palettes {
        sections: english.sections.clone(),
        types: english.types.clone(),
    };
    let names = spanish.sections.iter_mut().map(|(_, held)| &mut held.name);
    let names = names.chain(spanish.types.iter_mut().map(|(_, held)| &mut held.name));
    for (name, spanish) in names.zip(SPANISH.lines()) {
        spanish.clone_into(name);
    }
    let palettes = vec![english, spanish, Palettes { sections, types }];
    (walk.coder, Rc::new(Shipped { palettes, sample }))
}
