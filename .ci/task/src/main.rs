//! The project's commands: `cargo task run | test | bundle | bench | fuzz NAME MINUTES`.
//!
//! Each installs what it needs and is missing, by version, in a folder of the project's own under the cargo home.
//! Modules in reading order: what may be asked, the process runner, tools and browsers, then one file per command.

mod arguments;

mod project;

mod process;

mod lock;

mod tools;

mod debian;

mod chromium;

mod engines;

mod steps;

mod bench;
mod bundle;
mod fuzz;
mod run;
mod test;

use std::process::ExitCode;

use arguments::Command;

fn main() -> ExitCode {
    let command = match arguments::parse(std::env::args().skip(1)) {
        Ok(command) => command,
        Err(message) => {
            eprintln!("{message}\n\n{}", arguments::USAGE);
            return ExitCode::from(2);
        }
    };
    let done = project::Project::find().and_then(|project| match command {
        Command::Run => run::run(&project),
        Command::Test => test::test(&project),
        Command::Bundle { address } => bundle::bundle(&project, address.as_deref()),
        Command::Bench => bench::bench(&project),
        Command::Fuzz { name, minutes } => fuzz::fuzz(&project, &name, minutes),
    });
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("cargo task: {message}");
            ExitCode::FAILURE
        }
    }
}
