//! JSON text to values and back, keeping the order of members and members named twice, which a reader must report.
//!
//! Limits: [`LARGEST_BYTES`] of text, and 127 values inside one another; beyond either the text is refused. A value
//! takes at most sixteen times the memory of its text. Numbers must fit a double (RFC 8259 allows this limit).

mod exact;

use std::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

use crate::say;

/// Largest text that is read: 64 MiB. A plan with a large base image takes a third of it.
pub const LARGEST_BYTES: usize = 64 << 20;

/// How many bytes are shown before and behind a place that can not be read.
const BYTES_AROUND: usize = 12;

/// A JSON value.
#[derive(Clone, Debug, PartialEq)]
#[expect(missing_docs, reason = "each variant is the JSON type it names")]
pub enum Json {
    Null,
    Bool(bool),
    /// A number written without fraction or exponent that fits 64 bits.
    Integer(i64),
    /// Any other number.
    Number(f64),
    Text(String),
    List(Vec<Json>),
    /// An object's members, in order; names may repeat.
    Members(Vec<(String, Json)>),
}

/// Why text could not be read as JSON.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum JsonFault {
    /// It is larger than [`LARGEST_BYTES`].
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// It is not JSON.
    Syntax {
        /// Line of the fault, from 1.
        line: usize,
        /// Column of the fault, from 1.
        column: usize,
        /// What stands around it; `None` where the text ends too early.
        found: Option<String>,
    },
}

impl fmt::Display for JsonFault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&match self {
            Self::TooLarge { bytes } => say!("exchange-too-large", bytes = bytes, most = LARGEST_BYTES),
            Self::Syntax { line, column, found } => match found {
                Some(found) => say!("exchange-not-json", found = found, line = line, column = column),
                None => say!("exchange-not-whole-json", line = line, column = column),
            },
        })
    }
}

impl std::error::Error for JsonFault {}

/// Reads JSON text; a byte order mark is passed over.
///
/// # Errors
/// [`JsonFault`] when the text is too large, nested too deeply, or not JSON.
pub fn parse(bytes: &[u8]) -> Result<Json, JsonFault> {
    if bytes.len() > LARGEST_BYTES {
        return Err(JsonFault::TooLarge { bytes: bytes.len() });
    }
    let text = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    let mut json = serde_json::from_slice(text).map_err(|error| {
        let (line, column) = (error.line(), error.column());
        JsonFault::Syntax {
            line,
            column,
            found: (!error.is_eof()).then(|| around(text, line, column).to_owned()),
        }
    })?;
    exact::set_numbers(&mut json, text);
    Ok(json)
}

/// What stands around a column of a line, both from 1: some letters of it, or `�` where the line is not UTF-8.
fn around(text: &[u8], line: usize, column: usize) -> &str {
    let held = text.split(|byte| *byte == b'\n').nth(line.saturating_sub(1));
    let Ok(line) = std::str::from_utf8(held.unwrap_or_default()) else {
        return "\u{fffd}";
    };
    let from = line.floor_char_boundary(column.saturating_sub(BYTES_AROUND));
    let to = line.floor_char_boundary(column + BYTES_AROUND);
    line.get(from..to).unwrap_or_default().trim()
}

impl Json {
    /// The first member of this name.
    #[must_use]
    pub fn member(&self, name: &str) -> Option<&Self> {
        let Self::Members(members) = self else {
            return None;
        };
        members.iter().find(|(held, _)| held == name).map(|(_, value)| value)
    }

    /// The text, where this is one.
    #[must_use]
    pub fn as_text(&self) -> Option<&str> {
        if let Self::Text(text) = self { Some(text) } else { None }
    }

    /// The number, where this is one.
    #[must_use]
    pub fn as_number(&self) -> Option<f64> {
        match self {
            Self::Integer(integer) => Some(*integer as f64),
            Self::Number(number) => Some(*number),
            _ => None,
        }
    }

    /// The whole number, where this is one, also when written with a zero fraction.
    #[must_use]
    pub fn as_integer(&self) -> Option<i64> {
        /// Beyond this not every whole number is a double.
        const LIMIT: f64 = 9_007_199_254_740_992.0;
        match self {
            Self::Integer(integer) => Some(*integer),
            Self::Number(number) if number.fract() == 0.0 && number.abs() <= LIMIT => Some(*number as i64),
            _ => None,
        }
    }

    /// The list's values, where this is one.
    #[must_use]
    pub fn as_list(&self) -> Option<&[Self]> {
        if let Self::List(values) = self {
            Some(values)
        } else {
            None
        }
    }

    /// What kind of value this is, in words.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Null => say!("exchange-value-null"),
            Self::Bool(_) => say!("exchange-value-boolean"),
            Self::Integer(_) | Self::Number(_) => say!("exchange-value-number"),
            Self::Text(_) => say!("exchange-value-text"),
            Self::List(_) => say!("exchange-value-list"),
            Self::Members(_) => say!("exchange-value-object"),
        }
    }

    /// Appends the value as compact text. A number that is not finite, which JSON can not say, becomes null.
    pub fn write_to(&self, text: &mut String) {
        match self {
            Self::Null => text.push_str("null"),
            Self::Bool(value) => text.push_str(if *value { "true" } else { "false" }),
            Self::Integer(integer) => text.push_str(&integer.to_string()),
            Self::Number(number) => match serde_json::Number::from_f64(*number) {
                Some(number) => text.push_str(&number.to_string()),
                None => text.push_str("null"),
            },
            Self::Text(held) => write_text(held, text),
            Self::List(values) => {
                text.push('[');
                for (index, value) in values.iter().enumerate() {
                    if index > 0 {
                        text.push(',');
                    }
                    value.write_to(text);
                }
                text.push(']');
            }
            Self::Members(members) => {
                text.push('{');
                for (index, (name, value)) in members.iter().enumerate() {
                    if index > 0 {
                        text.push(',');
                    }
                    write_text(name, text);
                    text.push(':');
                    value.write_to(text);
                }
                text.push('}');
            }
        }
    }
}

/// Appends a text in quotes, escaped as JSON asks.
pub(super) fn write_text(held: &str, text: &mut String) {
    text.push('"');
    for character in held.chars() {
        match character {
            '"' => text.push_str("\\\""),
            '\\' => text.push_str("\\\\"),
            '\n' => text.push_str("\\n"),
            '\r' => text.push_str("\\r"),
            '\t' => text.push_str("\\t"),
            control if control < ' ' => text.push_str(&format!("\\u{:04x}", u32::from(control))),
            other => text.push(other),
        }
    }
    text.push('"');
}

impl<'de> Deserialize<'de> for Json {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(JsonVisitor)
    }
}

struct JsonVisitor;

impl<'de> Visitor<'de> for JsonVisitor {
    type Value = Json;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a value")
    }

    fn visit_unit<E>(self) -> Result<Json, E> {
        Ok(Json::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Json, E> {
        Ok(Json::Bool(value))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Json, E> {
        Ok(Json::Integer(value))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Json, E> {
        Ok(i64::try_from(value).map_or(Json::Number(value as f64), Json::Integer))
    }

    fn visit_f64<E>(self, value: f64) -> Result<Json, E> {
        Ok(Json::Number(value))
    }

    fn visit_str<E>(self, value: &str) -> Result<Json, E> {
        Ok(Json::Text(value.to_owned()))
    }

    fn visit_string<E>(self, value: String) -> Result<Json, E> {
        Ok(Json::Text(value))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut access: A) -> Result<Json, A::Error> {
        let mut values = Vec::new();
        while let Some(value) = access.next_element()? {
            values.push(value);
        }
        Ok(Json::List(values))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut access: A) -> Result<Json, A::Error> {
        let mut members = Vec::new();
        while let Some(member) = access.next_entry()? {
            members.push(member);
        }
        Ok(Json::Members(members))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_come_back_as_they_were_written() {
        let text = r#"{"a":[null,true,-5,0.1,1e300,"\"\\\n\u0001é"],"a":{},"b":9223372036854775807}"#;
        let json = parse(text.as_bytes()).unwrap();
        let mut written = String::new();
        json.write_to(&mut written);
        assert_eq!(parse(written.as_bytes()), Ok(json));
        assert!(written.starts_with(r#"{"a":[null,true,-5,0.1,1e+300,"#), "{written}");
    }

    #[test]
    fn faults_say_where() {
        let fault = |text: &[u8]| parse(text).unwrap_err().to_string();
        assert_eq!(
            fault(b"{\n\"a\": nan}"),
            "the file is not JSON: in line 2, column 7 something can not be read: “\"a\": nan}”"
        );
        assert_eq!(
            fault(b"[1e999]"),
            "the file is not JSON: in line 1, column 6 something can not be read: “[1e999]”"
        );
        assert_eq!(
            fault(b"{\"a\": [1, 2"),
            "the file is not JSON to its end: it breaks off in line 1, column 11"
        );
        assert!(fault(&[b'['; 100_000]).contains(": “[[[[["));
        assert!(fault(b"\"\xFF\"").contains("“\u{fffd}”"));
        // Letters of several bytes are shown whole.
        for before in 0..8 {
            let text = format!("{{\"Straße der Gärten{}\": é, \"ü\": 1}}", "é".repeat(before));
            assert!(fault(text.as_bytes()).contains(": é, "), "{}", fault(text.as_bytes()));
        }
        assert!(parse(b"\xEF\xBB\xBF{}").is_ok());
    }
}
