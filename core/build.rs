//! Writes the shipped factor tables down as JSON, which the library reads anyhow: people write TOML, and the page need
//! not carry a reader of it.

use std::path::{Path, PathBuf};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let tables = Path::new("src/factors");
    println!("cargo::rerun-if-changed={}", tables.display());
    let out = PathBuf::from(std::env::var("OUT_DIR")?);
    for name in ["land", "people", "walking"] {
        let path = tables.join(name).with_extension("toml");
        let text = std::fs::read_to_string(&path)?;
        let table: toml::Value = toml::from_str(&text).map_err(|fault| format!("{}: {fault}", path.display()))?;
        std::fs::write(out.join(name).with_extension("json"), serde_json::to_string(&table)?)?;
    }
    Ok(())
}
