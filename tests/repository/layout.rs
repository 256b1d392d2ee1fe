//! What stands where.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The top level of the project.
pub fn top_level() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .ancestors()
        .nth(2)
        .expect("this package is two below the top level")
}

/// Every file below a folder, in the order of their paths.
pub fn files_below(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).unwrap_or_else(|fault| panic!("{}: {fault}", folder.display())) {
        let path = entry.expect("a folder can be listed").path();
        if path.is_dir() {
            files.extend(files_below(&path));
        } else {
            files.push(path);
        }
    }
    files.sort();
    files
}

/// Every Rust source below a folder, with its text.
pub fn sources_below(folder: &Path) -> Vec<(PathBuf, String)> {
    let is_source = |file: &PathBuf| file.extension().is_some_and(|extension| extension == "rs");
    files_below(folder)
        .into_iter()
        .filter(is_source)
        .map(|file| (file.clone(), fs::read_to_string(&file).expect("a source is text")))
        .collect()
}

#[test]
fn the_top_level_holds_these_and_no_more() {
    let expected = BTreeSet::from(
        [
            "Cargo.lock",
            "Cargo.toml",
            "DEVELOPERS.md",
            "LICENSE",
            "README.md",
            "Trunk.toml",
            "core",
            "index.html",
            "rust-toolchain.toml",
            "sample-sketches",
            "styles",
            "tests",
            "web",
        ]
        .map(str::to_string),
    );
    let is_built = |name: &String| name.starts_with('.') || name == "target" || name == "dist";
    let entries = fs::read_dir(top_level()).expect("the top level can be listed");
    let names: BTreeSet<String> = entries
        .map(|entry| {
            entry
                .expect("the top level can be listed")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .filter(|name| !is_built(name))
        .collect();
    assert_eq!(names, expected);
}

/// The modules of core, each followed by those it may import.
///
/// Imports go one way; `figures` and `factors` know nothing of plans, and what measures may use both. Everything may say
/// a message.
const IMPORTS: [(&str, &[&str]); 11] = [
    ("plan", &["messages", "number", "order", "passing", "text"]),
    ("exchange", &["messages", "number", "order", "passing", "text", "plan"]),
    ("fabric", &["messages", "number", "order", "passing", "text", "plan"]),
    (
        "network",
        &["messages", "number", "order", "passing", "text", "plan", "fabric"],
    ),
    ("figures", &["messages", "number", "order", "passing", "text"]),
    (
        "factors",
        &["messages", "number", "order", "passing", "text", "figures"],
    ),
    (
        "measures",
        &[
            "messages", "number", "order", "passing", "text", "plan", "fabric", "network", "figures", "factors",
        ],
    ),
    (
        "outcomes",
        &[
            "messages", "number", "order", "passing", "text", "plan", "fabric", "network", "figures", "factors",
            "measures",
        ],
    ),
    (
        "rules",
        &[
            "messages", "number", "order", "passing", "text", "plan", "fabric", "network", "figures", "factors",
            "measures", "outcomes",
        ],
    ),
    (
        "study",
        &[
            "messages", "number", "order", "passing", "text", "plan", "exchange", "fabric", "network", "figures",
            "factors", "measures", "outcomes", "rules",
        ],
    ),
    (
        "report",
        &[
            "messages", "number", "order", "passing", "text", "plan", "exchange", "fabric", "network", "figures",
            "factors", "measures", "outcomes", "rules", "study",
        ],
    ),
];

#[test]
fn imports_in_core_go_one_way() {
    let core = top_level().join("core/src");
    let mut faults = Vec::new();
    let mut imports = 0;
    for (file, text) in sources_below(&core) {
        let relative = file.strip_prefix(&core).expect("the file is below core");
        let first = relative
            .components()
            .next()
            .expect("the file has a name")
            .as_os_str()
            .to_string_lossy();
        let module = first.trim_end_matches(".rs");
        let Some((_, allowed)) = IMPORTS.iter().find(|(name, _)| *name == module) else {
            continue;
        };
        for piece in text.split("crate::").skip(1) {
            let name: String = piece
                .chars()
                .take_while(|letter| letter.is_alphanumeric() || *letter == '_')
                .collect();
            // The macros that say messages stand at the top of the crate.
            let name = if name == "say" || name == "message" {
                "messages".to_owned()
            } else {
                name
            };
            imports += 1;
            if name != module && !allowed.contains(&name.as_str()) {
                faults.push(format!("{} imports `crate::{name}`", relative.display()));
            }
        }
    }
    assert!(imports > 0, "no import was found, so the search itself is wrong");
    assert_eq!(faults, Vec::<String>::new());
}

#[test]
fn only_one_folder_names_browser_types() {
    let sources = top_level().join("web/src");
    let names_one = |text: &str| {
        ["web_sys", "js_sys", "wasm_bindgen"]
            .iter()
            .any(|name| text.contains(name))
    };
    let mut inside = 0;
    let mut faults = Vec::new();
    for (file, text) in sources_below(&sources) {
        if !names_one(&text) {
            continue;
        }
        if file.starts_with(sources.join("browser")) {
            inside += 1;
        } else {
            faults.push(file);
        }
    }
    assert!(inside > 0, "no browser type was found, so the search itself is wrong");
    assert_eq!(faults, Vec::<PathBuf>::new());
}

/// The page asks nothing of another origin, so no address of one may stand in what it is made of.
#[test]
fn the_page_names_no_other_origin() {
    let mut files = vec![top_level().join("index.html")];
    for folder in ["styles", "web/src"] {
        files.extend(files_below(&top_level().join(folder)));
    }
    let beside = fs::read_dir(top_level().join("web")).expect("the folder can be listed");
    files.extend(beside.map(|entry| entry.expect("the folder can be listed").path()));
    let mut faults = Vec::new();
    for file in files {
        // A typeface is bytes, and its license names its makers' addresses.
        let extension = file
            .extension()
            .map(|extension| extension.to_string_lossy().into_owned());
        if !matches!(
            extension.as_deref(),
            Some("html" | "css" | "js" | "mjs" | "rs" | "svg" | "webmanifest")
        ) {
            continue;
        }
        let text = fs::read_to_string(&file).expect("a source is text");
        for word in text.split(|letter: char| letter.is_whitespace() || "\"'()<>`".contains(letter)) {
            // Names of XML vocabularies look like addresses and are never asked for.
            if word.contains("://") && !word.starts_with("http://www.w3.org/") {
                faults.push(format!("{}: {word}", file.display()));
            }
        }
    }
    assert_eq!(faults, Vec::<String>::new());
}

#[test]
fn the_pages_main_only_calls_the_library() {
    let main = fs::read_to_string(top_level().join("web/src/main.rs")).expect("the page has a main");
    assert!(
        main.lines().count() < 20,
        "web/src/main.rs has {} lines",
        main.lines().count()
    );
}

#[test]
fn no_source_file_is_longer_than_a_thousand_lines() {
    let mut faults = Vec::new();
    for folder in ["core", "web", "tests"] {
        for (file, text) in sources_below(&top_level().join(folder)) {
            if text.lines().count() > 1_000 {
                faults.push(file);
            }
        }
    }
    assert_eq!(faults, Vec::<PathBuf>::new());
}
