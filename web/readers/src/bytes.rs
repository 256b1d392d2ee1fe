//! A file's bytes, shared by what reads them in turns.

use std::sync::Arc;

/// Bytes that are held once, however many readers look at them.
#[derive(Clone)]
pub struct Bytes(Arc<Vec<u8>>);

impl Bytes {
    /// Takes the bytes over.
    #[must_use]
    pub fn new(bytes: Vec<u8>) -> Self {
        Self(Arc::new(bytes))
    }

    /// Those from a place on.
    #[must_use]
    pub fn from(&self, place: usize) -> &[u8] {
        self.0.get(place..).unwrap_or_default()
    }
}

impl AsRef<[u8]> for Bytes {
    fn as_ref(&self) -> &[u8] {
        &self.0
    }
}

/// Text without the mark of its byte order; `None` where it is not UTF-8.
#[must_use]
pub fn text(bytes: &[u8]) -> Option<&str> {
    std::str::from_utf8(bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes)).ok()
}

/// Text of code page 1252, which older files have where they are not UTF-8.
#[must_use]
pub fn windows_1252(raw: &[u8]) -> String {
    const HIGH: &str = "€�‚ƒ„…†‡ˆ‰Š‹Œ�Ž��‘’“”•–—˜™š›œ�žŸ";
    let letter = |byte: &u8| match byte {
        0x80..=0x9f => HIGH.chars().nth(usize::from(byte - 0x80)).unwrap_or('\u{fffd}'),
        _ => char::from(*byte),
    };
    raw.iter().map(letter).collect()
}
