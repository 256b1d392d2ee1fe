//! What stands in the places of a message.

/// A value in a message.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Argument<'a> {
    /// A whole number, which also chooses between one and many; written in digits without marks between thousands.
    Count(u32),
    /// Words as they are, numbers of other kinds among them: those are written before, in the plan's units.
    Text(&'a str),
}

/// What can stand in a message.
pub trait ToArgument {
    /// This, in a message.
    fn to_argument(&self) -> Argument<'_>;
}

impl ToArgument for str {
    fn to_argument(&self) -> Argument<'_> {
        Argument::Text(self)
    }
}

impl ToArgument for String {
    fn to_argument(&self) -> Argument<'_> {
        Argument::Text(self)
    }
}

impl<T: ToArgument + ?Sized> ToArgument for &T {
    fn to_argument(&self) -> Argument<'_> {
        (**self).to_argument()
    }
}

macro_rules! whole_numbers {
    ($($number:ty),+) => {
        $(impl ToArgument for $number {
            fn to_argument(&self) -> Argument<'_> {
                // No plan counts beyond 2^32, and nothing is counted below zero.
                Argument::Count(u32::try_from(*self).unwrap_or(u32::MAX))
            }
        })+
    };
}

whole_numbers!(u8, u16, u32, u64, usize, i32, i64);
