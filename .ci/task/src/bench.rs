//! `cargo task bench`: timings of core, native and in Chromium.

use std::process::Command;

use crate::chromium::Chromium;
use crate::process::{cargo, run};
use crate::project::Project;
use crate::test::in_browser;
use crate::tools::WasmTools;

/// Runs the benches natively, then the same operations in Chromium where it is installed.
pub fn bench(project: &Project) -> Result<(), String> {
    run(&mut native(project, &[]))?;
    match Chromium::find() {
        Some(chromium) => {
            let tools = WasmTools::install(project)?;
            let arguments = ["--release", "--test", "benches", "--", "--nocapture"];
            run(&mut in_browser(project, &tools, &chromium, &arguments)?)
        }
        None => {
            println!("no Chromium here: the benches ran natively only");
            Ok(())
        }
    }
}

/// `cargo bench` of core, with these further arguments.
pub fn native(project: &Project, arguments: &[&str]) -> Command {
    let mut command = cargo(
        project,
        &["bench", "--locked", "--package", "hobnail_core", "--benches"],
    );
    command.args(arguments);
    command
}
