//! Reading stored values one by one, keeping the place and every fault.

use super::Stored;
use crate::exchange::fault::{FileFault, FileFaultKind};
use crate::exchange::json::{Json, write_text};
use crate::say;

/// Most faults listed for one file; what lies beyond is counted.
const MOST_FAULTS: usize = 10_000;

/// One step down into a JSON value.
#[derive(Clone, Debug)]
enum Step {
    Member(String),
    Index(usize),
}

/// Where in a file we are, and what was found wrong so far.
#[derive(Debug, Default)]
pub(crate) struct Reader {
    path: Vec<Step>,
    feature: Option<(usize, Option<String>)>,
    faults: Vec<FileFault>,
    unlisted: usize,
}

impl Reader {
    /// Notes a fault at the present place.
    pub(crate) fn fault(&mut self, kind: FileFaultKind) {
        if self.faults.len() >= MOST_FAULTS {
            self.unlisted += 1;
            return;
        }
        let (feature, id) = self
            .feature
            .clone()
            .map_or((None, None), |(index, id)| (Some(index), id));
        let pointer = self.pointer();
        self.faults.push(FileFault {
            pointer,
            feature,
            id,
            kind,
        });
    }

    /// Notes that something else was expected than `found`.
    pub(crate) fn expected(&mut self, expected: impl Into<String>, found: &Json) {
        let found = match found {
            Json::Text(text) if text.len() <= 40 => {
                let mut quoted = String::new();
                write_text(text, &mut quoted);
                say!("exchange-value-this-text", text = quoted)
            }
            Json::Integer(integer) => integer.to_string(),
            Json::Number(number) => number.to_string(),
            other => other.kind().to_owned(),
        };
        self.fault(FileFaultKind::Expected {
            expected: expected.into(),
            found,
        });
    }

    /// Notes that one of these words was expected, which are parted by spaces.
    pub(crate) fn expected_one_of(&mut self, words: &str, found: &Json) {
        self.expected(say!("exchange-value-one-of", words = words), found);
    }

    /// The place of a text among these words; a fault and `None` when it is none of them.
    pub(crate) fn word_among(&mut self, words: &[&str], found: &Json) -> Option<usize> {
        let text = found.as_text();
        let place = words.iter().position(|word| text == Some(*word));
        if place.is_none() {
            self.expected_one_of(&words.join(" "), found);
        }
        place
    }

    /// A whole number within these bounds; a fault and `None` when it is none.
    pub(crate) fn whole_number_within(&mut self, least: i64, most: i64, found: &Json) -> Option<i64> {
        let number = found.as_integer().filter(|number| (least..=most).contains(number));
        if number.is_none() {
            let (least, most) = (least.to_string(), most.to_string());
            self.expected(
                say!("exchange-value-whole-number-within", least = least, most = most),
                found,
            );
        }
        number
    }

    /// Reads inside the member `name`.
    pub(crate) fn within<T>(&mut self, name: &str, read: impl FnOnce(&mut Self) -> T) -> T {
        self.enter(Step::Member(name.to_owned()));
        let value = read(self);
        self.leave();
        value
    }

    /// Reads inside the list entry `index`.
    pub(crate) fn within_entry<T>(&mut self, index: usize, read: impl FnOnce(&mut Self) -> T) -> T {
        self.enter(Step::Index(index));
        let value = read(self);
        self.leave();
        value
    }

    fn missing(&mut self, name: &'static str) {
        self.fault(FileFaultKind::Missing(name));
    }

    fn enter(&mut self, step: Step) {
        self.path.push(step);
    }

    fn leave(&mut self) {
        self.path.pop();
    }

    /// Reads inside a feature.
    pub(crate) fn within_feature<T>(
        &mut self,
        index: usize,
        id: Option<String>,
        read: impl FnOnce(&mut Self) -> T,
    ) -> T {
        let outer = self.feature.replace((index, id));
        let value = read(self);
        self.feature = outer;
        value
    }

    /// All faults, in the order they were met.
    pub(crate) fn into_faults(mut self) -> Vec<FileFault> {
        if self.unlisted > 0 {
            let kind = FileFaultKind::More(self.unlisted);
            self.faults.push(FileFault {
                pointer: String::new(),
                feature: None,
                id: None,
                kind,
            });
        }
        self.faults
    }

    /// How many faults were met so far.
    pub(crate) const fn fault_count(&self) -> usize {
        self.faults.len() + self.unlisted
    }

    fn pointer(&self) -> String {
        let mut pointer = String::new();
        for step in &self.path {
            pointer.push('/');
            match step {
                Step::Member(name) => pointer.push_str(&name.replace('~', "~0").replace('/', "~1")),
                Step::Index(index) => pointer.push_str(&index.to_string()),
            }
        }
        pointer
    }
}

/// The members of an object, each to be taken once.
pub(crate) struct Members<'a> {
    entries: &'a [(String, Json)],
    is_taken: Vec<bool>,
}

impl<'a> Members<'a> {
    /// The members of `json`; a fault and `None` when it is no object.
    pub(crate) fn of(json: &'a Json, reader: &mut Reader) -> Option<Self> {
        let Json::Members(entries) = json else {
            reader.expected(say!("exchange-value-object"), json);
            return None;
        };
        Some(Self {
            entries,
            is_taken: vec![false; entries.len()],
        })
    }

    /// The value of a member, not yet read; later ones of its name are faults.
    pub(crate) fn take_json(&mut self, name: &str, reader: &mut Reader) -> Option<&'a Json> {
        let mut found = None;
        for (index, (held, value)) in self.entries.iter().enumerate() {
            if held != name {
                continue;
            }
            self.is_taken[index] = true;
            if found.is_none() {
                found = Some(value);
            } else {
                reader.fault(FileFaultKind::RepeatedMember(name.to_owned()));
            }
        }
        found
    }

    /// The value of a member, or what a missing one stands for; a fault and `None` when there is neither.
    pub(crate) fn take<T: Stored>(&mut self, name: &'static str, reader: &mut Reader) -> Option<T> {
        let Some(json) = self.enter(name, reader) else {
            let blank = T::blank();
            if blank.is_none() {
                reader.missing(name);
            }
            return blank;
        };
        let value = T::from_json(json, reader);
        reader.leave();
        value
    }

    /// The value of a member, with the reader inside it.
    fn enter(&mut self, name: &str, reader: &mut Reader) -> Option<&'a Json> {
        let json = self.take_json(name, reader)?;
        reader.enter(Step::Member(name.to_owned()));
        Some(json)
    }

    /// Notes every member that was not taken.
    pub(crate) fn finish(self, reader: &mut Reader) {
        for ((name, _), is_taken) in self.entries.iter().zip(self.is_taken) {
            if !is_taken {
                reader.fault(FileFaultKind::UnknownMember(name.clone()));
            }
        }
    }
}
