//! How much memory is held, counted as it is handed out.
#![allow(
    unsafe_code,
    reason = "an allocator can not be written without; this one counts and hands on to the system's"
)]

use std::alloc::{GlobalAlloc, Layout, System};
use std::sync::atomic::{AtomicUsize, Ordering};

struct Counting;

#[global_allocator]
static COUNTING: Counting = Counting;

static HELD: AtomicUsize = AtomicUsize::new(0);
static MOST: AtomicUsize = AtomicUsize::new(0);

fn take(bytes: usize) {
    let held = HELD.fetch_add(bytes, Ordering::Relaxed) + bytes;
    MOST.fetch_max(held, Ordering::Relaxed);
}

fn give(bytes: usize) {
    HELD.fetch_sub(bytes, Ordering::Relaxed);
}

// SAFETY: everything is handed on to the system's allocator as it came; counting touches no memory but two numbers.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        take(layout.size());
        // SAFETY: as the caller promised.
        unsafe { System.alloc(layout) }
    }

    unsafe fn alloc_zeroed(&self, layout: Layout) -> *mut u8 {
        take(layout.size());
        // SAFETY: as the caller promised.
        unsafe { System.alloc_zeroed(layout) }
    }

    unsafe fn dealloc(&self, place: *mut u8, layout: Layout) {
        give(layout.size());
        // SAFETY: as the caller promised.
        unsafe { System.dealloc(place, layout) }
    }

    unsafe fn realloc(&self, place: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        // Old and new may be held at once, while one is copied to the other.
        take(size);
        // SAFETY: as the caller promised.
        let moved = unsafe { System.realloc(place, layout, size) };
        give(layout.size());
        moved
    }
}

/// What work gives, and how many bytes it held at once beyond what was held before. Other threads count too.
pub fn most_bytes<T>(work: impl FnOnce() -> T) -> (T, usize) {
    let before = HELD.load(Ordering::Relaxed);
    MOST.store(before, Ordering::Relaxed);
    let given = work();
    (given, MOST.load(Ordering::Relaxed).saturating_sub(before))
}
