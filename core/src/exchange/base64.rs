//! Base64 with the letters of section 4 of RFC 4648, as files hold pictures.
//!
//! Addresses are written with the letters of its section 5, which differ in two and in what fills up the last four. The
//! library has a routine for each, of which the page is to hold one.

use base64ct::{Base64UrlUnpadded, Encoding as _};

/// Bytes as letters, filled up to whole fours.
pub fn encode(bytes: &[u8]) -> String {
    let letters = Base64UrlUnpadded::encode_string(bytes);
    let mut text: String = letters
        .chars()
        .map(|letter| exchanged(letter, ['-', '_'], ['+', '/']))
        .collect();
    while !text.len().is_multiple_of(4) {
        text.push('=');
    }
    text
}

/// The bytes of such letters; `None` for any other text.
pub fn decode(text: &str) -> Option<Vec<u8>> {
    if !text.len().is_multiple_of(4) || text.contains(['-', '_']) {
        return None;
    }
    let letters = text.strip_suffix('=').unwrap_or(text);
    let letters = letters.strip_suffix('=').unwrap_or(letters).chars();
    let letters: String = letters
        .map(|letter| exchanged(letter, ['+', '/'], ['-', '_']))
        .collect();
    Base64UrlUnpadded::decode_vec(&letters).ok()
}

fn exchanged(letter: char, from: [char; 2], to: [char; 2]) -> char {
    from.iter()
        .zip(to)
        .find(|(known, _)| **known == letter)
        .map_or(letter, |(_, to)| to)
}

#[cfg(test)]
mod tests {
    use base64ct::Base64;

    use super::*;

    /// RFC 4648, section 10: test vectors.
    #[test]
    fn texts_of_the_standard_come_out_and_back() {
        for (bytes, text) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg=="),
            ("fooba", "Zm9vYmE="),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(encode(bytes.as_bytes()), text);
            assert_eq!(decode(text).as_deref(), Some(bytes.as_bytes()));
        }
        for other in [
            "Zg", "Zg=", "Zg===", "Z===", "====", "Zm-_", "Zm9v Zm9", "Zh==", "Zm=v", "Zé==",
        ] {
            assert_eq!(decode(other), None, "{other}");
        }
    }

    /// Against the library's own routine for this alphabet.
    #[test]
    fn any_bytes_are_written_as_the_library_writes_them() {
        let bytes: Vec<u8> = (0..4_000_u32).map(|step| ((step * step * 31) >> 3) as u8).collect();
        for length in (0..70).chain([3_998, 3_999, 4_000]) {
            let text = Base64::encode_string(&bytes[..length]);
            assert_eq!(encode(&bytes[..length]), text);
            assert_eq!(decode(&text).as_deref(), Some(&bytes[..length]));
        }
    }
}
