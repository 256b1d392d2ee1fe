//! The worker: this same module, loaded a second time. The compiled module is handed over, so nothing is fetched or
//! compiled twice but the loader's own script.

use hobnail_core::say;
use hobnail_core::study::follower::Follower;
use hobnail_core::study::protocol::{Reply, Request};
use serde::Serialize;
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
            } else if let Ok(message) = serde_wasm_bindgen::from_value(message) {
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
        let sent = to_message(request).and_then(|message| self.worker.post_message(&message));
        if let Err(fault) = sent {
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
            let sent = to_message(&reply).and_then(|message| answering.post_message(&message));
            if let Err(fault) = sent {
                web_sys::console::error_1(&fault);
            }
        };
        match serde_wasm_bindgen::from_value::<Request>(event.data()) {
            Ok(request) => follower.handle(request, tell),
            Err(fault) => tell(Reply::Failed(say!("page-worker-unreadable", fault = fault.to_string()))),
        }
    });
    scope.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    heard.forget();
    // The page waits for this before it asks anything.
    let _ = scope.post_message(&JsValue::from_str(READY));
}

fn to_message<T: Serialize>(message: &T) -> Result<JsValue, JsValue> {
    Ok(message.serialize(&serde_wasm_bindgen::Serializer::new())?)
}
