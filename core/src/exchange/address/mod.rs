//! A whole plan as the text of an address's fragment, so that it opens from the address alone.
//!
//! The text is the version's letter, then base64url (RFC 4648, section 5) of the plan's bytes and a checksum, 24 bits. A
//! plan is told by what can not be expected: points by nodes, ties and steps from what stands about them, palettes and
//! settings by what differs from the shipped ones, an alternative by what differs from an earlier one, names by the words
//! of the trade; each decision costs as many bits as it is surprising (`version_1`).
//!
//! Base image, ground heights and history are left out ([`LeftOut`]); all else comes back as it was. An address of any
//! published version opens for ever; one that was cut short, altered or made up is refused in a sentence.
//!
//! Cost: about 3 ms to make or open the address of a village, and as much again the first time; whatever the text, reading takes at most 50 ms and 64 MB,
//! since the decisions and parts an address may hold are counted.

mod checksum;
mod fault;
mod left_out;
mod version_1;

use base64ct::{Base64UrlUnpadded, Encoding as _};

use crate::plan::document::Document;

pub use fault::{AddressFault, TooLarge};
pub use left_out::LeftOut;

/// The letter of plans in which no line asks anything of the lots beside it.
const PLAIN: char = '1';

/// The letter of plans in which one does: what it asks stands behind the rest. The newest that is read.
const WITH_BESIDE: char = '2';

/// What may stand before the text, behind the `#` of an address.
pub const NAME: &str = "plan=";

/// The longest text that is read, in letters.
pub const LONGEST_TEXT: usize = 1 << 15;

/// Bytes of the checksum behind the plan's.
const CHECKSUM_BYTES: usize = 3;

/// A plan as text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Encoded {
    /// What stands behind the `#` of an address: letters, digits, `-` and `_`.
    pub text: String,
    /// What of the plan is not in it.
    pub left_out: Vec<LeftOut>,
}

/// A plan from an address.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The plan.
    pub document: Document,
    /// What it had when the address was made and has no more.
    pub left_out: Vec<LeftOut>,
}

/// What of a document is not in its address. History belongs to no document; who keeps one adds it.
#[must_use]
pub fn left_out(document: &Document) -> Vec<LeftOut> {
    LeftOut::of([document.topography.is_some(), document.base_image.is_some()])
}

/// The document as text. The same document gives the same text. Cost: see the [module](self).
///
/// # Errors
/// [`TooLarge`] when the text would be longer, or hold more, than is read: about six villages; and for points that
/// history lets into no document.
///
/// ```
/// use hobnail_core::exchange::address;
/// use hobnail_core::plan::{Document, projection::GeographicPoint};
/// let origin = GeographicPoint { longitude_ndeg: 0, latitude_ndeg: 0 };
/// let plan = Document::new("Mill Hollow", origin);
/// let told = address::encode(&plan).unwrap();
/// assert_eq!(address::decode(&told.text).unwrap().document, plan);
/// ```
pub fn encode(document: &Document) -> Result<Encoded, TooLarge> {
    let mut linkable = document.clone();
    let missing = [
        linkable.topography.take().is_some(),
        linkable.base_image.take().is_some(),
    ];
    let version = if version_1::has_beside(document) {
        WITH_BESIDE
    } else {
        PLAIN
    };
    let mut bytes = version_1::write(linkable, missing).map_err(|_| TooLarge)?;
    bytes.extend(checksum_of(version, &bytes));
    let mut text = String::from(version);
    text.push_str(&Base64UrlUnpadded::encode_string(&bytes));
    if text.len() > LONGEST_TEXT {
        return Err(TooLarge);
    }
    Ok(Encoded {
        text,
        left_out: LeftOut::of(missing),
    })
}

/// The plan of a text. An address may stand before it, parted by the last `#`; white space, as of an address that was
/// broken over lines, is passed over.
///
/// # Errors
/// [`AddressFault`] when it gives no plan.
pub fn decode(text: &str) -> Result<Opened, AddressFault> {
    let fragment = text.rsplit('#').next().unwrap_or(text);
    let fragment = fragment.strip_prefix(NAME).unwrap_or(fragment);
    let mut letters = fragment.chars().filter(|letter| !letter.is_whitespace());
    let version = letters.next().ok_or(AddressFault::Empty)?;
    let letters: String = letters.take(LONGEST_TEXT).collect();
    match version {
        PLAIN | WITH_BESIDE => {}
        '3'..='9' => return Err(AddressFault::Newer),
        _ => return Err(AddressFault::NoPlan),
    }
    if letters.len() >= LONGEST_TEXT {
        return Err(AddressFault::TooMuch);
    }
    let mut bytes = Base64UrlUnpadded::decode_vec(&letters).map_err(|_| AddressFault::Damaged)?;
    let length = bytes.len().checked_sub(CHECKSUM_BYTES).ok_or(AddressFault::Damaged)?;
    let checksum = bytes.split_off(length);
    if checksum != checksum_of(version, &bytes) {
        return Err(AddressFault::Damaged);
    }
    let (document, missing) = version_1::read(bytes, version == WITH_BESIDE)?;
    Ok(Opened {
        document,
        left_out: LeftOut::of(missing),
    })
}

/// The checksum behind a plan's bytes; of the newer letter it tells that letter too, since one taken for the other would be
/// read as another plan.
fn checksum_of(version: char, bytes: &[u8]) -> [u8; CHECKSUM_BYTES] {
    if version == PLAIN {
        checksum::of(bytes)
    } else {
        checksum::of(&[bytes, &[version as u8]].concat())
    }
}

/// The text with its checksum set right, whatever it says: for tests of what hostile addresses can do, since no other
/// text gets past the checksum.
#[must_use]
pub fn sealed(text: &str) -> String {
    let is_letter = |letter: &char| letter.is_ascii_alphanumeric() || matches!(letter, '-' | '_');
    let version = text
        .chars()
        .next()
        .filter(|letter| *letter == WITH_BESIDE)
        .unwrap_or(PLAIN);
    let letters: String = text.chars().filter(is_letter).skip(1).take(LONGEST_TEXT / 2).collect();
    let whole = letters.get(..letters.len() / 4 * 4).unwrap_or_default();
    let mut bytes = Base64UrlUnpadded::decode_vec(whole).unwrap_or_default();
    bytes.truncate(bytes.len().saturating_sub(CHECKSUM_BYTES));
    bytes.extend(checksum_of(version, &bytes));
    let mut text = String::from(version);
    text.push_str(&Base64UrlUnpadded::encode_string(&bytes));
    text
}

#[cfg(test)]
mod tests;
