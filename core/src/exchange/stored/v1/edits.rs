//! Transactions and edits, for journals.

use crate::exchange::json::Json;
use crate::exchange::stored::{Members, Reader, Stored, Writing, stored_words};
use crate::plan::edit::Edit;
use crate::plan::transaction::Transaction;

/// A transaction's label and edits.
pub(crate) fn transaction_to_json(transaction: &Transaction, writing: &mut Writing) {
    writing.put("label", &transaction.label().to_owned());
    writing.put("edits", &transaction.edits().to_vec());
}

/// A transaction; `None` also when its edits change nothing, which no journal writes.
pub(crate) fn transaction_from_json(members: &mut Members<'_>, reader: &mut Reader) -> Option<Transaction> {
    let label: Option<String> = members.take("label", reader);
    let edits: Option<Vec<Edit>> = members.take("edits", reader);
    Transaction::of(label?, edits?)
}

/// [`Cell`](crate::plan::edit::Cell) without the ids it carries.
#[derive(Clone, Copy)]
enum CellWord {
    Heading,
    Site,
    Program,
    Settings,
    Topography,
    BaseImage,
    StreetSection,
    BuildingType,
    Phase,
    Alternative,
    Mark,
}

stored_words!(CellWord {
    "heading" => Heading,
    "site" => Site,
    "program" => Program,
    "settings" => Settings,
    "topography" => Topography,
    "base_image" => BaseImage,
    "street_section" => StreetSection,
    "building_type" => BuildingType,
    "phase" => Phase,
    "alternative" => Alternative,
    "mark" => Mark,
});

impl Stored for Edit {
    fn to_json(&self) -> Json {
        let mut writing = Writing::default();
        let mut put = |cell: CellWord, ids: &[(&str, u32)], before: Json, after: Json| {
            writing.put("cell", &cell);
            for (name, id) in ids {
                writing.put(name, id);
            }
            let entries = [("before", before), ("after", after)];
            entries
                .into_iter()
                .for_each(|(name, json)| writing.put_json(name, json));
        };
        match self {
            Self::Heading { before, after } => put(CellWord::Heading, &[], before.to_json(), after.to_json()),
            Self::Site { before, after } => put(CellWord::Site, &[], before.to_json(), after.to_json()),
            Self::Program { before, after } => put(CellWord::Program, &[], before.to_json(), after.to_json()),
            Self::Settings { before, after } => put(CellWord::Settings, &[], before.to_json(), after.to_json()),
            Self::Topography { before, after } => put(CellWord::Topography, &[], before.to_json(), after.to_json()),
            Self::BaseImage { before, after } => put(CellWord::BaseImage, &[], before.to_json(), after.to_json()),
            Self::StreetSection { id, before, after } => {
                put(
                    CellWord::StreetSection,
                    &[("id", id.0)],
                    before.to_json(),
                    after.to_json(),
                );
            }
            Self::BuildingType { id, before, after } => {
                put(
                    CellWord::BuildingType,
                    &[("id", id.0)],
                    before.to_json(),
                    after.to_json(),
                );
            }
            Self::Phase { id, before, after } => {
                put(CellWord::Phase, &[("id", id.0)], before.to_json(), after.to_json());
            }
            Self::Alternative { id, before, after } => {
                put(
                    CellWord::Alternative,
                    &[("id", id.0)],
                    before.to_json(),
                    after.to_json(),
                );
            }
            Self::Mark {
                alternative,
                id,
                before,
                after,
            } => {
                let ids = [("alternative", alternative.0), ("id", id.0)];
                put(CellWord::Mark, &ids, before.to_json(), after.to_json());
            }
        }
        writing.done()
    }

    fn from_json(json: &Json, reader: &mut Reader) -> Option<Self> {
        let mut members = Members::of(json, reader)?;
        let cell: CellWord = members.take("cell", reader)?;
        let edit = match cell {
            CellWord::Heading => both(&mut members, reader).map(|(before, after)| Self::Heading { before, after }),
            CellWord::Site => both(&mut members, reader).map(|(before, after)| Self::Site { before, after }),
            CellWord::Program => both(&mut members, reader).map(|(before, after)| Self::Program { before, after }),
            CellWord::Settings => both(&mut members, reader).map(|(before, after)| Self::Settings { before, after }),
            CellWord::Topography => {
                both(&mut members, reader).map(|(before, after)| Self::Topography { before, after })
            }
            CellWord::BaseImage => both(&mut members, reader).map(|(before, after)| Self::BaseImage { before, after }),
            CellWord::StreetSection => {
                let id = members.take("id", reader);
                let (before, after) = both(&mut members, reader)?;
                Some(Self::StreetSection { id: id?, before, after })
            }
            CellWord::BuildingType => {
                let id = members.take("id", reader);
                let (before, after) = both(&mut members, reader)?;
                Some(Self::BuildingType { id: id?, before, after })
            }
            CellWord::Phase => {
                let id = members.take("id", reader);
                let (before, after) = both(&mut members, reader)?;
                Some(Self::Phase { id: id?, before, after })
            }
            CellWord::Alternative => {
                let id = members.take("id", reader);
                let (before, after) = both(&mut members, reader)?;
                Some(Self::Alternative { id: id?, before, after })
            }
            CellWord::Mark => {
                let (alternative, id) = (members.take("alternative", reader), members.take("id", reader));
                let (before, after) = both(&mut members, reader)?;
                Some(Self::Mark {
                    alternative: alternative?,
                    id: id?,
                    before,
                    after,
                })
            }
        };
        members.finish(reader);
        edit
    }
}

/// What stood there before and what stands there after.
fn both<T: Stored>(members: &mut Members<'_>, reader: &mut Reader) -> Option<(T, T)> {
    let (before, after) = (members.take("before", reader), members.take("after", reader));
    Some((before?, after?))
}
