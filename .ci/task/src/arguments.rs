//! What may be asked on the command line.

/// What `cargo task` understands.
pub const USAGE: &str = "\
cargo task run                  build the page, serve it on this machine, open it
cargo task test                 everything that must hold before a change is published
cargo task bundle [--address URL]
                                the page in one file, dist/hobnail.html, and where it can be found
cargo task bench                timings, native and in Chromium, beside other libraries
cargo task fuzz NAME MINUTES    mutated inputs against one reader, or against each for NAME `all`";

/// One command with its arguments understood.
#[derive(Debug, PartialEq)]
pub enum Command {
    /// Build, serve, open.
    Run,
    /// Every check, in order.
    Test,
    /// The page in one file.
    Bundle {
        /// Where the page is to be found, written into the file.
        address: Option<String>,
    },
    /// Timings.
    Bench,
    /// Mutated inputs against the target `name`.
    Fuzz {
        /// The target's name, or `all`.
        name: String,
        /// How long, for each target.
        minutes: f64,
    },
}

/// Understands the arguments after the program's name, or says what is wrong with them.
pub fn parse(arguments: impl Iterator<Item = String>) -> Result<Command, String> {
    let arguments: Vec<String> = arguments.collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["run"] => Ok(Command::Run),
        ["test"] => Ok(Command::Test),
        ["bench"] => Ok(Command::Bench),
        ["bundle"] => Ok(Command::Bundle { address: None }),
        ["bundle", "--address", address] => match is_address(address) {
            true => Ok(Command::Bundle {
                address: Some((*address).to_string()),
            }),
            false => Err(format!(
                "an address begins with https:// or http://, unlike `{address}`"
            )),
        },
        ["bundle", ..] => Err("bundle takes nothing, or --address and an address".to_string()),
        ["fuzz", name, minutes] => match minutes.parse::<f64>() {
            Ok(minutes) if minutes > 0.0 && minutes.is_finite() => Ok(Command::Fuzz {
                name: (*name).to_string(),
                minutes,
            }),
            _ => Err(format!("minutes are a positive number, not `{minutes}`")),
        },
        ["fuzz", ..] => Err("fuzz takes the name of a target and a number of minutes".to_string()),
        [] => Err("which command?".to_string()),
        [command @ ("run" | "test" | "bench"), rest @ ..] => Err(format!("`{command}` takes no `{}`", rest.join(" "))),
        [other, ..] => Err(format!("there is no command `{other}`")),
    }
}

/// Whether a person could open it in a browser: a web address with a host and no blanks.
fn is_address(address: &str) -> bool {
    let host = ["https://", "http://"]
        .iter()
        .find_map(|scheme| address.strip_prefix(scheme));
    host.is_some_and(|host| host.starts_with(|letter: char| letter.is_alphanumeric() || letter == '['))
        && !address.contains(|letter: char| letter.is_whitespace() || letter.is_control() || "\"<>".contains(letter))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse_words(words: &str) -> Result<Command, String> {
        parse(words.split_whitespace().map(str::to_string))
    }

    #[test]
    fn commands_are_understood() {
        assert_eq!(parse_words("run"), Ok(Command::Run));
        assert_eq!(parse_words("test"), Ok(Command::Test));
        assert_eq!(parse_words("bench"), Ok(Command::Bench));
        assert_eq!(parse_words("bundle"), Ok(Command::Bundle { address: None }));
        let address = Some("https://example.org/hobnail/".to_string());
        assert_eq!(
            parse_words("bundle --address https://example.org/hobnail/"),
            Ok(Command::Bundle { address })
        );
        let fuzz = Command::Fuzz {
            name: "plan_file".to_string(),
            minutes: 0.5,
        };
        assert_eq!(parse_words("fuzz plan_file 0.5"), Ok(fuzz));
    }

    #[test]
    fn faults_are_named() {
        assert_eq!(parse_words(""), Err("which command?".to_string()));
        assert_eq!(parse_words("deploy"), Err("there is no command `deploy`".to_string()));
        assert_eq!(parse_words("test core"), Err("`test` takes no `core`".to_string()));
        for minutes in ["soon", "0", "-1", "inf", "NaN"] {
            let fault = format!("minutes are a positive number, not `{minutes}`");
            assert_eq!(parse_words(&format!("fuzz journal {minutes}")), Err(fault));
        }
        assert!(parse_words("fuzz journal").is_err());
        for address in [
            "example.org",
            "file:///a",
            "https://",
            "https:///a",
            "https://a\"b",
            "https://a<b",
        ] {
            let fault = format!("an address begins with https:// or http://, unlike `{address}`");
            assert_eq!(parse_words(&format!("bundle --address {address}")), Err(fault));
        }
        assert!(parse_words("bundle https://example.org").is_err());
        assert!(parse_words("bundle --address").is_err());
    }
}
