//! One test from beginning to end: server, browser, page, the test's own doing, and the end in good order.

use std::panic::{AssertUnwindSafe, resume_unwind};

use crate::browser::{Browser, top_level};
use crate::page::Page;
use crate::server::Server;

/// Runs `doing` on the opened page.
///
/// Whatever happens the browser is ended; when the test fails, a picture of the page at that moment is kept as
/// `target/screenshots/failed-NAME.png`. At the end no error may stand in the console, no notice may be in sight, and
/// no request may have gone to another origin: every scenario checks that, whatever it is about.
pub fn scenario(name: &str, doing: impl AsyncFnOnce(&mut Page)) {
    let dist = top_level().join("dist");
    assert!(
        dist.join("index.html").is_file(),
        "the page is not built; `cargo task test` builds it into dist/"
    );
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .expect("a runtime starts");
    runtime.block_on(async {
        let mut page = Page::open(Browser::start().await, Server::start(&dist)).await;
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
