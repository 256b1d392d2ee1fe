//! Finding a text within a text, small.
//!
//! The standard search is made for long texts; with what it says where a text is cut through a letter it weighs 6 kB, and
//! the page has to be loaded over a network. Texts here are short: this compares at every place.

/// Where the first of such parts begins, in bytes; `None` where there is none. A part has at least a letter.
///
/// ```
/// use hobnail_core::text::find;
/// assert_eq!(find("12 ft2/lot", "ft2"), Some(3));
/// assert_eq!((find("ft", "ft2"), find("ft2", "")), (None, None));
/// ```
#[must_use]
pub fn find(text: &str, part: &str) -> Option<usize> {
    let mut places = text.as_bytes().windows(part.len().max(1));
    places.position(|held| held == part.as_bytes())
}

/// Whether there is such a part.
#[must_use]
pub fn holds(text: &str, part: &str) -> bool {
    find(text, part).is_some()
}

/// What stands before the first of such parts, and what behind it; `None` where there is none.
///
/// ```
/// assert_eq!(hobnail_core::text::parted("about 5, likely 4 to 6", ", "), Some(("about 5", "likely 4 to 6")));
/// ```
#[must_use]
pub fn parted<'a>(text: &'a str, part: &str) -> Option<(&'a str, &'a str)> {
    let from = find(text, part)?;
    text.get(..from).zip(text.get(from + part.len()..))
}

/// The text with another in the place of every such part.
///
/// ```
/// assert_eq!(hobnail_core::text::exchanged("m2 of m2", "m2", "m²"), "m² of m²");
/// ```
#[must_use]
pub fn exchanged(mut text: &str, part: &str, other: &str) -> String {
    let mut all = String::with_capacity(text.len());
    while let Some((before, behind)) = parted(text, part) {
        all.push_str(before);
        all.push_str(other);
        text = behind;
    }
    all.push_str(text);
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The standard search, of all texts up to six letters of three, one of them two bytes long.
    #[test]
    fn everything_is_as_the_standard_search_finds_it() {
        let mut texts = vec![String::new()];
        let mut from = 0;
        for _ in 0..6 {
            let until = texts.len();
            for place in from..until {
                for letter in ['a', 'b', 'é'] {
                    texts.push(format!("{}{letter}", texts[place]));
                }
            }
            from = until;
        }
        let parts: Vec<String> = texts
            .iter()
            .filter(|text| (1..=3).contains(&text.chars().count()))
            .cloned()
            .collect();
        for text in &texts {
            for part in &parts {
                assert_eq!(find(text, part), text.find(part.as_str()), "{part} in {text}");
                assert_eq!(parted(text, part), text.split_once(part.as_str()), "{part} in {text}");
                assert_eq!(
                    exchanged(text, part, "-"),
                    text.replace(part.as_str(), "-"),
                    "{part} in {text}"
                );
            }
        }
    }
}
