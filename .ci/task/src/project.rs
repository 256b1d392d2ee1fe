//! Where the project and its own tools are.

use std::path::{Path, PathBuf};

/// The folders that the commands work in.
pub struct Project {
    /// The top level of the project.
    pub root: PathBuf,
    /// Where the project keeps tools of its own, one folder per tool and version.
    pub tools: PathBuf,
    /// Where cargo builds the project.
    pub target: PathBuf,
}

impl Project {
    /// Finds the folders: cargo says where this program's manifest is, two below the top level.
    pub fn find() -> Result<Project, String> {
        let manifest = std::env::var_os("CARGO_MANIFEST_DIR").ok_or("start it as `cargo task` at the top level")?;
        let manifest = PathBuf::from(manifest);
        let root = manifest
            .ancestors()
            .nth(2)
            .ok_or("the top level of the project was not found")?
            .to_path_buf();
        let tools = cargo_home()?.join("hobnail-tools");
        let target = match std::env::var_os("CARGO_TARGET_DIR") {
            Some(folder) => root.join(folder),
            None => root.join("target"),
        };
        Ok(Project { root, tools, target })
    }

    /// The folder of the built page.
    pub fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }
}

/// The cargo home: `CARGO_HOME`, else `.cargo` in the user's home, as cargo itself decides.
pub fn cargo_home() -> Result<PathBuf, String> {
    if let Some(home) = std::env::var_os("CARGO_HOME").filter(|home| !home.is_empty()) {
        return Ok(PathBuf::from(home));
    }
    let home = std::env::home_dir().ok_or("neither CARGO_HOME nor a home folder is known")?;
    Ok(home.join(".cargo"))
}

/// The program `name` in one of the folders of PATH.
pub fn find_on_path(name: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .map(|folder| folder.join(name))
        .find(|file| is_program(file))
}

fn is_program(file: &Path) -> bool {
    file.is_file()
}
