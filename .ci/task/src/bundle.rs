//! `cargo task bundle`: the built page in one file, that runs by a double click and asks nothing of anybody.
//!
//! The file is made of what is in `dist/` and of nothing else, so it is the page that was tested. What it holds and how
//! it starts is written in `one_file`; here files are read, packed and written.

mod one_file;

use std::fs;
use std::path::Path;

use crate::process::{answer, program};
use crate::project::Project;
use crate::test::build_page;
use crate::tools::WasmTools;
use one_file::{Packer, Sources};

/// The file's name, beside the page it is made of: what is published holds both.
pub const NAME: &str = "hobnail.html";

/// The most the file may weigh.
const BUDGET_BYTES: usize = 2_500_000;

/// Builds the page as it is published, and the file from it.
pub fn bundle(project: &Project, address: Option<&str>) -> Result<(), String> {
    build_page(project, &WasmTools::install(project)?)?;
    make(project, address)
}

/// Makes the file from the page as it was built, with the address where the page is to be found when there is one.
pub fn make(project: &Project, address: Option<&str>) -> Result<(), String> {
    let dist = project.dist();
    let mut files = Vec::new();
    read_below(&dist, "", &mut files)?;
    let start = project.root.join("web/one_file.js");
    let sources = Sources {
        start: read_text(&start)?,
        address,
        files,
    };
    let text = one_file::assemble(&sources, &Node { project })?;
    let path = dist.join(NAME);
    fs::write(&path, &text).map_err(|fault| format!("{}: {fault}", path.display()))?;
    println!("{} is {} bytes, of {BUDGET_BYTES}", path.display(), text.len());
    if text.len() > BUDGET_BYTES {
        return Err(format!(
            "{NAME} is {} bytes, over its budget of {BUDGET_BYTES}",
            text.len()
        ));
    }
    Ok(())
}

/// Every file below a folder, with its path written with slashes, in the order of their paths.
fn read_below(folder: &Path, prefix: &str, files: &mut Vec<(String, Vec<u8>)>) -> Result<(), String> {
    let in_words = |fault: std::io::Error| format!("{}: {fault}", folder.display());
    let mut names = Vec::new();
    for entry in fs::read_dir(folder).map_err(in_words)? {
        names.push(entry.map_err(in_words)?.file_name().to_string_lossy().into_owned());
    }
    names.sort();
    for name in names {
        let (path, inside) = (folder.join(&name), format!("{prefix}{name}"));
        if path.is_dir() {
            read_below(&path, &format!("{inside}/"), files)?;
        } else if inside != NAME {
            let bytes = fs::read(&path).map_err(|fault| format!("{}: {fault}", path.display()))?;
            files.push((inside, bytes));
        }
    }
    Ok(())
}

fn read_text(path: &Path) -> Result<String, String> {
    fs::read_to_string(path).map_err(|fault| format!("{}: {fault}", path.display()))
}

/// What Node does for us: it compresses and hashes, and is needed for wasm-opt in any case.
struct Node<'a> {
    project: &'a Project,
}

impl Node<'_> {
    /// The expression worked out for `bytes`, in base64.
    fn in_base64(&self, expression: &str, bytes: &[u8]) -> Result<String, String> {
        let code = format!(
            "const bytes = require('fs').readFileSync(0); process.stdout.write(({expression}).toString('base64'))"
        );
        answer(&mut program("node", &self.project.root, &["-e", &code]), bytes)
    }
}

impl Packer for Node<'_> {
    fn base64(&self, bytes: &[u8]) -> Result<String, String> {
        self.in_base64("bytes", bytes)
    }

    fn gzip_in_base64(&self, bytes: &[u8]) -> Result<String, String> {
        self.in_base64("require('zlib').gzipSync(bytes, { level: 9 })", bytes)
    }

    fn sha256_in_base64(&self, text: &str) -> Result<String, String> {
        self.in_base64(
            "require('crypto').createHash('sha256').update(bytes).digest()",
            text.as_bytes(),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The digest is that of FIPS 180-2, appendix B.1, for `abc`.
    #[test]
    fn node_packs_and_hashes() {
        let project = Project::find().unwrap();
        let node = Node { project: &project };
        assert_eq!(node.base64(b"abc").unwrap(), "YWJj");
        assert_eq!(
            node.sha256_in_base64("abc").unwrap(),
            "ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0="
        );
        let packed = node.gzip_in_base64(&[7; 10_000]).unwrap();
        assert!(packed.starts_with("H4sI") && packed.len() < 200, "{packed}");
    }
}
