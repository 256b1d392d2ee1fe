//! Writes the shipped factor tables down as constants: people write TOML, and the page need not carry a reader of it.
//! Joins the messages of each language to one text.

use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};

fn main() -> Result<(), Box<dyn Error>> {
    let out = PathBuf::from(std::env::var("OUT_DIR")?);
    write_tables(&out)?;
    write_messages(&out)
}

fn write_tables(out: &Path) -> Result<(), Box<dyn Error>> {
    let tables = Path::new("src/factors");
    println!("cargo::rerun-if-changed={}", tables.display());
    let mut source = "const SHIPPED: &[(&str, &[ShippedFactor])] = &[\n".to_owned();
    for name in ["land.toml", "people.toml", "walking.toml"] {
        let text = fs::read_to_string(tables.join(name))?;
        let table: toml::Table = toml::from_str(&text).map_err(|fault| format!("{name}: {fault}"))?;
        source += &format!("    ({name:?}, &[\n");
        for factor in rows(&table, "factor") {
            source += &written(factor).map_err(|fault| format!("{name}: {fault} in {factor:?}"))?;
        }
        source += "    ]),\n";
    }
    Ok(fs::write(out.join("factors.rs"), source + "];\n")?)
}

/// The rows of a list of tables; none where there is no such list.
fn rows<'a>(table: &'a toml::Table, name: &str) -> impl Iterator<Item = &'a toml::Table> {
    let rows = table.get(name).and_then(toml::Value::as_array);
    rows.into_iter().flatten().filter_map(toml::Value::as_table)
}

/// A row as a constant; messages say its title and note, in every language.
fn written(factor: &toml::Table) -> Result<String, String> {
    let mut text = "        ShippedFactor {".to_owned();
    for name in ["id", "unit"] {
        text += &format!(" {name}: {:?},", text_of(factor, name)?);
    }
    for name in ["low", "typical", "high"] {
        let value = factor.get(name).ok_or(name)?;
        let number = value.as_float().or(value.as_integer().map(|integer| integer as f64));
        text += &format!(" {name}: {:?},", number.ok_or(name)?);
    }
    text += &format!(" kind: SpreadKind::{},", variant(text_of(factor, "kind")?));
    text += &format!(" group: {:?},", text_of(factor, "group").ok());
    text += &format!(" aliases: &{:?}, sources: &[\n", texts(factor, "aliases")?);
    for source in rows(factor, "source") {
        text += "            ShippedSource { gives: &[";
        for given in texts(source, "gives")? {
            text += &format!("Given::{}, ", variant(given));
        }
        text += &format!("], how: How::{},", variant(text_of(source, "how")?));
        text += &format!(" title: {:?},", text_of(source, "title").unwrap_or_default());
        text += &format!(" year: {:?},", source.get("year").and_then(toml::Value::as_integer));
        for name in ["edition", "table", "via"] {
            text += &format!(" {name}: {:?},", text_of(source, name).ok());
        }
        text += " },\n";
    }
    Ok(text + "        ] },\n")
}

fn text_of<'a>(table: &'a toml::Table, name: &str) -> Result<&'a str, String> {
    table
        .get(name)
        .and_then(toml::Value::as_str)
        .ok_or_else(|| name.to_owned())
}

fn texts<'a>(table: &'a toml::Table, name: &str) -> Result<Vec<&'a str>, String> {
    let Some(list) = table.get(name) else {
        return Ok(Vec::new());
    };
    let texts = list
        .as_array()
        .map(|list| list.iter().map(toml::Value::as_str).collect());
    texts.flatten().ok_or_else(|| name.to_owned())
}

/// The variant whose word in tables this is: `FromMemory` of `from_memory`.
fn variant(word: &str) -> String {
    let parts = word.split('_').map(|part| part.split_at(1.min(part.len())));
    parts.map(|(first, rest)| first.to_ascii_uppercase() + rest).collect()
}

fn write_messages(out: &Path) -> Result<(), Box<dyn Error>> {
    let folder = Path::new("messages");
    println!("cargo::rerun-if-changed={}", folder.display());
    let mut source = String::new();
    let mut ids = Vec::new();
    for (language, name) in [("en", "ENGLISH"), ("es", "SPANISH")] {
        let mut files = Vec::new();
        for entry in fs::read_dir(folder.join(language))? {
            files.push(entry?.path());
        }
        files.sort();
        let mut text = String::new();
        for file in files {
            text += &fs::read_to_string(file)?;
            text += "\n";
        }
        // Every language has the same messages, which a test of the repository checks.
        if language == "en" {
            ids.extend(text.lines().filter_map(id_of).map(str::to_owned));
        }
        let joined = out.join(language).with_extension("ftl");
        fs::write(&joined, text)?;
        source += &format!(
            "/// Every message of the language {language:?}.\nconst {name}: &str = include_str!({:?});\n",
            joined.display().to_string()
        );
    }
    ids.sort();
    let mut pairs = ids.windows(2);
    if let Some([twice, _]) = pairs.find(|pair| pair.first() == pair.last()) {
        return Err(format!("the message {twice} is written twice").into());
    }
    fs::write(
        out.join("ids.rs"),
        format!("/// The names of all messages, in the order of their bytes.\nconst IDS: &[&str] = &{ids:?};\n"),
    )?;
    Ok(fs::write(out.join("messages.rs"), source)?)
}

/// The name of the message that begins on a line.
fn id_of(line: &str) -> Option<&str> {
    let (id, _) = line.split_once('=')?;
    let id = id.trim_end();
    let begins = line.starts_with(|letter: char| letter.is_ascii_alphabetic());
    (begins && id.chars().all(|letter| letter.is_ascii_alphanumeric() || letter == '-')).then_some(id)
}
