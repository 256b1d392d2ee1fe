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
        let table: toml::Value = toml::from_str(&text).map_err(|fault| format!("{}: {fault}", path.display()))?;
        fs::write(out.join(name).with_extension("json"), serde_json::to_string(&table)?)?;
    }
    Ok(())
}

fn write_messages(out: &Path) -> Result<(), Box<dyn Error>> {
    let folder = Path::new("messages");
    println!("cargo::rerun-if-changed={}", folder.display());
    let mut source = String::new();
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
        let joined = out.join(language).with_extension("ftl");
        fs::write(&joined, text)?;
        source += &format!(
            "/// Every message of the language {language:?}.\nconst {name}: &str = include_str!({:?});\n",
            joined.display().to_string()
        );
    }
    Ok(fs::write(out.join("messages.rs"), source)?)
}
