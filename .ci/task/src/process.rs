//! Running other programs: each prints what it runs, and a failure says which one failed.

use std::io::Write as _;
use std::path::Path;
use std::process::{Command, Stdio};

use crate::project::Project;

/// `cargo` at the top level of the project, with these arguments.
pub fn cargo(project: &Project, arguments: &[&str]) -> Command {
    program("cargo", &project.root, arguments)
}

/// A program in a folder, with these arguments.
///
/// Cargo hands the programs it starts variables about this package; they are taken out, so that a build started here
/// is the same build as one started by hand.
pub fn program(name: &str, folder: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(name);
    command.current_dir(folder).args(arguments);
    for (variable, _) in std::env::vars_os() {
        let variable = variable.to_string_lossy();
        if variable.starts_with("CARGO_PKG_") || variable.starts_with("CARGO_MANIFEST_") || variable == "CARGO" {
            command.env_remove(variable.as_ref());
        }
    }
    command
}

/// Runs it and waits; any end but success is an error in words.
pub fn run(command: &mut Command) -> Result<(), String> {
    let words = in_words(command);
    println!("$ {words}");
    let status = command
        .status()
        .map_err(|fault| format!("`{words}` could not start: {fault}"))?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("`{words}` ended with {status}"))
    }
}

/// Runs it and gives what it printed.
pub fn output(command: &mut Command) -> Result<String, String> {
    let words = in_words(command);
    let output = command
        .output()
        .map_err(|fault| format!("`{words}` could not start: {fault}"))?;
    if !output.status.success() {
        let errors = String::from_utf8_lossy(&output.stderr).trim().to_string();
        return Err(format!("`{words}` ended with {}: {errors}", output.status));
    }
    String::from_utf8(output.stdout).map_err(|_| format!("`{words}` printed bytes that are no text"))
}

/// Runs it, hands it these bytes, and gives what it printed; it must read them all before it prints.
pub fn answer(command: &mut Command, bytes: &[u8]) -> Result<String, String> {
    let words = in_words(command);
    let mut child = command
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|fault| format!("`{words}` could not start: {fault}"))?;
    if let Some(mut input) = child.stdin.take() {
        // A program that ends early says why by its status.
        let _ = input.write_all(bytes);
    }
    let output = child
        .wait_with_output()
        .map_err(|fault| format!("`{words}` was lost: {fault}"))?;
    if !output.status.success() {
        return Err(format!("`{words}` ended with {}", output.status));
    }
    String::from_utf8(output.stdout).map_err(|_| format!("`{words}` printed bytes that are no text"))
}

/// The command as one would type it.
fn in_words(command: &Command) -> String {
    let mut words = vec![command.get_program().to_string_lossy().into_owned()];
    words.extend(
        command
            .get_args()
            .map(|argument| argument.to_string_lossy().into_owned()),
    );
    words.join(" ")
}
