//! One test from beginning to end: server, browser, page, the test's own doing, and the end in good order.

use std::panic::{AssertUnwindSafe, resume_unwind};
use std::path::Path;

use crate::browser::{Browser, top_level};
use crate::page::Page;
use crate::server::Server;

/// Runs `doing` on the opened page.
///
/// Whatever happens the browser is ended; when the test fails, a picture of the page at that moment is kept as
/// `target/screenshots/failed-NAME.png`. At the end no error may stand in the console, no notice may be in sight, and
/// no request may have gone to another origin: every scenario checks that, whatever it is about.
pub fn scenario(name: &str, doing: impl AsyncFnOnce(&mut Page)) {
    scenario_served_from(&top_level().join("dist"), name, doing);
}

/// Runs `doing` on the page opened from another folder than the built page's.
pub fn scenario_served_from(folder: &Path, name: &str, doing: impl AsyncFnOnce(&mut Page)) {
    run(folder, name, Server::address, doing);
}

/// Runs `doing` on the page that is one file, opened from disk.
pub fn scenario_of_one_file(name: &str, doing: impl AsyncFnOnce(&mut Page)) {
    let file = top_level().join("dist/hobnail.html");
    assert!(
        file.is_file(),
        "the page in one file is not there; `cargo task bundle` makes it"
    );
    run(
        &top_level().join("dist"),
        name,
        |_| format!("file://{}", file.display()),
        doing,
    );
}

fn run(folder: &Path, name: &str, address: impl FnOnce(&Server) -> String, doing: impl AsyncFnOnce(&mut Page)) {
    assert!(
        folder.join("index.html").is_file(),
        "the page is not built; `cargo task test` builds it into dist/"
    );
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .expect("a runtime starts");
    runtime.block_on(async {
        let server = Server::start(folder);
        let address = address(&server);
        let mut page = Page::open(Browser::start().await, server, address).await;
        let result = catch(async {
            doing(&mut page).await;
            check(&page).await;
        })
        .await;
        if result.is_err() {
            page.take_screenshot(&format!("failed-{name}")).await;
        }
        page.browser.close().await;
        if let Err(fault) = result {
            resume_unwind(fault);
        }
    });
}

async fn check(page: &Page) {
    assert!(!page.shows_notice().await, "the page says that it has stopped");
    assert_eq!(page.faults().await, Vec::<String>::new());
}

/// Waits for a future and catches its panic.
async fn catch(future: impl Future<Output = ()>) -> std::thread::Result<()> {
    let mut future = Box::pin(future);
    std::future::poll_fn(|context| {
        let polled = std::panic::catch_unwind(AssertUnwindSafe(|| future.as_mut().poll(context)));
        match polled {
            Ok(std::task::Poll::Pending) => std::task::Poll::Pending,
            Ok(std::task::Poll::Ready(())) => std::task::Poll::Ready(Ok(())),
            Err(fault) => std::task::Poll::Ready(Err(fault)),
        }
    })
    .await
}
