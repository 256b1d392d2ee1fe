//! `cargo task run`: build the page for release, serve it on this machine, open it.

use std::io::{Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::process::{Child, Stdio};
use std::time::Duration;

use crate::process::program;
use crate::project::{Project, find_on_path};
use crate::tools::WasmTools;

/// Ports tried in turn: the first that nobody uses is taken.
const PORTS: std::ops::RangeInclusive<u16> = 8080..=8099;

/// Builds and serves until interrupted; a change to a source file builds anew.
pub fn run(project: &Project) -> Result<(), String> {
    let tools = WasmTools::install(project)?;
    let port = free_port()?;
    let mut command = program(
        "trunk",
        &project.root,
        &["serve", "--release", "--port", &port.to_string()],
    );
    tools.set_for_trunk(&mut command)?;
    let mut server = command
        .stdin(Stdio::null())
        .spawn()
        .map_err(|fault| format!("trunk could not start: {fault}"))?;
    wait_until_served(port, &mut server)?;
    let address = format!("http://127.0.0.1:{port}/");
    println!("\nHobnail is at {address} (stop it with Ctrl-C)");
    open_browser(project, &address);
    let status = server.wait().map_err(|fault| format!("trunk was lost: {fault}"))?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("trunk ended with {status}"))
    }
}

fn free_port() -> Result<u16, String> {
    let free = |port: &u16| TcpListener::bind((Ipv4Addr::LOCALHOST, *port)).is_ok();
    PORTS
        .into_iter()
        .find(free)
        .ok_or(format!("the ports {} to {} are all taken", PORTS.start(), PORTS.end()))
}

/// Waits until the page itself is answered, since the server starts before the first build is done.
fn wait_until_served(port: u16, server: &mut Child) -> Result<(), String> {
    while !is_served(port) {
        if let Some(status) = server.try_wait().map_err(|fault| format!("trunk was lost: {fault}"))? {
            return Err(format!("the page was not built: trunk ended with {status}"));
        }
        std::thread::sleep(Duration::from_millis(200));
    }
    Ok(())
}

fn is_served(port: u16) -> bool {
    let ask = || -> std::io::Result<String> {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port))?;
        stream.set_read_timeout(Some(Duration::from_secs(2)))?;
        stream.write_all(b"GET /start.js HTTP/1.0\r\nHost: 127.0.0.1\r\n\r\n")?;
        let mut answer = String::new();
        stream.read_to_string(&mut answer)?;
        Ok(answer)
    };
    ask().is_ok_and(|answer| answer.contains(" 200 ") && answer.contains("data-module"))
}

/// Opens the user's own browser where there is a screen; the address stands printed in any case.
fn open_browser(project: &Project, address: &str) {
    let has_screen = ["DISPLAY", "WAYLAND_DISPLAY"]
        .iter()
        .any(|name| std::env::var_os(name).is_some());
    let opener = if cfg!(target_os = "macos") { "open" } else { "xdg-open" };
    if (has_screen || cfg!(target_os = "macos")) && find_on_path(opener).is_some() {
        let mut command = program(opener, &project.root, &[address]);
        if let Err(fault) = command.stdin(Stdio::null()).stderr(Stdio::null()).spawn() {
            eprintln!("no browser could be opened: {fault}");
        }
    }
}
