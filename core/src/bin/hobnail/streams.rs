//! Standard output and error, written once; a reader that went away is no failure.

use std::io::{self, ErrorKind, Read, Write};

use hobnail_core::say;

/// Where a command writes.
#[derive(Default)]
pub struct Streams {
    broken: bool,
}

impl Streams {
    /// Writes to standard output.
    pub fn out(&mut self, text: &str) {
        let mut out = io::stdout().lock();
        let written = out.write_all(text.as_bytes()).and_then(|()| out.flush());
        self.note(written);
    }

    /// Writes to standard error.
    pub fn err(&mut self, text: &str) {
        // Where messages can not be written there is nowhere to say so.
        let _ = io::stderr().lock().write_all(text.as_bytes());
    }

    /// The whole of a file, or of standard input for `-`; `None` when it can not be read, which is told.
    pub fn read(&mut self, path: &str) -> Option<Vec<u8>> {
        let read = if path == "-" {
            let mut bytes = Vec::new();
            io::stdin().lock().read_to_end(&mut bytes).map(|_| bytes)
        } else {
            std::fs::read(path)
        };
        read.map_err(|error| {
            self.err(
                &(say!(
                    "command-line-can-not-read",
                    file = name_of(path),
                    error = error.to_string()
                ) + "\n"),
            )
        })
        .ok()
    }

    /// Tells what is wrong with the words after a command, and how it is used; the answer is the exit code.
    pub fn refuse(&mut self, command: &str, faults: &[String], words: &str) -> u8 {
        let faults: String = faults
            .iter()
            .map(|fault| format!("hobnail {command}: {fault}\n"))
            .collect();
        self.err(&format!("{faults}\n{}", usage(words)));
        2
    }

    /// The exit code, 2 when output could not be written.
    pub fn finish(self, code: u8) -> u8 {
        if self.broken { 2 } else { code }
    }

    fn note(&mut self, written: io::Result<()>) {
        if let Err(error) = written
            && error.kind() != ErrorKind::BrokenPipe
        {
            let file = say!("command-line-standard-output");
            self.err(&(say!("command-line-can-not-write", file = file, error = error.to_string()) + "\n"));
            self.broken = true;
        }
    }
}

/// How messages call a file.
pub fn name_of(path: &str) -> &str {
    if path == "-" {
        say!("command-line-standard-input")
    } else {
        path
    }
}

/// The text that says how a command is used, as it is written: a message ends without a line's end.
pub fn usage(words: &str) -> String {
    words.to_owned() + "\n"
}
