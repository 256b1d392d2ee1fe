//! Turning good inputs into nearly good ones.

/// Chance from a seed: the same seed gives the same inputs on every machine (SplitMix64).
pub struct Chance(u64);

impl Chance {
    /// Starts from a seed.
    pub fn new(seed: u64) -> Chance {
        Chance(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    /// A number below `end`; 0 when there is none.
    fn below(&mut self, end: usize) -> usize {
        let end = u64::try_from(end).unwrap_or(u64::MAX).max(1);
        usize::try_from(self.next() % end).unwrap_or(0)
    }

    /// A range within `0..length`, more often short than long.
    fn range(&mut self, length: usize) -> std::ops::Range<usize> {
        let start = self.below(length + 1);
        let longest = if self.below(4) == 0 { length } else { 16 };
        let end = (start + self.below(longest + 1)).min(length);
        start..end
    }
}

/// Words that the readers treat in some way of their own, and values at the edges of what they accept.
const TOKENS: &[&str] = &[
    "{",
    "}",
    "[",
    "]",
    ",",
    ":",
    "\"",
    "\\",
    "\\u0000",
    "\\ud800",
    "null",
    "true",
    "false",
    "\u{feff}",
    "\n",
    "0",
    "-0",
    "1",
    "-1",
    "0.0000000001",
    "1e308",
    "-1e308",
    "1e-320",
    "1e999",
    "NaN",
    "Infinity",
    "180",
    "-180.0",
    "90",
    "91",
    "2147483647",
    "2147483648",
    "-2147483649",
    "4294967296",
    "9223372036854775807",
    "18446744073709551616",
    "\"type\"",
    "\"FeatureCollection\"",
    "\"features\"",
    "\"Feature\"",
    "\"properties\"",
    "\"geometry\"",
    "\"coordinates\"",
    "\"Point\"",
    "\"LineString\"",
    "\"Polygon\"",
    "\"MultiLineString\"",
    "\"GeometryCollection\"",
    "\"bbox\"",
    "\"id\"",
    "\"kind\"",
    "\"hobnail\"",
    "\"version\"",
    "\"name\"",
    "\"crs\"",
    "[0,0]",
    "[[0,0],[0,0]]",
    "[[0,0],[1,0],[1,1],[0,0]]",
    "[180,90]",
    "[1e9,1e9]",
    "{}",
    "[]",
    "\"\"",
];

/// One input: a good one with a few changes, or now and then bytes by chance.
pub fn mutate(corpus: &[Vec<u8>], chance: &mut Chance) -> Vec<u8> {
    let mut input = if corpus.is_empty() || chance.below(50) == 0 {
        let length = chance.below(64);
        (0..length).map(|_| byte(chance)).collect()
    } else {
        corpus[chance.below(corpus.len())].clone()
    };
    for _ in 0..=chance.below(6) {
        change(&mut input, corpus, chance);
    }
    input
}

fn change(input: &mut Vec<u8>, corpus: &[Vec<u8>], chance: &mut Chance) {
    let length = input.len();
    match chance.below(10) {
        0 if length > 0 => input[chance.below(length)] ^= 1 << chance.below(8),
        1 if length > 0 => input[chance.below(length)] = byte(chance),
        2 => {
            let range = chance.range(length);
            input.drain(range);
        }
        3 => {
            let copy = input[chance.range(length)].to_vec();
            let place = chance.below(length + 1);
            input.splice(place..place, copy);
        }
        4 if !corpus.is_empty() => {
            let other = &corpus[chance.below(corpus.len())];
            let piece = other[chance.range(other.len())].to_vec();
            input.splice(chance.range(length), piece);
        }
        5 => {
            let place = chance.below(length + 1);
            input.splice(place..place, token(chance));
        }
        6 => input.truncate(chance.below(length + 1)),
        7 => {
            let value = value_at(input, chance.below(length + 1));
            input.splice(value, token(chance));
        }
        8 => {
            let number = number_at(input, chance.below(length + 1));
            input.splice(number, token(chance));
        }
        _ => {
            // A whole line, which is a whole record in files of lines.
            let line = line_at(input, chance.below(length + 1));
            let copy = input[line.clone()].to_vec();
            let place = if chance.below(2) == 0 {
                line
            } else {
                chance.below(length + 1)..length
            };
            input.splice(place.start..place.start, copy);
        }
    }
}

fn byte(chance: &mut Chance) -> u8 {
    u8::try_from(chance.below(256)).unwrap_or(0)
}

fn token(chance: &mut Chance) -> Vec<u8> {
    TOKENS[chance.below(TOKENS.len())].as_bytes().to_vec()
}

/// The bytes around a place up to the next comma, colon or bracket on both sides: in JSON, one value or name.
fn value_at(input: &[u8], place: usize) -> std::ops::Range<usize> {
    around(input, place, |byte| !b",:[]{}".contains(&byte))
}

/// The first number at or after a place.
fn number_at(input: &[u8], place: usize) -> std::ops::Range<usize> {
    let is_number = |byte: u8| byte.is_ascii_digit() || b"+-.eE".contains(&byte);
    let start = (place..input.len())
        .find(|&at| input[at].is_ascii_digit())
        .unwrap_or(input.len());
    around(input, start, is_number)
}

fn line_at(input: &[u8], place: usize) -> std::ops::Range<usize> {
    around(input, place, |byte| byte != b'\n')
}

fn around(input: &[u8], place: usize, belongs: impl Fn(u8) -> bool) -> std::ops::Range<usize> {
    let start = (0..place).rev().find(|&at| !belongs(input[at])).map_or(0, |at| at + 1);
    let end = (place..input.len())
        .find(|&at| !belongs(input[at]))
        .unwrap_or(input.len());
    start..end
}
