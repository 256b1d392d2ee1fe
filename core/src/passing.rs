//! What passes between two copies of one build, the page and its worker, as bytes.
//!
//! Values follow one another without names: numbers in the order of little-endian bytes, lists and text after their
//! length, variants after their number. Nothing of it is stored, and a text of names and values would take readers
//! several times as large, which the page has to load. What is not as it was written is refused, never guessed at.

use crate::order::OrderedSet;

/// A value that passes.
pub trait Passed: Sized {
    /// Appends the value.
    fn pass(&self, to: &mut Vec<u8>);

    /// Takes it off the front; `None` where the bytes are not what [`Passed::pass`] writes.
    fn taken(from: &mut &[u8]) -> Option<Self>;
}

/// A value as bytes.
#[must_use]
pub fn to_bytes<T: Passed>(value: &T) -> Vec<u8> {
    let mut bytes = Vec::new();
    value.pass(&mut bytes);
    bytes
}

/// The value of bytes; `None` where they are not what [`to_bytes`] writes, all of them.
#[must_use]
pub fn from_bytes<T: Passed>(mut bytes: &[u8]) -> Option<T> {
    let value = T::taken(&mut bytes)?;
    bytes.is_empty().then_some(value)
}

/// Writes down [`Passed`] for a structure of these fields, in this order, or for an enumeration of these numbered
/// variants with what they hold.
macro_rules! passed {
    (struct $name:ident { $($field:ident),* $(,)? }) => {
        impl $crate::passing::Passed for $name {
            fn pass(&self, to: &mut Vec<u8>) {
                $(self.$field.pass(to);)*
            }

            fn taken(from: &mut &[u8]) -> Option<Self> {
                Some(Self { $($field: $crate::passing::Passed::taken(from)?),* })
            }
        }
    };
    (enum $name:ident {
        $($number:literal = $variant:ident $(($held:ident))? $({ $($field:ident),* })?),* $(,)?
    }) => {
        impl $crate::passing::Passed for $name {
            fn pass(&self, to: &mut Vec<u8>) {
                match self {
                    $(Self::$variant $(($held))? $({ $($field),* })? => {
                        to.push($number);
                        $($held.pass(to);)?
                        $($($field.pass(to);)*)?
                    })*
                }
            }

            fn taken(from: &mut &[u8]) -> Option<Self> {
                match <u8 as $crate::passing::Passed>::taken(from)? {
                    $($number => {
                        $(let $held = $crate::passing::Passed::taken(from)?;)?
                        $($(let $field = $crate::passing::Passed::taken(from)?;)*)?
                        Some(Self::$variant $(($held))? $({ $($field),* })?)
                    })*
                    _ => None,
                }
            }
        }
    };
}
pub(crate) use passed;

/// Writes down [`Passed`] for numbers.
macro_rules! numbers {
    ($($name:ident)*) => {
        $(impl Passed for $name {
            fn pass(&self, to: &mut Vec<u8>) {
                to.extend_from_slice(&self.to_le_bytes());
            }

            fn taken(from: &mut &[u8]) -> Option<Self> {
                let (number, rest) = from.split_first_chunk()?;
                *from = rest;
                Some(Self::from_le_bytes(*number))
            }
        })*
    };
}

numbers!(u8 u32 i32 u64 f64);

fn pass_length(length: usize, to: &mut Vec<u8>) {
    (length as u64).pass(to);
}

impl Passed for () {
    fn pass(&self, _to: &mut Vec<u8>) {}

    fn taken(_from: &mut &[u8]) -> Option<Self> {
        Some(())
    }
}

impl Passed for bool {
    fn pass(&self, to: &mut Vec<u8>) {
        to.push(u8::from(*self));
    }

    fn taken(from: &mut &[u8]) -> Option<Self> {
        match u8::taken(from)? {
            0 => Some(false),
            1 => Some(true),
            _ => None,
        }
    }
}

impl Passed for String {
    fn pass(&self, to: &mut Vec<u8>) {
        pass_length(self.len(), to);
        to.extend_from_slice(self.as_bytes());
    }

    fn taken(from: &mut &[u8]) -> Option<Self> {
        let length = usize::try_from(u64::taken(from)?).ok()?;
        let (text, rest) = from.split_at_checked(length)?;
        *from = rest;
        Some(std::str::from_utf8(text).ok()?.to_owned())
    }
}

impl<T: Passed> Passed for Vec<T> {
    fn pass(&self, to: &mut Vec<u8>) {
        pass_length(self.len(), to);
        for item in self {
            item.pass(to);
        }
    }

    fn taken(from: &mut &[u8]) -> Option<Self> {
        let mut items = Self::new();
        // No room is made for what may not be there.
        for _ in 0..u64::taken(from)? {
            items.push(T::taken(from)?);
        }
        Some(items)
    }
}

impl<T: Passed> Passed for Option<T> {
    fn pass(&self, to: &mut Vec<u8>) {
        self.is_some().pass(to);
        if let Some(value) = self {
            value.pass(to);
        }
    }

    fn taken(from: &mut &[u8]) -> Option<Self> {
        Some(if bool::taken(from)? {
            Some(T::taken(from)?)
        } else {
            None
        })
    }
}

impl<T: Passed, E: Passed> Passed for Result<T, E> {
    fn pass(&self, to: &mut Vec<u8>) {
        self.is_ok().pass(to);
        match self {
            Ok(value) => value.pass(to),
            Err(fault) => fault.pass(to),
        }
    }

    fn taken(from: &mut &[u8]) -> Option<Self> {
        Some(if bool::taken(from)? {
            Ok(T::taken(from)?)
        } else {
            Err(E::taken(from)?)
        })
    }
}

impl<T: Passed> Passed for Box<T> {
    fn pass(&self, to: &mut Vec<u8>) {
        T::pass(self, to);
    }

    fn taken(from: &mut &[u8]) -> Option<Self> {
        T::taken(from).map(Self::new)
    }
}

impl<A: Passed, B: Passed> Passed for (A, B) {
    fn pass(&self, to: &mut Vec<u8>) {
        self.0.pass(to);
        self.1.pass(to);
    }

    fn taken(from: &mut &[u8]) -> Option<Self> {
        Some((A::taken(from)?, B::taken(from)?))
    }
}

impl<T: Passed + Ord> Passed for OrderedSet<T> {
    fn pass(&self, to: &mut Vec<u8>) {
        pass_length(self.len(), to);
        for item in self.iter() {
            item.pass(to);
        }
    }

    fn taken(from: &mut &[u8]) -> Option<Self> {
        Vec::taken(from).map(Self::from_iter)
    }
}

#[cfg(test)]
mod tests;
