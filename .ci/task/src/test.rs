//! `cargo task test`: everything that must hold before a change is published.

use std::cell::{OnceCell, RefCell};
use std::process::Command;

use crate::chromium::Chromium;
use crate::engines::Engine;
use crate::process::{cargo, output, program, run};
use crate::project::Project;
use crate::steps::{self, Step};
use crate::tools::{self, WasmTools};
use crate::{bench, bundle, fuzz};

/// The most the page's module may weigh, compressed as a server would send it.
const MODULE_BUDGET_BYTES: u64 = 700_000;

/// The most the module that reads base data may weigh, compressed.
const READERS_BUDGET_BYTES: u64 = 450_000;

/// How the file of that module begins.
const READERS: &str = "hobnail_readers";

/// How long each reader is given mutated inputs here; `cargo task fuzz` gives them longer.
const FUZZ_SECONDS: f64 = 20.0;

/// Prints a file's size as brotli compresses it at its best.
const COMPRESSED_SIZE: &str = "const { brotliCompressSync } = require('zlib'); \
    console.log(brotliCompressSync(require('fs').readFileSync(process.argv[1])).length)";

/// Runs every check in order, quick ones first, up to the first that fails.
pub fn test(project: &Project) -> Result<(), String> {
    let browser = OnceCell::new();
    let left_out = RefCell::new(Vec::new());
    let report = steps::run(vec![
        Step::new("format", || format(project)),
        Step::new("lints, native", || lints_native(project)),
        Step::new("lints, browser", || lints_browser(project)),
        Step::new("documentation", || documentation(project)),
        Step::new("native tests", || native_tests(project)),
        Step::new("the commands' own tests", || own_tests(project)),
        Step::new("mutated inputs", || fuzz::check(project, FUZZ_SECONDS)),
        Step::new("benches compile", || {
            run(&mut bench::native(project, &["--no-run"]))?;
            run(&mut bench::opening(project, &["--no-run"]))
        }),
        Step::new("tools for the browser", || {
            let tools = WasmTools::install(project)?;
            let chromium = Chromium::find_or_install(project)?;
            browser
                .set((tools, chromium))
                .map_err(|_| "the tools were looked for twice".to_string())
        }),
        Step::new("tests in the browser", || {
            let (tools, chromium) = browser.get().ok_or("no browser")?;
            run(&mut in_browser(project, tools, chromium, &["--test", "in_browser"])?)
        }),
        Step::new("release build and size", || {
            let (tools, _) = browser.get().ok_or("no tools")?;
            build_page(project, tools)?;
            within_budget(project)?;
            bundle::make(project, None)
        }),
        Step::new("end to end", || {
            let (_, chromium) = browser.get().ok_or("no browser")?;
            end_to_end(project, chromium)
        }),
        Step::new("end to end, Firefox", || {
            everywhere(project, Engine::Firefox, &left_out)
        }),
        Step::new("end to end, WebKit", || everywhere(project, Engine::WebKit, &left_out)),
        Step::new("layout and licenses", || {
            run(&mut cargo(
                project,
                &["test", "--locked", "--package", "hobnail_repository"],
            ))
        }),
    ]);
    println!("\n{}", report.in_words());
    for engine in left_out.into_inner() {
        println!("not tested: {engine}");
    }
    match report.failed {
        None => Ok(()),
        Some((name, _)) => Err(format!("`{name}` failed")),
    }
}

fn format(project: &Project) -> Result<(), String> {
    run(&mut cargo(project, &["fmt", "--all", "--check"]))?;
    run(&mut own(project, &["fmt", "--check"]))
}

fn lints_native(project: &Project) -> Result<(), String> {
    let arguments = [
        "clippy",
        "--locked",
        "--workspace",
        "--all-targets",
        "--",
        "--deny",
        "warnings",
    ];
    run(&mut cargo(project, &arguments))?;
    run(own(project, &["clippy", "--all-targets", "--", "--deny", "warnings"])
        .env("CARGO_TARGET_DIR", own_target(project)))
}

/// What is compiled for the browser, core's library with it, is linted as the browser sees it.
fn lints_browser(project: &Project) -> Result<(), String> {
    tools::ensure_wasm_target(project)?;
    let mut arguments = vec![
        "clippy",
        "--locked",
        "--target",
        "wasm32-unknown-unknown",
        "--all-targets",
    ];
    arguments.extend([
        "--package",
        "hobnail_web",
        "--package",
        "hobnail_in_browser",
        "--package",
        "hobnail_readers",
        "--",
        "--deny",
        "warnings",
    ]);
    run(&mut cargo(project, &arguments))
}

fn documentation(project: &Project) -> Result<(), String> {
    let mut command = cargo(project, &["doc", "--locked", "--workspace", "--no-deps"]);
    run(command.env("RUSTDOCFLAGS", "--deny warnings"))
}

/// Everything but the packages that have a step of their own.
fn native_tests(project: &Project) -> Result<(), String> {
    let mut arguments = vec!["test", "--locked", "--workspace"];
    arguments.extend(["--exclude", "hobnail_end_to_end", "--exclude", "hobnail_repository"]);
    run(&mut cargo(project, &arguments))
}

fn own_tests(project: &Project) -> Result<(), String> {
    run(own(project, &["test"]).env("CARGO_TARGET_DIR", own_target(project)))
}

/// A cargo command about this program itself.
fn own(project: &Project, arguments: &[&str]) -> Command {
    program("cargo", &project.root.join(".ci/task"), arguments)
}

fn own_target(project: &Project) -> std::path::PathBuf {
    project.root.join(".ci/task/target")
}

/// `cargo test` of the package whose tests run inside the browser, with these further arguments.
pub fn in_browser(
    project: &Project,
    tools: &WasmTools,
    chromium: &Chromium,
    arguments: &[&str],
) -> Result<Command, String> {
    let mut command = cargo(project, &["test", "--locked", "--target", "wasm32-unknown-unknown"]);
    command.args(["--package", "hobnail_in_browser"]).args(arguments);
    command.env("PATH", tools.path()?);
    command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", "wasm-bindgen-test-runner");
    command.env("CHROMEDRIVER", &chromium.driver);
    // Seconds that one test file may take, benches among them.
    command.env("WASM_BINDGEN_TEST_TIMEOUT", "1800");
    Ok(command)
}

/// Builds the page as it is published.
pub fn build_page(project: &Project, tools: &WasmTools) -> Result<(), String> {
    let mut command = program("trunk", &project.root, &["build", "--release"]);
    tools.set_for_trunk(&mut command)?;
    run(&mut command)
}

fn within_budget(project: &Project) -> Result<(), String> {
    let dist = project.dist();
    let in_words = |fault: std::io::Error| format!("{}: {fault}", dist.display());
    let (mut page, mut readers) = (0, 0);
    for entry in std::fs::read_dir(&dist).map_err(in_words)? {
        let file = entry.map_err(in_words)?.path();
        if file.extension().is_some_and(|extension| extension == "wasm") {
            let size = output(program("node", &project.root, &["-e", COMPRESSED_SIZE]).arg(&file))?;
            let size = size
                .trim()
                .parse::<u64>()
                .map_err(|_| format!("node printed `{}` for a size", size.trim()))?;
            let is_readers = file
                .file_name()
                .is_some_and(|name| name.to_string_lossy().starts_with(READERS));
            *(if is_readers { &mut readers } else { &mut page }) += size;
        }
    }
    for (name, bytes, budget) in [
        ("the page's module", page, MODULE_BUDGET_BYTES),
        ("the readers' module", readers, READERS_BUDGET_BYTES),
    ] {
        if bytes == 0 {
            return Err(format!("{} has not {name}", dist.display()));
        }
        println!("{name} is {bytes} bytes compressed, of {budget}");
        if bytes > budget {
            return Err(format!(
                "{name} is {bytes} bytes compressed, over its budget of {budget}"
            ));
        }
    }
    Ok(())
}

/// Builds the command line too, since a plan must have the same numbers there as on the page.
fn end_to_end(project: &Project, chromium: &Chromium) -> Result<(), String> {
    run(&mut cargo(
        project,
        &["build", "--locked", "--package", "hobnail_core", "--bin", "hobnail"],
    ))?;
    let mut command = cargo(project, &["test", "--locked", "--package", "hobnail_end_to_end"]);
    command
        .env("HOBNAIL_CHROMIUM", &chromium.browser)
        .env("HOBNAIL_CHROMEDRIVER", &chromium.driver)
        .env("HOBNAIL_AXE", tools::axe_core(project)?);
    run(command.env("HOBNAIL_COMMAND_LINE", project.target.join("debug/hobnail")))
}

/// What must work in every engine, and without a network, in this one. Where it is not to be had, that is said here and once more at the end.
fn everywhere(project: &Project, engine: Engine, left_out: &RefCell<Vec<String>>) -> Result<(), String> {
    match engine.find_or_install(project) {
        Ok(installed) => {
            let arguments = [
                "test",
                "--locked",
                "--package",
                "hobnail_end_to_end",
                "--test",
                "scenarios",
            ];
            let scenarios = || {
                run(installed
                    .cargo(project, &arguments)
                    .args(["--", "everywhere::", "offline::"]))
            };
            scenarios().or_else(|fault| {
                if !engine.stops_by_itself() {
                    return Err(fault);
                }
                println!(
                    "{fault}: {} stops good modules now and then, so once more",
                    engine.name()
                );
                scenarios()
            })
        }
        Err(fault) => {
            println!("not tested in {}: {fault}", engine.name());
            left_out.borrow_mut().push(format!("{}: {fault}", engine.name()));
            Ok(())
        }
    }
}
