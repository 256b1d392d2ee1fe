//! How values are spelled in files: every name is written out here or under `v1`, apart from the names in the code, so
//! that renaming a field changes no file.
//!
//! Each format version has a folder; plan files and journal files share it.

use crate::order::Entry;
use crate::order::OrderedMap;
use crate::say;

use super::fault::FileFaultKind;
use super::json::Json;

mod reader;
pub(crate) mod v1;

pub(crate) use reader::{Members, Reader};

/// A value that is written to files.
pub(crate) trait Stored: Sized {
    /// The value as JSON.
    fn to_json(&self) -> Json;

    /// The value from JSON; `None`, with faults in `reader`, when it can not be read.
    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self>;

    /// What a missing member stands for; `None` where it must be there.
    fn blank() -> Option<Self> {
        None
    }

    /// Whether the member is left out when written.
    fn is_blank(&self) -> bool {
        false
    }
}

/// Members as they are written, in order.
#[derive(Default)]
pub(crate) struct Writing(Vec<(String, Json)>);

impl Writing {
    /// Adds a member unless it is blank.
    pub(crate) fn put(&mut self, name: &str, value: &impl Stored) {
        if !value.is_blank() {
            self.0.push((name.to_owned(), value.to_json()));
        }
    }

    /// Adds a member as it is.
    pub(crate) fn put_json(&mut self, name: &str, json: Json) {
        self.0.push((name.to_owned(), json));
    }

    /// Adds a word.
    pub(crate) fn put_word(&mut self, name: &str, word: &str) {
        self.0.push((name.to_owned(), Json::Text(word.to_owned())));
    }

    /// The object.
    pub(crate) fn done(self) -> Json {
        Json::Members(self.0)
    }

    /// The members.
    pub(crate) fn members(self) -> Vec<(String, Json)> {
        self.0
    }
}

/// A struct whose fields are members of an object.
macro_rules! stored_record {
    ($type:ident { $($name:literal => $field:ident),* $(,)? }) => {
        impl $crate::exchange::stored::Stored for $type {
            fn to_json(&self) -> $crate::exchange::json::Json {
                let mut writing = $crate::exchange::stored::Writing::default();
                $(writing.put($name, &self.$field);)*
                writing.done()
            }

            fn from_json(
                json: &$crate::exchange::json::Json,
                reader: &mut $crate::exchange::stored::Reader,
            ) -> Option<Self> {
                let mut members = $crate::exchange::stored::Members::of(json, reader)?;
                $(let $field = members.take($name, reader);)*
                members.finish(reader);
                Some(Self { $($field: $field?),* })
            }
        }
    };
}

/// An enum whose variants are words.
macro_rules! stored_words {
    ($type:ident { $($word:literal => $variant:ident),* $(,)? }) => {
        impl $crate::exchange::stored::Stored for $type {
            fn to_json(&self) -> $crate::exchange::json::Json {
                let word = match self {
                    $(Self::$variant => $word,)*
                };
                $crate::exchange::json::Json::Text(word.to_owned())
            }

            fn from_json(
                json: &$crate::exchange::json::Json,
                reader: &mut $crate::exchange::stored::Reader,
            ) -> Option<Self> {
                let place = reader.word_among(&[$($word),*], json)?;
                [$(Self::$variant),*].into_iter().nth(place)
            }
        }
    };
}

/// A palette: a list of objects, each with its id.
macro_rules! stored_palette {
    ($id:ident, $type:ident) => {
        impl $crate::exchange::stored::Stored for $crate::order::OrderedMap<$id, $type> {
            fn to_json(&self) -> $crate::exchange::json::Json {
                $crate::exchange::stored::palette_to_json(self.iter().map(|(id, held)| (id.0, held)))
            }

            fn from_json(
                json: &$crate::exchange::json::Json,
                reader: &mut $crate::exchange::stored::Reader,
            ) -> Option<Self> {
                $crate::exchange::stored::palette_from_json(json, reader, $id)
            }

            fn blank() -> Option<Self> {
                Some(Self::new())
            }

            fn is_blank(&self) -> bool {
                self.is_empty()
            }
        }
    };
}

pub(crate) use {stored_palette, stored_record, stored_words};

pub(crate) fn palette_to_json<'a, T: Stored + 'a>(entries: impl Iterator<Item = (u32, &'a T)>) -> Json {
    let entry = |(id, held): (u32, &T)| {
        let mut members = vec![("id".to_owned(), id.to_json())];
        if let Json::Members(held) = held.to_json() {
            members.extend(held);
        }
        Json::Members(members)
    };
    Json::List(entries.map(entry).collect())
}

pub(crate) fn palette_from_json<I: Ord, T: Stored>(
    json: &Json,
    reader: &mut Reader,
    id: impl Fn(u32) -> I,
) -> Option<OrderedMap<I, T>> {
    let Some(entries) = json.as_list() else {
        reader.expected(say!("exchange-value-list"), json);
        return None;
    };
    let mut palette = OrderedMap::new();
    for (index, entry) in entries.iter().enumerate() {
        reader.within_entry(index, |reader| {
            let Some(mut members) = Members::of(entry, reader) else {
                return;
            };
            let Some(number) = members.take::<u32>("id", reader) else {
                return;
            };
            let Json::Members(entries) = entry else { return };
            let rest = entries.iter().filter(|(name, _)| name != "id").cloned().collect();
            let Some(held) = T::from_json(&Json::Members(rest), reader) else {
                return;
            };
            match palette.entry(id(number)) {
                Entry::Vacant(entry) => {
                    entry.insert(held);
                }
                Entry::Occupied(_) => reader.fault(FileFaultKind::RepeatedId(number)),
            }
        });
    }
    Some(palette)
}

macro_rules! stored_integers {
    ($($type:ident),*) => {
        $(impl Stored for $type {
            fn to_json(&self) -> Json {
                Json::Integer(i64::from(*self))
            }

            fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
                let (least, most) = (i64::from(Self::MIN), i64::from(Self::MAX));
                Self::try_from(reader.whole_number_within(least, most, json)?).ok()
            }
        })*
    };
}

stored_integers!(u8, u16, u32, i8, i32, i64);

impl Stored for u64 {
    fn to_json(&self) -> Json {
        i64::try_from(*self).map_or(Json::Text(self.to_string()), Json::Integer)
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let value = match json {
            Json::Text(text) => text.parse().ok(),
            other => other.as_integer().and_then(|integer| Self::try_from(integer).ok()),
        };
        if value.is_none() {
            reader.expected(say!("exchange-value-whole-number"), json);
        }
        value
    }
}

impl Stored for bool {
    fn to_json(&self) -> Json {
        Json::Bool(*self)
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        if let Json::Bool(value) = json {
            return Some(*value);
        }
        reader.expected(say!("exchange-value-boolean"), json);
        None
    }
}

impl Stored for f64 {
    fn to_json(&self) -> Json {
        Json::Number(*self)
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let value = json.as_number();
        if value.is_none() {
            reader.expected(say!("exchange-value-number"), json);
        }
        value
    }
}

impl Stored for String {
    fn to_json(&self) -> Json {
        Json::Text(self.clone())
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let value = json.as_text();
        if value.is_none() {
            reader.expected(say!("exchange-value-text"), json);
        }
        value.map(str::to_owned)
    }

    fn blank() -> Option<Self> {
        Some(Self::new())
    }

    fn is_blank(&self) -> bool {
        self.is_empty()
    }
}

impl<T: Stored> Stored for Option<T> {
    fn to_json(&self) -> Json {
        self.as_ref().map_or(Json::Null, Stored::to_json)
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        if *json == Json::Null {
            Some(None)
        } else {
            T::from_json(json, reader).map(Some)
        }
    }

    fn blank() -> Option<Self> {
        Some(None)
    }

    fn is_blank(&self) -> bool {
        self.is_none()
    }
}

impl<T: Stored> Stored for Box<T> {
    fn to_json(&self) -> Json {
        self.as_ref().to_json()
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        T::from_json(json, reader).map(Self::new)
    }
}

/// A list. All its entries are looked at; when one can not be read, neither can the list.
impl<T: Stored> Stored for Vec<T> {
    fn to_json(&self) -> Json {
        Json::List(self.iter().map(Stored::to_json).collect())
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let Some(entries) = json.as_list() else {
            reader.expected(say!("exchange-value-list"), json);
            return None;
        };
        let mut values = Self::with_capacity(entries.len());
        for (index, entry) in entries.iter().enumerate() {
            values.extend(reader.within_entry(index, |reader| T::from_json(entry, reader)));
        }
        (values.len() == entries.len()).then_some(values)
    }

    fn blank() -> Option<Self> {
        Some(Self::new())
    }

    fn is_blank(&self) -> bool {
        self.is_empty()
    }
}

/// A list of exactly so many values.
impl<T: Stored, const N: usize> Stored for [T; N] {
    fn to_json(&self) -> Json {
        Json::List(self.iter().map(Stored::to_json).collect())
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        if !matches!(json, Json::List(entries) if entries.len() == N) {
            reader.expected(say!("exchange-value-list-of", count = N), json);
            return None;
        }
        Vec::from_json(json, reader)?.try_into().ok()
    }
}

/// Values by name: an object.
impl<T: Stored> Stored for OrderedMap<String, T> {
    fn to_json(&self) -> Json {
        Json::Members(
            self.iter()
                .map(|(name, value)| (name.clone(), value.to_json()))
                .collect(),
        )
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let Json::Members(entries) = json else {
            reader.expected(say!("exchange-value-object"), json);
            return None;
        };
        let mut values = Self::new();
        for (name, value) in entries {
            if values.contains_key(name) {
                reader.fault(FileFaultKind::RepeatedMember(name.clone()));
            } else if let Some(value) = reader.within(name, |reader| T::from_json(value, reader)) {
                values.insert(name.clone(), value);
            }
        }
        Some(values)
    }

    fn blank() -> Option<Self> {
        Some(Self::new())
    }

    fn is_blank(&self) -> bool {
        self.is_empty()
    }
}
