//! Debian's packages of browsers and drivers: installed when they are absent and this user may install.

use crate::process::{output, program, run};
use crate::project::{Project, find_on_path};

/// Installs the packages, or gives the command that would: the error of a user who may not.
pub fn install(project: &Project, what: &str, packages: &[&str]) -> Result<(), String> {
    if find_on_path("apt-get").is_none() || !is_root(project) {
        return Err(missing(what, packages));
    }
    run(&mut program("apt-get", &project.root, &["update", "-q"]))?;
    let arguments = ["install", "-q", "-y", "--no-install-recommends"];
    run(program("apt-get", &project.root, &arguments)
        .args(packages)
        .env("DEBIAN_FRONTEND", "noninteractive"))
}

/// That something is missing, and the one command that brings it.
pub fn missing(what: &str, packages: &[&str]) -> String {
    let packages = packages.join(" ");
    format!(
        "the tests drive {what}, and it is missing; install it with: \
         sudo apt-get update && sudo apt-get install {packages}"
    )
}

fn is_root(project: &Project) -> bool {
    output(&mut program("id", &project.root, &["-u"])).is_ok_and(|user| user.trim() == "0")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_missing_is_said_with_the_command_that_brings_it() {
        let words = missing("Chromium", &["chromium", "chromium-driver"]);
        assert!(words.starts_with("the tests drive Chromium"), "{words}");
        assert!(words.ends_with("apt-get install chromium chromium-driver"), "{words}");
    }
}
