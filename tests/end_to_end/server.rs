//! A small server of one folder's files, on this machine alone, that remembers what it was asked for.

use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};

/// A server of one folder, until the test program ends.
pub struct Server {
    port: u16,
    asked: Arc<Mutex<Vec<String>>>,
    is_away: Arc<AtomicBool>,
}

impl Server {
    /// Serves `folder` on a port that nobody uses.
    pub fn start(folder: &Path) -> Server {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).expect("some port is free");
        let port = listener.local_addr().expect("the listener has an address").port();
        let asked = Arc::new(Mutex::new(Vec::new()));
        let (folder, paths) = (folder.to_path_buf(), Arc::clone(&asked));
        let is_away = Arc::new(AtomicBool::new(false));
        let goes = Arc::clone(&is_away);
        std::thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                // A connection that ends without an answer is what a browser meets when there is no network.
                if goes.load(Ordering::SeqCst) {
                    continue;
                }
                let (folder, paths) = (folder.clone(), Arc::clone(&paths));
                // A browser that goes away in the middle of an answer is no fault of the page.
                std::thread::spawn(move || answer(stream, &folder, &paths));
            }
        });
        Server { port, asked, is_away }
    }

    /// Answers nobody any more.
    pub fn go_away(&self) {
        self.is_away.store(true, Ordering::SeqCst);
    }

    /// The address of the folder, which is also the page's origin with a slash behind.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/", self.port)
    }

    /// The paths asked for up to now, in order.
    pub fn asked(&self) -> Vec<String> {
        self.asked.lock().expect("no thread panics with the lock").clone()
    }
}

fn answer(mut stream: TcpStream, folder: &Path, asked: &Mutex<Vec<String>>) -> std::io::Result<()> {
    let mut lines = BufReader::new(stream.try_clone()?).lines();
    let first = lines.next().transpose()?.unwrap_or_default();
    while lines.next().transpose()?.is_some_and(|line| !line.is_empty()) {}
    let target = first.split(' ').nth(1).unwrap_or("/");
    let path = target.split('?').next().unwrap_or(target).to_string();
    asked.lock().expect("no thread panics with the lock").push(path.clone());
    let (status, kind, body) = match file_of(folder, &path).map(|file| (fs::read(&file), media_type(&file))) {
        Some((Ok(body), kind)) => ("200 OK", kind, body),
        _ => ("404 Not Found", "text/plain", Vec::new()),
    };
    let length = body.len();
    write!(
        stream,
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {length}\r\nConnection: close\r\n\r\n"
    )?;
    stream.write_all(&body)
}

/// The file that a path names, `None` for a path that leads out of the folder.
fn file_of(folder: &Path, path: &str) -> Option<PathBuf> {
    let relative = path.strip_prefix('/')?;
    if relative.split('/').any(|part| part == "..") {
        return None;
    }
    Some(folder.join(if relative.is_empty() { "index.html" } else { relative }))
}

/// The media type that a browser insists on: it starts no module and no script of another type.
fn media_type(file: &Path) -> &'static str {
    match file.extension().and_then(|extension| extension.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json" | "geojson") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("woff2") => "font/woff2",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_stay_in_the_folder() {
        let folder = Path::new("/dist");
        assert_eq!(file_of(folder, "/"), Some(PathBuf::from("/dist/index.html")));
        assert_eq!(
            file_of(folder, "/fonts/a.woff2"),
            Some(PathBuf::from("/dist/fonts/a.woff2"))
        );
        assert_eq!(file_of(folder, "/../secret"), None);
        assert_eq!(file_of(folder, "secret"), None);
    }

    #[test]
    fn modules_have_their_type() {
        assert_eq!(media_type(Path::new("page_bg.wasm")), "application/wasm");
        assert_eq!(media_type(Path::new("start.js")), "text/javascript; charset=utf-8");
    }
}
