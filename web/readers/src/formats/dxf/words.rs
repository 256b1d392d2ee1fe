//! The words of texts, without what says how they look ("DXF Reference", 2012, "MTEXT", "TEXT"; the spelling of signs is
//! common practice of such files, from memory).

use std::iter::Peekable;
use std::str::Chars;

/// The words of a text of one line: `%%d`, `%%p` and `%%c` are signs, `%%u`, `%%o` and `%%k` lines along it.
#[must_use]
pub fn of_line(text: &str) -> String {
    let mut words = String::new();
    let mut rest = text;
    while let Some(at) = rest.find("%%") {
        let (before, behind) = rest.split_at(at);
        words.push_str(before);
        let mut letters = behind.chars().skip(2);
        let sign = letters.next().map(|letter| letter.to_ascii_lowercase());
        let known = match sign {
            Some('d') => Some("°"),
            Some('p') => Some("±"),
            Some('c') => Some("⌀"),
            Some('%') => Some("%"),
            Some('u' | 'o' | 'k') => Some(""),
            _ => None,
        };
        words.push_str(known.unwrap_or("%%"));
        let length = if known.is_some() { 3 } else { 2 };
        rest = behind.get(length..).unwrap_or_default();
    }
    words.push_str(rest);
    tidy(&with_letters(&words))
}

/// The words of a text of several lines, which become one: letters behind a backslash and braces say how it looks.
#[must_use]
pub fn of_lines(text: &str) -> String {
    let text = with_letters(text);
    let mut letters = text.chars().peekable();
    let mut words = String::new();
    while let Some(letter) = letters.next() {
        match letter {
            '{' | '}' => {}
            '\\' => escape(&mut letters, &mut words),
            _ => words.push(letter),
        }
    }
    tidy(&of_line(&words))
}

fn escape(letters: &mut Peekable<Chars<'_>>, words: &mut String) {
    match letters.next() {
        Some('P' | 'N' | '~') => words.push(' '),
        Some(letter @ ('\\' | '{' | '}')) => words.push(letter),
        Some('L' | 'l' | 'O' | 'o' | 'K' | 'k') | None => {}
        // Numbers above each other, parted by a sign.
        Some('S') => {
            for letter in letters.by_ref().take_while(|letter| *letter != ';') {
                words.push(if matches!(letter, '^' | '#') { '/' } else { letter });
            }
        }
        // Typeface, size, color and the like, up to a semicolon.
        Some('f' | 'F' | 'H' | 'C' | 'c' | 'A' | 'T' | 'Q' | 'W' | 'p') => {
            letters.by_ref().take_while(|letter| *letter != ';').for_each(drop);
        }
        Some(letter) => words.extend(['\\', letter]),
    }
}

/// Letters that older files spell by their number, as `\U+00E9`.
fn with_letters(text: &str) -> String {
    let mut parts = text.split("\\U+");
    let mut words = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let number = part.get(..4).and_then(|number| u32::from_str_radix(number, 16).ok());
        match number.and_then(char::from_u32) {
            Some(letter) => {
                words.push(letter);
                words.push_str(part.get(4..).unwrap_or_default());
            }
            None => {
                words.push_str("\\U+");
                words.push_str(part);
            }
        }
    }
    words
}

/// One space between words and none around them.
fn tidy(text: &str) -> String {
    text.split_whitespace().collect::<Vec<&str>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn signs_and_looks_become_words() {
        assert_eq!(
            of_line("%%uMill Road%%u 45%%d %%%5%% 100%%"),
            "Mill Road 45° %5%% 100%%"
        );
        assert_eq!(of_line("caf\\U+00E9 \\U+zz"), "café \\U+zz");
        let lines = r"{\fInvented|b1|i0;\C1;Lot 14}\P\H2.5x;0.25~ac\~of \L\\land\l \{1\} \S1^2; é";
        assert_eq!(of_lines(lines), r"Lot 14 0.25~ac of \land {1} 1/2 é");
        assert_eq!(of_lines("\\"), "");
        assert_eq!(of_lines("\\fno end"), "");
    }
}
