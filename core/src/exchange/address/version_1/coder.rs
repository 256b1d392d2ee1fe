//! One description of a plan for both ways: every function takes a value and gives the value that stands there.
//!
//! While writing that is the value given; while reading it is the one in the address, and what was given is not looked
//! at; while learning nothing is written or read, only the chances change. What can not be read is noted once
//! ([`Coder::fault`]) and everything after it is nought, so that lists end.

use super::super::AddressFault;
use super::arithmetic::Arithmetic;
use super::chances::{Chances, MOST_CONTEXTS};

/// What is being asked for, as far as the chances differ: fields of marks and palettes.
pub(super) type Field = u32;

/// Decisions an address of so many bytes may hold: several times what a plan needs, and never more than are read within
/// a moment.
const fn most_decisions(bytes: usize) -> u64 {
    let most = 60_000 + 100 * bytes as u64;
    if most < MOST_DECISIONS { most } else { MOST_DECISIONS }
}

const MOST_DECISIONS: u64 = 200_000;

/// Most marks, points, letters and entries of lists; of what is copied from an earlier alternative, pieces of
/// [`PIECE_BYTES`].
const MOST_ITEMS: u64 = 60_000;

/// Bytes of a copied mark that count as one item.
pub(super) const PIECE_BYTES: u64 = 64;

/// Texts that are remembered to be told again.
const MOST_TEXTS: usize = 128;

const WHOLE: usize = 0;
const LETTER: usize = 1;
const CHOICE: usize = 2;
const TAIL: usize = 3;

/// See the [module](self).
#[derive(Clone, Debug)]
pub(super) struct Coder {
    chances: Chances,
    arithmetic: Option<Arithmetic>,
    is_reading: bool,
    fault: Option<AddressFault>,
    decisions: u64,
    items: u64,
    /// Texts that stood before, the latest last.
    texts: Vec<String>,
}

/// The contexts of one question, before the decisions it falls into.
#[derive(Clone, Copy)]
struct Question {
    set: usize,
    contexts: [u32; MOST_CONTEXTS],
    count: usize,
}

impl Coder {
    /// Learns without writing or reading.
    pub(super) fn learning() -> Self {
        Self {
            chances: Chances::new(),
            arithmetic: None,
            is_reading: false,
            fault: None,
            decisions: MOST_DECISIONS,
            items: MOST_ITEMS,
            texts: Vec::new(),
        }
    }

    /// Writes from here on, with what was learned.
    pub(super) fn write(&mut self) {
        self.arithmetic = Some(Arithmetic::writing());
        self.is_reading = false;
        self.texts.clear();
        (self.decisions, self.items) = (MOST_DECISIONS, MOST_ITEMS);
    }

    /// Reads these bytes from here on, with what was learned.
    pub(super) fn read(&mut self, bytes: Vec<u8>) {
        self.decisions = most_decisions(bytes.len());
        self.items = MOST_ITEMS;
        self.arithmetic = Some(Arithmetic::reading(bytes));
        self.is_reading = true;
        self.texts.clear();
    }

    /// The bytes written.
    ///
    /// # Errors
    /// The first fault met, and where more was written than will be read.
    pub(super) fn finish(self) -> Result<Vec<u8>, AddressFault> {
        if let Some(fault) = self.fault {
            return Err(fault);
        }
        let bytes = self.arithmetic.map_or_else(Vec::new, Arithmetic::finish);
        // Whoever reads it has to have the decisions that were made.
        let is_readable = self.is_reading || MOST_DECISIONS - self.decisions <= most_decisions(bytes.len());
        if is_readable {
            Ok(bytes)
        } else {
            Err(AddressFault::TooMuch)
        }
    }

    /// Whether values come from an address.
    pub(super) const fn is_reading(&self) -> bool {
        self.is_reading
    }

    /// Whether something could not be read.
    pub(super) const fn has_fault(&self) -> bool {
        self.fault.is_some()
    }

    /// Notes that something can not be read; the first is kept.
    pub(super) fn fault(&mut self, fault: AddressFault) {
        self.fault.get_or_insert(fault);
    }

    /// Uses up room for so many items; `false` when there is none left.
    pub(super) fn has_room_for(&mut self, items: usize) -> bool {
        if self.items < items as u64 {
            self.fault(AddressFault::TooMuch);
        } else {
            self.items -= items as u64;
        }
        !self.has_fault()
    }

    /// Uses up time for so many looks at what stands already.
    pub(super) fn spend(&mut self, looks: usize) {
        self.decisions = self.decisions.saturating_sub(looks as u64 / 8);
    }

    /// One of two.
    pub(super) fn flag(&mut self, field: Field, hints: &[i64], value: bool) -> bool {
        self.choice(field, hints, 2, usize::from(value)) == 1
    }

    /// One of `count`, from 0.
    pub(super) fn choice(&mut self, field: Field, hints: &[i64], count: usize, value: usize) -> usize {
        let question = Question::of(CHOICE, field, hints);
        let bits = usize::BITS - count.saturating_sub(1).leading_zeros();
        let mut node = 1;
        for place in (0..bits).rev() {
            node = node * 2 + usize::from(self.decide(&question, node as u32, value >> place & 1 == 1));
        }
        let read = node - (1 << bits);
        if read >= count {
            self.fault(AddressFault::Impossible);
            return 0;
        }
        read
    }

    /// One of `all`.
    pub(super) fn word<T: Copy + PartialEq>(&mut self, field: Field, hints: &[i64], all: &[T], value: &mut T) {
        let place = all.iter().position(|held| held == value).unwrap_or(0);
        let place = self.choice(field, hints, all.len(), place);
        if let Some(read) = all.get(place) {
            *value = *read;
        }
    }

    /// A whole number: its sign and size in powers of two, then what is left, the more likely the more it is what stood
    /// there before in the same contexts.
    pub(super) fn number(&mut self, field: Field, hints: &[i64], value: i64) -> i64 {
        let mut question = Question::of(WHOLE, field, hints);
        let size_of = u64::BITS - value.unsigned_abs().leading_zeros();
        let mut node = 1;
        for place in (0..6).rev() {
            node = node * 2 + u32::from(self.decide(&question, node, size_of.min(63) >> place & 1 == 1));
        }
        let size = node - 64;
        if size == 0 {
            return 0;
        }
        let is_negative = self.decide(&question, 64 + node, value < 0);
        question.set = TAIL;
        let mut read = 1_u64;
        for place in (0..size - 1).rev() {
            let bit = value.unsigned_abs() >> place & 1 == 1;
            let node = mixed(
                node + 256 * u32::from(is_negative),
                mixed(read as u32, (read >> 32) as u32 + 7),
            );
            read = read << 1 | u64::from(self.decide(&question, node, bit));
        }
        let read = read as i64;
        if is_negative { -read } else { read }
    }

    /// A number as people choose them: tens, hundreds and thousands more likely than others.
    pub(super) fn round(&mut self, field: Field, hints: &[i64], value: i64) -> i64 {
        let (mut kept, mut zeros) = (value, 0);
        while kept != 0 && kept % 10 == 0 && zeros < 15 {
            kept /= 10;
            zeros += 1;
        }
        let zeros = self.choice(field, hints, 16, zeros);
        let kept = self.number(field + 2000 * (1 + zeros as u32), hints, kept);
        (0..zeros)
            .try_fold(kept, |number, _| number.checked_mul(10))
            .unwrap_or_else(|| {
                self.fault(AddressFault::Impossible);
                0
            })
    }

    /// A round number of any kind that fits.
    pub(super) fn quantity<T: Copy + TryFrom<i64> + Into<i64>>(&mut self, field: Field, hints: &[i64], value: &mut T) {
        let read = self.round(field, hints, (*value).into());
        self.keep(read, value);
    }

    /// Any number that fits.
    pub(super) fn whole<T: Copy + TryFrom<i64> + Into<i64>>(&mut self, field: Field, hints: &[i64], value: &mut T) {
        let read = self.number(field, hints, (*value).into());
        self.keep(read, value);
    }

    pub(super) fn keep<T: TryFrom<i64>>(&mut self, read: i64, value: &mut T) {
        match T::try_from(read) {
            Ok(read) => *value = read,
            Err(_) => self.fault(AddressFault::Impossible),
        }
    }

    /// A number that may be missing.
    pub(super) fn perhaps<T: Copy + TryFrom<i64> + Into<i64>>(
        &mut self,
        field: Field,
        hints: &[i64],
        value: &mut Option<T>,
    ) {
        let given = value.map_or(0, |value| value.into() + 1);
        let read = if given < 64 {
            self.number(field, hints, given)
        } else {
            self.number(field, hints, 64)
        };
        match read {
            0 => *value = None,
            64 => {
                let read = self.round(field + 1, hints, given - 1);
                *value = T::try_from(read).ok();
            }
            small => *value = T::try_from(small - 1).ok(),
        }
        if read != 0 && value.is_none() {
            self.fault(AddressFault::Impossible);
        }
    }

    /// How many entries a list has; room for them is used up.
    pub(super) fn count(&mut self, field: Field, hints: &[i64], value: usize) -> usize {
        let read = self.number(field, hints, value as i64);
        let count = usize::try_from(read).unwrap_or(usize::MAX);
        if self.has_room_for(count) { count } else { 0 }
    }

    /// A list: how many, then each with its place.
    pub(super) fn list<T: Clone>(
        &mut self,
        field: Field,
        hints: &[i64],
        list: &mut Vec<T>,
        blank: &T,
        mut each: impl FnMut(&mut Self, &mut [T], usize),
    ) {
        let count = self.count(field, hints, list.len());
        list.resize(count, blank.clone());
        for place in 0..count {
            if self.has_fault() {
                break;
            }
            each(self, list, place);
        }
    }

    /// A text: nothing, one that stood before, or letters.
    pub(super) fn text(&mut self, field: Field, hints: &[i64], text: &mut String) {
        let earlier = self.texts.iter().rev().position(|held| held == text);
        let how = match earlier {
            _ if text.is_empty() => 0,
            Some(_) => 1,
            None => 2,
        };
        match self.choice(field, hints, 3, how) {
            0 => text.clear(),
            1 => {
                let back = self.number(field + 1, hints, earlier.unwrap_or(0) as i64);
                let place = usize::try_from(back)
                    .ok()
                    .and_then(|back| self.texts.len().checked_sub(back + 1));
                match place.and_then(|place| self.texts.get(place)).cloned() {
                    Some(held) if self.has_room_for(held.len()) => *text = held,
                    _ => self.fault(AddressFault::Impossible),
                }
            }
            _ => self.letters(field, text),
        }
        if !text.is_empty() {
            // The latest stands last, once.
            self.texts.retain(|held| held != text);
            if self.texts.len() == MOST_TEXTS {
                self.texts.remove(0);
            }
            self.texts.push(text.clone());
        }
    }

    /// A text letter by letter, as bytes of UTF-8: a nought ends it, and 255, which no such text has, stands for a nought.
    pub(super) fn letters(&mut self, field: Field, text: &mut String) {
        let given: Vec<u8> = text
            .bytes()
            .map(|byte| if byte == 0 { 255 } else { byte })
            .chain([0])
            .collect();
        let mut read: Vec<u8> = Vec::new();
        let (mut word, mut word_before, mut latest) = (0, 0, 0_u64);
        loop {
            let mask = |bytes: u32| (latest & ((1 << (8 * bytes)) - 1)) as u32;
            let upper = (latest >> 32) as u32;
            let contexts = [
                mixed(1, field),
                mixed(2, mask(1)),
                mixed(3, mask(2)),
                mixed(4, mask(3)),
                mixed(5, latest as u32),
                mixed(mixed(6, latest as u32), upper & 0xff),
                mixed(mixed(7, latest as u32), upper & 0xffff),
                mixed(8, word),
                mixed(mixed(9, word), word_before),
            ];
            let question = Question {
                set: LETTER,
                contexts,
                count: MOST_CONTEXTS,
            };
            let next = given.get(read.len()).copied().unwrap_or(0);
            let mut node = 1;
            for place in (0..8).rev() {
                node = node * 2 + u32::from(self.decide(&question, node, next >> place & 1 == 1));
            }
            let byte = node as u8;
            if byte == 0 || !self.has_room_for(1) {
                break;
            }
            read.push(byte);
            latest = latest << 8 | u64::from(byte);
            if byte.is_ascii_alphabetic() || byte >= 128 {
                word = mixed(word, u32::from(byte.to_ascii_lowercase()) + 1);
            } else if word != 0 {
                (word_before, word) = (word, 0);
            }
        }
        for byte in &mut read {
            *byte = if *byte == 255 { 0 } else { *byte };
        }
        match String::from_utf8(read) {
            Ok(read) => *text = read,
            Err(_) => self.fault(AddressFault::Impossible),
        }
    }

    /// One decision of a question.
    fn decide(&mut self, question: &Question, node: u32, bit: bool) -> bool {
        if self.fault.is_some() {
            return false;
        }
        if self.decisions == 0 {
            self.fault(AddressFault::TooMuch);
            return false;
        }
        self.decisions -= 1;
        let contexts = question.contexts.iter().take(question.count);
        let chance = self
            .chances
            .ask(question.set, contexts.map(|context| mixed(*context, node)));
        let bit = match &mut self.arithmetic {
            Some(arithmetic) => arithmetic.bit(chance, bit),
            None => bit,
        };
        self.chances.learn(question.set, bit);
        bit
    }
}

impl Question {
    /// Whatever the field; the field; the field with each hint; the field with all of them.
    fn of(set: usize, field: Field, hints: &[i64]) -> Self {
        let mut contexts = [0; MOST_CONTEXTS];
        let whole = mixed(20, field);
        let mut all = whole;
        contexts[0] = mixed(10, set as u32);
        contexts[1] = whole;
        let mut count = 2;
        for (place, hint) in hints.iter().take(MOST_CONTEXTS - 3).enumerate() {
            let hint = mixed(*hint as u32, (*hint >> 32) as u32 ^ place as u32);
            contexts[count] = mixed(whole, hint);
            all = mixed(all, hint);
            count += 1;
        }
        if hints.len() > 1 {
            contexts[count] = mixed(all, 30);
            count += 1;
        }
        Self { set, contexts, count }
    }
}

/// Two numbers made one that seldom stands for another two.
fn mixed(a: u32, b: u32) -> u32 {
    let joined = (a ^ b.wrapping_mul(0x9e37_79b1))
        .wrapping_mul(0x85eb_ca6b)
        .rotate_left(15);
    (joined ^ joined >> 13).wrapping_mul(0xc2b2_ae35)
}
