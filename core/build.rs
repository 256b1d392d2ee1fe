//! Writes the shipped factor tables down as JSON, which the library reads anyhow: people write TOML, and the page need
//! not carry a reader of it. Joins the messages of each language to one text.

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
    for name in ["land", "people", "walking"] {
        let path = tables.join(name).with_extension("toml");
        let text = fs::read_to_string(&path)?;
        let mut table: toml::Table = toml::from_str(&text).map_err(|fault| format!("{}: {fault}", path.display()))?;
        // Messages say what each factor is, in every language.
        let factors = table.get_mut("factor").and_then(toml::Value::as_array_mut);
        for factor in factors.into_iter().flatten().filter_map(toml::Value::as_table_mut) {
            factor.remove("title");
            factor.remove("note");
        }
        fs::write(out.join(name).with_extension("json"), serde_json::to_string(&table)?)?;
    }
    Ok(())
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
