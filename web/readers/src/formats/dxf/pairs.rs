//! The pairs a drawing is made of: a number that says what follows, and a value, as text or in bytes ("DXF Reference",
//! 2012, "Group Code Value Types", "About the Binary DXF Format").

use crate::bytes::{Bytes, windows_1252};
use crate::fault::{Fault, Place, What, shortened};

/// What stands in the first line of a drawing in bytes, behind the name of who made it.
const MARK: &[u8] = b" Binary DXF\r\n\x1a\0";

/// Where the mark begins and ends.
const MARK_AT: std::ops::Range<usize> = 7..22;

/// Reads pairs.
pub struct Pairs {
    bytes: Bytes,
    place: usize,
    line: u64,
    /// How many bytes a number has, where they are in bytes.
    width: Option<usize>,
}

/// Whether bytes begin like a drawing in bytes.
#[must_use]
pub fn is_binary(bytes: &[u8]) -> bool {
    bytes.get(MARK_AT) == Some(MARK)
}

impl Pairs {
    /// From the first.
    pub fn new(bytes: Bytes) -> Self {
        let is_binary = is_binary(bytes.as_ref());
        let place = if is_binary { MARK_AT.end } else { 0 };
        // The first pair is (0, "SECTION"): older files have numbers of one byte.
        let width = is_binary.then(|| if bytes.from(place).get(1) == Some(&0) { 2 } else { 1 });
        Self {
            bytes,
            place,
            line: 0,
            width,
        }
    }

    /// How much is read, 0 to 1.
    pub fn share(&self) -> f64 {
        self.place as f64 / self.bytes.as_ref().len().max(1) as f64
    }

    /// The line read last, or how many bytes are read.
    pub fn number(&self) -> u64 {
        if self.width.is_some() {
            self.place as u64
        } else {
            self.line
        }
    }

    /// The place of a [`Self::number`].
    pub fn at(&self, number: u64) -> Place {
        if self.width.is_some() {
            Place::Byte(number)
        } else {
            Place::Line(number)
        }
    }

    /// The next pair; `None` at the end.
    pub fn next(&mut self) -> Result<Option<(i32, String)>, Fault> {
        match self.width {
            Some(width) => {
                let from = self.place as u64;
                if self.bytes.from(self.place).is_empty() {
                    return Ok(None);
                }
                let pair = self.next_of_bytes(width);
                let broken = || What::broken("end of file within a value").at(Place::Byte(from));
                pair.map(Some).ok_or_else(broken)
            }
            None => self.next_of_lines(),
        }
    }

    fn next_of_lines(&mut self) -> Result<Option<(i32, String)>, Fault> {
        let Some(code) = self.next_line() else { return Ok(None) };
        let code = code.trim();
        let Ok(code) = code.trim_start_matches('\u{feff}').parse::<i32>() else {
            if code.is_empty() && self.bytes.from(self.place).is_empty() {
                return Ok(None);
            }
            let value = shortened(code, 40);
            return Err(What::NotANumber { value }.at(Place::Line(self.line)));
        };
        Ok(self.next_line().map(|value| (code, tidy(code, &value))))
    }

    /// The next line; `None` at the end.
    fn next_line(&mut self) -> Option<String> {
        let rest = self.bytes.from(self.place);
        if rest.is_empty() {
            return None;
        }
        let length = rest.iter().position(|byte| *byte == b'\n').unwrap_or(rest.len());
        let line = as_text(rest.get(..length).unwrap_or_default());
        self.place += length + 1;
        self.line += 1;
        Some(line)
    }

    /// The next pair in bytes, its value as text; `None` where the file ends within it.
    fn next_of_bytes(&mut self, width: usize) -> Option<(i32, String)> {
        let code = match *self.take(width)? {
            [low, high] => i32::from(i16::from_le_bytes([low, high])),
            // 255 says that two bytes follow.
            [255] => i32::from(i16::from_le_bytes(self.array()?)),
            [code] => i32::from(code),
            _ => return None,
        };
        let value = match code {
            10..=59 | 110..=149 | 210..=239 | 460..=469 | 1010..=1059 => f64::from_le_bytes(self.array()?).to_string(),
            60..=79 | 170..=179 | 270..=289 | 370..=389 | 400..=409 | 1060..=1070 => {
                i16::from_le_bytes(self.array()?).to_string()
            }
            90..=99 | 420..=429 | 440..=459 | 1071 => i32::from_le_bytes(self.array()?).to_string(),
            160..=169 => i64::from_le_bytes(self.array()?).to_string(),
            290..=299 => u8::from_le_bytes(self.array()?).to_string(),
            310..=319 | 1004 => {
                let [length] = self.array()?;
                self.take(usize::from(length))?;
                String::new()
            }
            _ => {
                let rest = self.bytes.from(self.place);
                let length = rest.iter().position(|byte| *byte == 0)?;
                let text = tidy(code, &as_text(rest.get(..length)?));
                self.place += length + 1;
                text
            }
        };
        Some((code, value))
    }

    fn take(&mut self, count: usize) -> Option<&[u8]> {
        let from = self.place;
        let to = from.checked_add(count)?;
        self.bytes.as_ref().get(from..to)?;
        self.place = to;
        self.bytes.as_ref().get(from..to)
    }

    fn array<const N: usize>(&mut self) -> Option<[u8; N]> {
        self.take(N)?.try_into().ok()
    }
}

/// Older files are in code page 1252 where they are not UTF-8.
fn as_text(line: &[u8]) -> String {
    match std::str::from_utf8(line) {
        Ok(text) => text.to_owned(),
        Err(_) => windows_1252(line),
    }
}

/// A value without white space around it; parts of a text keep theirs.
fn tidy(code: i32, value: &str) -> String {
    if matches!(code, 1 | 3) {
        value.trim_end_matches('\r').to_owned()
    } else {
        value.trim().to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(bytes: Vec<u8>) -> Result<Vec<(i32, String)>, Fault> {
        let mut pairs = Pairs::new(Bytes::new(bytes));
        let mut found = Vec::new();
        while let Some(pair) = pairs.next()? {
            found.push(pair);
        }
        Ok(found)
    }

    /// A drawing in bytes by the reference's table of values.
    fn in_bytes(of_one: bool, values: &[(i16, &[u8])]) -> Vec<u8> {
        let mut bytes = b"Invented".get(..7).unwrap().to_vec();
        bytes.extend(MARK);
        for (code, value) in values {
            match u8::try_from(*code) {
                Ok(code) if of_one && code < 255 => bytes.push(code),
                _ => {
                    bytes.extend(of_one.then_some(255));
                    bytes.extend(code.to_le_bytes());
                }
            }
            bytes.extend(*value);
        }
        bytes
    }

    #[test]
    fn values_in_bytes_are_read_by_their_number() {
        let values: [(i16, &[u8]); 8] = [
            (0, b"SECTION\0"),
            (10, &0.1_f64.to_le_bytes()),
            (70, &(-2_i16).to_le_bytes()),
            (90, &70_000_i32.to_le_bytes()),
            (160, &(1_i64 << 40).to_le_bytes()),
            (290, &[1]),
            (310, &[2, 7, 8]),
            (1000, b"end\0"),
        ];
        let expected = ["SECTION", "0.1", "-2", "70000", "1099511627776", "1", "", "end"];
        for of_one in [false, true] {
            let found = all(in_bytes(of_one, &values)).unwrap();
            let codes: Vec<i32> = found.iter().map(|(code, _)| *code).collect();
            assert_eq!(codes, [0, 10, 70, 90, 160, 290, 310, 1000]);
            assert!(found.iter().map(|(_, value)| value).eq(&expected), "{found:?}");
        }
        let mut cut = in_bytes(false, &values);
        cut.pop();
        assert!(matches!(
            all(cut),
            Err(Fault {
                what: What::Broken { .. },
                place: Place::Byte(_)
            })
        ));
    }

    #[test]
    fn lines_are_read_two_by_two() {
        let text = b" 0\r\nSECTION\r\n 8\r\nM\xfchle\r\n".to_vec();
        assert_eq!(all(text).unwrap(), [(0, "SECTION".to_owned()), (8, "Mühle".to_owned())]);
        let wrong = all(b"0\nSECTION\nx\ny\n".to_vec()).unwrap_err();
        assert_eq!(wrong.place, Place::Line(3));
    }
}
