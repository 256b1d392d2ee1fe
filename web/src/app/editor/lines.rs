//! Lines of an editor: plain data that one component of the page shows.

use hobnail_core::plan::document::UnitSystem;

use super::quantity::Bounded;

/// Which part of an editor a line belongs to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Part {
    /// The panel itself: what opens, closes, duplicates and deletes.
    #[default]
    Panel,
    /// A street section whole.
    Section,
    /// One of its strips.
    Strip,
    /// A building type whole.
    BuildingType,
    /// One of its stories.
    Story,
    /// The use of the selected land whole.
    Land,
    /// One portion of its program.
    Portion,
    /// One of its sides.
    Side,
    /// A setting of walking.
    Walking,
    /// The cut.
    Cut,
    /// What grade streets may have.
    Grade,
    /// What only says something.
    Said,
}

/// What a line is for: the part, which of several, and what of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Key {
    /// The part.
    pub part: Part,
    /// Which of several.
    pub index: u16,
    /// What of it.
    pub field: u8,
}

impl Key {
    /// A key.
    #[must_use]
    pub const fn new(part: Part, index: u16, field: u8) -> Self {
        Self { part, index, field }
    }

    /// The key of something the panel itself does.
    #[must_use]
    pub const fn panel(field: u8) -> Self {
        Self::new(Part::Panel, 0, field)
    }

    /// The id of its element.
    #[must_use]
    pub fn id(self) -> String {
        let part = match self.part {
            Part::Panel => "do",
            Part::Section => "section",
            Part::Strip => "strip",
            Part::BuildingType => "type",
            Part::Story => "story",
            Part::Land => "land",
            Part::Portion => "portion",
            Part::Side => "side",
            Part::Walking => "walking",
            Part::Cut => "cut",
            Part::Grade => "grade",
            Part::Said => "said",
        };
        part.to_owned() + "-" + &self.index.to_string() + "-" + &self.field.to_string()
    }
}

/// What a line looks like.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Kind {
    /// A title.
    #[default]
    Title,
    /// A sentence.
    Words,
    /// A sentence to heed.
    Warning,
    /// A name and its value.
    Fact,
    /// A number with less and more.
    Number,
    /// A text.
    Text,
    /// One of several.
    Choice,
    /// A box to tick.
    Check,
    /// A button.
    Command,
    /// A slider from 0 to 1000.
    Slider,
}

/// One line of an editor.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Line {
    /// What it is for.
    pub key: Key,
    /// What it looks like.
    pub kind: Kind,
    /// What it is, in words.
    pub label: String,
    /// What it holds: a number as shown, a text, a sentence, the sign of a button, the place of the option chosen.
    pub value: String,
    /// Its unit, or what is said beside it.
    pub more: String,
    /// What is to be known of it.
    pub hint: String,
    /// What to choose from.
    pub options: Vec<String>,
    /// Whether it is ticked, or stands open.
    pub is_on: Option<bool>,
    /// Whether it can not be done now.
    pub is_off: bool,
    /// Whether it shares its row with others, its label heard and not seen.
    pub is_cell: bool,
    /// Why the last change was refused; empty where it was not.
    pub refused: String,
}

impl Line {
    fn of(key: Key, kind: Kind, label: impl Into<String>) -> Self {
        Self {
            key,
            kind,
            label: label.into(),
            ..Self::default()
        }
    }

    /// A title.
    #[must_use]
    pub fn title(index: u16, words: impl Into<String>) -> Self {
        Self::of(Key::new(Part::Said, index, 0), Kind::Title, words)
    }

    /// A sentence.
    #[must_use]
    pub fn words(index: u16, words: impl Into<String>) -> Self {
        Self::of(Key::new(Part::Said, index, 1), Kind::Words, words)
    }

    /// A sentence to heed.
    #[must_use]
    pub fn warning(index: u16, words: impl Into<String>) -> Self {
        Self::of(Key::new(Part::Said, index, 2), Kind::Warning, words)
    }

    /// A name and its value.
    #[must_use]
    pub fn fact(index: u16, label: &str, value: String) -> Self {
        Self {
            value,
            ..Self::of(Key::new(Part::Said, index, 3), Kind::Fact, label)
        }
    }

    /// A number.
    #[must_use]
    pub fn number(key: Key, field: &Bounded, stored: f64, units: UnitSystem) -> Self {
        Self {
            value: field.quantity.text(stored, units),
            more: (field.quantity.shown(units).unit)().to_owned(),
            ..Self::of(key, Kind::Number, field.label)
        }
    }

    /// A text.
    #[must_use]
    pub fn text(key: Key, label: &str, value: &str) -> Self {
        Self {
            value: value.to_owned(),
            ..Self::of(key, Kind::Text, label)
        }
    }

    /// One of several.
    #[must_use]
    pub fn choice(key: Key, label: &str, options: Vec<String>, chosen: usize) -> Self {
        Self {
            value: chosen.to_string(),
            options,
            ..Self::of(key, Kind::Choice, label)
        }
    }

    /// A box to tick.
    #[must_use]
    pub fn check(key: Key, label: &str, is_on: bool) -> Self {
        Self {
            is_on: Some(is_on),
            ..Self::of(key, Kind::Check, label)
        }
    }

    /// A button with its words.
    #[must_use]
    pub fn command(key: Key, label: impl Into<String>) -> Self {
        Self::of(key, Kind::Command, label)
    }

    /// A small button with a sign, whose words are heard.
    #[must_use]
    pub fn sign(key: Key, sign: &str, label: String) -> Self {
        Self {
            value: sign.to_owned(),
            is_cell: true,
            ..Self::of(key, Kind::Command, label)
        }
    }

    /// The slider.
    #[must_use]
    pub fn slider(key: Key, label: &str, thousandths: u16, more: String) -> Self {
        Self {
            value: thousandths.to_string(),
            more,
            ..Self::of(key, Kind::Slider, label)
        }
    }

    /// The line in a row with others, where its words are heard and not seen.
    #[must_use]
    pub fn in_row(self, label: String) -> Self {
        Self {
            label,
            is_cell: true,
            ..self
        }
    }

    /// The line with what is to be known of it.
    #[must_use]
    pub fn with_hint(self, hint: String) -> Self {
        Self { hint, ..self }
    }

    /// The line, where it can not be done now.
    #[must_use]
    pub fn off_if(self, is_off: bool) -> Self {
        Self { is_off, ..self }
    }
}
