//! Work that may take longer than a frame: in the worker, or in slices between frames where no worker can start.
//!
//! One request is on its way at a time. While it is, changes only say that another is due; so a fast hand never fills
//! the worker's queue, and the last state is always asked for.

use hobnail_core::study::jobs::Jobs;
use hobnail_core::study::protocol::{Reply, Request};

use super::App;
use super::store::{CANVAS, Store};
use crate::browser::document;
use crate::browser::worker::Worker;

/// Who does the long work.
#[derive(Default)]
pub enum Background {
    /// It is being started; what comes meanwhile waits.
    #[default]
    Starting,
    /// The worker, and how many of its answers are still awaited.
    Worker {
        /// The worker.
        worker: Worker,
        /// Answers awaited.
        awaited: usize,
        /// Whether something changed since the last request.
        is_due: bool,
    },
    /// The main thread, in slices.
    Slices {
        /// What waits.
        jobs: Jobs,
        /// Whether a slice is on its way.
        is_running: bool,
    },
}

impl Store {
    /// Starts the worker; where there is none, or the address asks for none, work is done in slices.
    pub fn start_background(self) {
        if document::address_asks("worker", "none") {
            return self.work_in_slices();
        }
        let started = Worker::start(
            move |worker| {
                self.background.set(Background::Worker {
                    worker,
                    awaited: 0,
                    is_due: true,
                });
                document::note(CANVAS, "data-worker", "started");
                self.ask();
            },
            move |reply| self.take_reply(reply),
            move || {
                // It could not start, or has stopped with a fault of ours: the page goes on without it.
                if !matches!(self.background.update(std::mem::take), Background::Slices { .. }) {
                    self.work_in_slices();
                }
            },
        );
        if started.is_err() {
            self.work_in_slices();
        }
    }

    /// Asks for what is on screen, once the plan rests.
    pub fn ask(self) {
        let questions = self.with(App::questions);
        let mut must_run = false;
        self.background.update(|background| match background {
            Background::Starting => {}
            Background::Worker {
                worker,
                awaited,
                is_due,
            } => {
                *is_due = *awaited > 0;
                if *awaited > 0 {
                    return;
                }
                let news = self.update(|app| app.take_news());
                if let Some(news) = news {
                    *awaited = questions.len();
                    worker.ask(&Request { news, questions });
                }
            }
            Background::Slices { jobs, is_running } => {
                self.with(|app| {
                    if !app.study().is_in_gesture() {
                        jobs.ask(app.study(), questions);
                    }
                });
                must_run = !*is_running && !jobs.is_empty();
                *is_running |= must_run;
            }
        });
        if must_run {
            document::soon(move || self.run_slice());
        }
    }

    fn take_reply(self, reply: Reply) {
        let mut must_ask = false;
        let answer = match reply {
            Reply::Answer { revision, answer } => {
                self.with_worker(|awaited, is_due| {
                    *awaited = awaited.saturating_sub(1);
                    must_ask = *awaited == 0 && *is_due;
                });
                Some((revision, answer))
            }
            Reply::OutOfStep => {
                self.update(|app| app.send_whole());
                self.with_worker(|awaited, _| *awaited = 0);
                must_ask = true;
                None
            }
            Reply::Failed(fault) => {
                self.act(|app| app.warn(fault));
                self.work_in_slices();
                None
            }
        };
        if let Some((revision, answer)) = answer {
            self.act(|app| app.take_answer(revision, answer));
        }
        if must_ask {
            self.ask();
        }
    }

    fn with_worker(self, work: impl FnOnce(&mut usize, &mut bool)) {
        self.background.update(|background| {
            if let Background::Worker { awaited, is_due, .. } = background {
                work(awaited, is_due);
            }
        });
    }

    fn work_in_slices(self) {
        self.background.set(Background::Slices {
            jobs: Jobs::default(),
            is_running: false,
        });
        document::note(CANVAS, "data-worker", "none");
        self.ask();
    }

    /// One piece of work, then room for what the hand does, then the next.
    fn run_slice(self) {
        let mut answer = None;
        let mut is_done = true;
        self.background.update(|background| {
            if let Background::Slices { jobs, is_running } = background {
                answer = self.update(|app| app.step(jobs));
                is_done = jobs.is_empty();
                *is_running = !is_done;
            }
        });
        if let Some((revision, answer)) = answer {
            self.act(|app| app.take_answer(revision, answer));
        }
        if !is_done {
            document::soon(move || self.run_slice());
        }
    }
}
