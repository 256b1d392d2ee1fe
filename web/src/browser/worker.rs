//! The worker: this same module, loaded a second time. The compiled module is handed over, so nothing is fetched or
//! compiled twice but the loader's own script.

use hobnail_core::passing::{Passed, from_bytes, to_bytes};
use hobnail_core::say;
use hobnail_core::study::follower::Follower;
use hobnail_core::study::protocol::{Reply, Request};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// What the worker sends when it can be asked.
const READY: &str = "ready";

/// The worker, from the page's side.
#[derive(Clone)]
pub struct Worker {
    worker: web_sys::Worker,
}

impl Worker {
    /// Starts the worker. `ready` gets it once it can be asked; `reply` gets each of its replies; `failed` is called
    /// when it can not start or stops.
    ///
    /// # Errors
    /// A sentence, when the browser has no workers.
    pub fn start(
        ready: impl FnOnce(Self) + 'static,
        mut reply: impl FnMut(Reply) + 'static,
        failed: impl Fn() + 'static,
    ) -> Result<(), String> {
        let worker = super::loader::start_worker().map_err(|_| say!("page-no-worker").to_owned())?;
        let mut ready = Some(ready);
        let held = Self { worker: worker.clone() };
        let heard = Closure::<dyn FnMut(web_sys::MessageEvent)>::new(move |event: web_sys::MessageEvent| {
            let message = event.data();
            if message.as_string().as_deref() == Some(READY) {
                if let Some(ready) = ready.take() {
                    ready(held.clone());
                }
            } else if let Some(message) = from_bytes(&bytes_of(&message)) {
                reply(message);
            }
        });
        worker.set_onmessage(Some(heard.as_ref().unchecked_ref()));
        heard.forget();
        let stopped = Closure::<dyn FnMut(web_sys::Event)>::new(move |_| failed());
        worker.set_onerror(Some(stopped.as_ref().unchecked_ref()));
        stopped.forget();
        Ok(())
    }

    /// Asks something. A message that can not be sent is a fault of ours and is told on the console; the page goes on
    /// without the answer.
    pub fn ask(&self, request: &Request) {
        if let Err(fault) = self.worker.post_message(&to_message(request)) {
            web_sys::console::error_1(&fault);
        }
    }
}

/// In the worker: answers requests from now on.
pub fn serve() {
    let Ok(scope) = js_sys::global().dyn_into::<web_sys::DedicatedWorkerGlobalScope>() else {
        return;
    };
    let mut follower = Follower::default();
    let answering = scope.clone();
    let heard = Closure::<dyn FnMut(web_sys::MessageEvent)>::new(move |event: web_sys::MessageEvent| {
        let tell = |reply: Reply| {
            if let Err(fault) = answering.post_message(&to_message(&reply)) {
                web_sys::console::error_1(&fault);
            }
        };
        let bytes = bytes_of(&event.data());
        match from_bytes::<Request>(&bytes) {
            Some(request) => follower.handle(request, tell),
            None => tell(Reply::Failed(say!("page-worker-unreadable", bytes = bytes.len()))),
        }
    });
    scope.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    heard.forget();
    // The page waits for this before it asks anything.
    let _ = scope.post_message(&JsValue::from_str(READY));
}

fn to_message<T: Passed>(message: &T) -> JsValue {
    js_sys::Uint8Array::from(to_bytes(message).as_slice()).into()
}

/// The bytes of a message; none where it is none of ours.
fn bytes_of(message: &JsValue) -> Vec<u8> {
    message
        .dyn_ref::<js_sys::Uint8Array>()
        .map(js_sys::Uint8Array::to_vec)
        .unwrap_or_default()
}
