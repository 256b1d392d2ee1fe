//! Tools of the project's own, each at one version, in a folder under the cargo home that nobody else uses.
//!
//! A tool is there when its folder is: it is built beside and moved in place when complete, so an interrupted
//! installation leaves nothing that looks done.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::lock;
use crate::process::{cargo, output, program, run};
use crate::project::{Project, find_on_path};

const TRUNK: &str = "0.21.14";
const BINARYEN: &str = "132.0.0";
const GECKODRIVER: &str = "0.37.1";
const AXE_CORE: &str = "4.14.1";
const FLUENT: &str = "0.19.1";

/// Where trunk, wasm-bindgen and wasm-opt are once they are installed.
pub struct WasmTools {
    folders: Vec<PathBuf>,
    /// The file of the library that puts messages into words, which the page is built with.
    pub fluent: PathBuf,
}

impl WasmTools {
    /// Installs what is missing to build and test for the browser.
    pub fn install(project: &Project) -> Result<WasmTools, String> {
        ensure_wasm_target(project)?;
        let wasm_bindgen = wasm_bindgen(project)?;
        Ok(WasmTools {
            folders: vec![trunk(project)?, wasm_bindgen, binaryen(project)?],
            fluent: fluent(project)?,
        })
    }

    /// What trunk builds the page with.
    pub fn set_for_trunk(&self, command: &mut Command) -> Result<(), String> {
        command
            .env("PATH", self.path()?)
            .env("HOBNAIL_FLUENT", &self.fluent)
            .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", page_flags()?);
        Ok(())
    }

    /// PATH with the tools first.
    pub fn path(&self) -> Result<OsString, String> {
        let rest = std::env::var_os("PATH").unwrap_or_default();
        let folders = self.folders.iter().cloned().chain(std::env::split_paths(&rest));
        std::env::join_paths(folders).map_err(|fault| format!("a tool's folder cannot stand in PATH: {fault}"))
    }
}

/// The page names the files that a fault of its own lies in; those of libraries without the folder that this machine
/// keeps them in.
fn page_flags() -> Result<String, String> {
    let mut flags = String::new();
    let sources = crate::project::cargo_home()?.join("registry/src");
    for registry in std::fs::read_dir(&sources).into_iter().flatten().flatten() {
        let folder = registry.path().display().to_string();
        // Flags are parted at blanks; a folder with one is then named as it is.
        if !folder.contains(' ') {
            flags += &format!("--remap-path-prefix={folder}/= ");
        }
    }
    Ok(flags)
}

/// Sees that the toolchain can compile for the browser.
pub fn ensure_wasm_target(project: &Project) -> Result<(), String> {
    let sysroot = output(&mut program("rustc", &project.root, &["--print", "sysroot"]))?;
    let target = "wasm32-unknown-unknown";
    if Path::new(sysroot.trim()).join("lib/rustlib").join(target).is_dir() {
        return Ok(());
    }
    run(&mut program("rustup", &project.root, &["target", "add", target]))
}

fn trunk(project: &Project) -> Result<PathBuf, String> {
    let package = ["trunk", "--version", TRUNK, "--locked"];
    cargo_install(project, &format!("trunk-{TRUNK}"), &package)
}

/// The command line of wasm-bindgen reads only what the same version of the library wrote.
fn wasm_bindgen(project: &Project) -> Result<PathBuf, String> {
    let file = project.root.join("Cargo.lock");
    let lock = std::fs::read_to_string(&file).map_err(|fault| format!("{}: {fault}", file.display()))?;
    let version = lock::version(&lock, "wasm-bindgen")?.ok_or("Cargo.lock has no wasm-bindgen")?;
    let package = ["wasm-bindgen-cli", "--version", &version];
    cargo_install(project, &format!("wasm-bindgen-{version}"), &package)
}

/// The folder of Firefox's driver, which Debian does not have.
pub fn geckodriver(project: &Project) -> Result<PathBuf, String> {
    let package = ["geckodriver", "--version", GECKODRIVER, "--locked"];
    cargo_install(project, &format!("geckodriver-{GECKODRIVER}"), &package)
}

fn cargo_install(project: &Project, name: &str, package: &[&str]) -> Result<PathBuf, String> {
    install(project, name, "bin", |folder| {
        println!("installing {name}, once, into {}", project.tools.display());
        let build = folder.join("build");
        let mut command = cargo(project, &["install", "--quiet", "--root"]);
        command.arg(folder).args(package).env("CARGO_TARGET_DIR", &build);
        // These tools wait for the disk and for the compiler; compiling them takes longer than they ever run.
        command.env("CARGO_PROFILE_RELEASE_LTO", "off");
        command.env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16");
        command.env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0");
        command.env("CARGO_PROFILE_RELEASE_DEBUG", "false");
        run(&mut command)?;
        std::fs::remove_dir_all(&build).map_err(|fault| format!("{}: {fault}", build.display()))
    })
}

fn binaryen(project: &Project) -> Result<PathBuf, String> {
    npm_install(project, "binaryen", BINARYEN, "node_modules/.bin")
}

/// The file of axe-core that the end-to-end tests run in the page: rules of accessibility.
pub fn axe_core(project: &Project) -> Result<PathBuf, String> {
    let folder = npm_install(project, "axe-core", AXE_CORE, "node_modules/axe-core")?;
    Ok(folder.join("axe.min.js"))
}

fn fluent(project: &Project) -> Result<PathBuf, String> {
    let name = "@fluent/bundle";
    let folder = npm_install(project, name, FLUENT, "node_modules/@fluent/bundle")?;
    Ok(folder.join("index.js"))
}

fn npm_install(project: &Project, package: &str, version: &str, programs: &str) -> Result<PathBuf, String> {
    // A package of an organization has a slash in its name.
    let name = format!("{}-{version}", package.trim_start_matches('@').replace('/', "-"));
    install(project, &name, programs, |folder| {
        if find_on_path("npm").is_none() {
            return Err(format!(
                "{package} comes as a package of npm, which is missing: install Node 20 or later"
            ));
        }
        println!("installing {package} {version}, once, into {}", project.tools.display());
        let mut command = program(
            "npm",
            &project.root,
            &["install", "--no-audit", "--no-fund", "--prefix"],
        );
        run(command.arg(folder).arg(format!("{package}@{version}")))
    })
}

/// The folder `programs` of the tool `name`, after `build` filled an empty one if there was none.
fn install(
    project: &Project,
    name: &str,
    programs: &str,
    build: impl FnOnce(&Path) -> Result<(), String>,
) -> Result<PathBuf, String> {
    let done = project.tools.join(name);
    if !done.join(programs).is_dir() {
        let building = project.tools.join(format!("{name}.{}", std::process::id()));
        let in_words = |fault: std::io::Error| format!("{}: {fault}", building.display());
        std::fs::create_dir_all(&building).map_err(in_words)?;
        build(&building)?;
        std::fs::rename(&building, &done).map_err(in_words)?;
    }
    Ok(done.join(programs))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn project_in(folder: &Path) -> Project {
        Project {
            root: folder.to_path_buf(),
            tools: folder.join("tools"),
            target: folder.join("target"),
        }
    }

    /// An empty folder of this test alone, gone when it ends.
    struct Scratch(PathBuf);

    impl Scratch {
        fn new(name: &str) -> Scratch {
            let folder = std::env::temp_dir().join(format!("hobnail-task-{name}-{}", std::process::id()));
            std::fs::create_dir_all(&folder).unwrap();
            Scratch(folder)
        }
    }

    impl Drop for Scratch {
        fn drop(&mut self) {
            let _ = std::fs::remove_dir_all(&self.0);
        }
    }

    #[test]
    fn a_tool_is_installed_once() {
        let scratch = Scratch::new("once");
        let project = project_in(&scratch.0);
        let build = |folder: &Path| std::fs::create_dir(folder.join("bin")).map_err(|fault| fault.to_string());
        let folder = install(&project, "hammer-1", "bin", build).unwrap();
        assert_eq!(folder, scratch.0.join("tools/hammer-1/bin"));
        let again = install(&project, "hammer-1", "bin", |_| Err("built twice".to_string()));
        assert_eq!(again, Ok(folder));
    }

    #[test]
    fn a_failed_installation_does_not_look_done() {
        let scratch = Scratch::new("failed");
        let project = project_in(&scratch.0);
        let failed = install(&project, "saw-1", "bin", |folder| {
            std::fs::create_dir(folder.join("bin")).unwrap();
            Err("no disk".to_string())
        });
        assert_eq!(failed, Err("no disk".to_string()));
        assert!(!scratch.0.join("tools/saw-1").exists());
    }
}
