//! The driver's process: the program between a test and its browser.

use std::fmt::Write as _;
use std::io::{BufRead, BufReader, Read, Write as _};
use std::net::{Ipv4Addr, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Stdio};
use std::time::{Duration, Instant};

use crate::engine::Engine;

/// How long a driver may take to answer at its port.
const PATIENCE: Duration = Duration::from_secs(30);

/// A driver of Chromium takes a port for one family of addresses, and ends where the other family's port of that number
/// was taken meanwhile; it is then started again.
const PORT_TAKEN: &str = "port not available";
/// How often a driver is started before no port is free.
const ATTEMPTS: usize = 5;

/// A driver; ended, and its folder removed, when this is dropped, whatever became of the test.
pub struct Driver {
    process: Child,
    /// Where it answers, on this machine.
    pub port: u16,
    /// The request that ends the browser, and perhaps the driver too.
    goodbye: String,
    folder: PathBuf,
}

impl Driver {
    /// Starts the driver on a port that nobody uses.
    pub fn start(engine: Engine, folder: &Path) -> Driver {
        let mut said = String::new();
        for _ in 0..ATTEMPTS {
            match Driver::try_to_start(engine, folder) {
                Ok(driver) => return driver,
                Err(words) if words.contains(PORT_TAKEN) => said = words,
                Err(words) => panic!("{words}"),
            }
        }
        panic!("in {ATTEMPTS} attempts no port was free: {said}");
    }

    /// The driver, or what it said instead of naming its port.
    fn try_to_start(engine: Engine, folder: &Path) -> Result<Driver, String> {
        let (mut command, port) = engine.driver(folder);
        let name = command.get_program().to_string_lossy().into_owned();
        let mut process = command
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap_or_else(|fault| panic!("{name} could not start: {fault}; `cargo task test` installs it"));
        let mut lines = BufReader::new(process.stdout.take().expect("its output was asked for")).lines();
        let said = match port {
            Some(port) => Ok(port),
            None => said_port(&mut lines, &name),
        };
        let port_named = match said {
            Ok(port) => port,
            Err(words) => {
                // It has ended, or is of no use.
                let _ = process.kill();
                let _ = process.wait();
                return Err(words);
            }
        };
        let driver = Driver {
            process,
            port: port_named,
            goodbye: "GET /shutdown".to_owned(),
            folder: folder.to_path_buf(),
        };
        if port.is_some() {
            driver.wait_until_it_answers(&name);
        }
        // What it says later must be read too, else it would wait for a reader.
        std::thread::spawn(move || lines.for_each(drop));
        Ok(driver)
    }

    /// Tells the driver's session, so that its browser can be ended when the driver would leave it behind.
    pub fn took_session(&mut self, engine: Engine, id: &str) {
        if engine != Engine::Chromium {
            self.goodbye = format!("DELETE /session/{id}");
        }
    }

    fn wait_until_it_answers(&self, name: &str) {
        let begun = Instant::now();
        while TcpStream::connect((Ipv4Addr::LOCALHOST, self.port)).is_err() {
            assert!(
                begun.elapsed() < PATIENCE,
                "{name} does not answer at port {}",
                self.port
            );
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// Asks the driver to end its browser, and waits until it answered that it does.
    fn ask_to_go(&self) -> std::io::Result<()> {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, self.port))?;
        stream.set_read_timeout(Some(Duration::from_secs(10)))?;
        write!(
            stream,
            "{} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n\r\n",
            self.goodbye, self.port
        )?;
        stream.read_to_end(&mut Vec::new())?;
        Ok(())
    }
}

/// The port that a driver names in one of its first lines, or else all it said.
fn said_port(lines: &mut impl Iterator<Item = std::io::Result<String>>, name: &str) -> Result<u16, String> {
    let mut said = String::new();
    loop {
        let Some(Ok(line)) = lines.next() else {
            return Err(format!("{name} named no port; it said:\n{said}"));
        };
        let number = ["on port ", "Listening on 127.0.0.1:"]
            .iter()
            .find_map(|words| Some(line.rsplit_once(words)?.1.trim_end_matches('.')));
        // An earlier line says, by a zero, that any port was asked for.
        match number.and_then(|number| number.parse().ok()) {
            None | Some(0) => writeln!(said, "{line}").expect("a string can be written"),
            Some(port) => return Ok(port),
        }
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // None of this may be a reason for a test to fail: the driver may have ended by itself. It is asked to go first,
        // since it then ends the browser too, which a killed driver leaves behind.
        if self.port != 0 {
            let _ = self.ask_to_go();
        }
        let _ = self.process.kill();
        let _ = self.process.wait();
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}
