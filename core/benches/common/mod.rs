//! Seeded street networks of a given number of segments, the same on every machine, and the stopwatch.
#![allow(dead_code, reason = "each bench uses a part of this")]

pub mod plans;

#[cfg(not(target_arch = "wasm32"))]
use std::time::Instant;

use hobnail_core::plan::PlanPoint;

#[cfg(target_arch = "wasm32")]
use crate::browser::Instant;

/// A straight piece of a street.
pub type Piece = [PlanPoint; 2];

/// Makes a network of the given number of segments.
pub type Shape = fn(usize) -> Vec<Piece>;

/// The shapes of network, by name.
pub const SHAPES: [(&str, Shape); 3] = [("grid", grid), ("organic", organic), ("crossing", crossing)];

/// The splitmix64 generator.
/// Source: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
pub struct Random(pub u64);

impl Random {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A number in `low..=high`.
    pub fn within(&mut self, low: i32, high: i32) -> i32 {
        let count = (i64::from(high) - i64::from(low) + 1) as u64;
        (i64::from(low) + (self.next() % count) as i64) as i32
    }
}

/// Blocks of 100 m with every intersection moved by up to 10 m.
pub fn grid(segments: usize) -> Vec<Piece> {
    let mut random = Random(1);
    let side = lattice_side(segments, 2);
    let points = jittered_lattice(side, 100_000, 10_000, &mut random);
    lattice_links(side)
        .take(segments)
        .map(|[p, q]| [points[p], points[q]])
        .collect()
}

/// Winding streets: a random tree over intersections 120 m apart, a fifth of the other links closed to loops, every link
/// in four bent pieces.
pub fn organic(segments: usize) -> Vec<Piece> {
    const PIECES: usize = 4;
    let mut random = Random(2);
    // A tree has a link per intersection and a fifth of the others is another fifth, nearly.
    let side = lattice_side(segments * 5 / 6, PIECES);
    let points = jittered_lattice(side, 120_000, 30_000, &mut random);
    let mut links: Vec<[usize; 2]> = lattice_links(side).collect();
    for index in (1..links.len()).rev() {
        links.swap(index, (random.next() % (index as u64 + 1)) as usize);
    }
    let mut parent: Vec<usize> = (0..points.len()).collect();
    fn root(parent: &mut [usize], mut at: usize) -> usize {
        while parent[at] != at {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        at
    }
    let mut kept = Vec::new();
    for [p, q] in links {
        let (root_p, root_q) = (root(&mut parent, p), root(&mut parent, q));
        parent[root_p] = root_q;
        if root_p != root_q || random.next().is_multiple_of(5) {
            kept.push([points[p], points[q]]);
        }
    }
    let mut pieces = Vec::with_capacity(segments);
    for [from, to] in kept {
        let mut last = from;
        for step in 1..=PIECES as i32 {
            let along = |p: i32, q: i32| p + (q - p) / PIECES as i32 * step;
            let next = if step == PIECES as i32 {
                to
            } else {
                PlanPoint::new(
                    along(from.x_mm, to.x_mm) + random.within(-4_000, 4_000),
                    along(from.y_mm, to.y_mm) + random.within(-4_000, 4_000),
                )
            };
            pieces.push([last, next]);
            last = next;
        }
    }
    pieces.truncate(segments);
    pieces
}

/// Straight lines of about 100 m laid at random, each crossing four others on average.
pub fn crossing(segments: usize) -> Vec<Piece> {
    const REACH: i32 = 50_000;
    let mut random = Random(3);
    // With n lines of mean length L on area A a line crosses 2·n·L²/(π·A) others. Two corners of a square of side 2r
    // drawn at random are 1.04·r apart.
    let (count, length) = (segments as f64, 1.04 * f64::from(REACH) * 2.0 / 2.0);
    let side = (2.0 * count * length * length / (std::f64::consts::PI * 4.0)).sqrt() as i32;
    (0..segments)
        .map(|_| {
            let (x, y) = (random.within(0, side), random.within(0, side));
            let mut end = || PlanPoint::new(x + random.within(-REACH, REACH), y + random.within(-REACH, REACH));
            [end(), end()]
        })
        .collect()
}

/// Intersections along one side of a square lattice whose links, in pieces, are about as many as asked.
fn lattice_side(segments: usize, pieces: usize) -> usize {
    (1..).find(|side| side * side * pieces >= segments).unwrap_or(1) + 1
}

fn jittered_lattice(side: usize, spacing_mm: i32, jitter_mm: i32, random: &mut Random) -> Vec<PlanPoint> {
    (0..side * side)
        .map(|index| {
            let at = |step: usize, random: &mut Random| step as i32 * spacing_mm + random.within(-jitter_mm, jitter_mm);
            PlanPoint::new(at(index % side, random), at(index / side, random))
        })
        .collect()
}

fn lattice_links(side: usize) -> impl Iterator<Item = [usize; 2]> {
    (0..side * side).flat_map(move |index| {
        let east = (index % side + 1 < side).then_some([index, index + 1]);
        let north = (index + side < side * side).then_some([index, index + side]);
        east.into_iter().chain(north)
    })
}

/// What one sample takes at least: work shorter than that is repeated within it, since a browser's clock ticks every
/// tenth of a millisecond.
const SAMPLE_NS: u128 = 5_000_000;

/// Whether the first argument that is not an option, if there is one, is a run of whole parts of `id`.
pub fn is_wanted(id: &str) -> bool {
    let wanted = std::env::args().skip(1).find(|argument| !argument.starts_with("--"));
    wanted.is_none_or(|wanted| format!("/{id}/").contains(&format!("/{wanted}/")))
}

/// Runs `work` until half a second has passed, at least five times, and prints `id median_ns`; only when `id` is
/// wanted.
#[allow(clippy::disallowed_methods, reason = "a bench measures time")]
pub fn measure<T>(id: &str, mut work: impl FnMut() -> T) {
    if !is_wanted(id) {
        return;
    }
    let mut sample_ns = |runs: u128| {
        let start = Instant::now();
        for _ in 0..runs {
            std::hint::black_box(work());
        }
        start.elapsed().as_nanos() / runs
    };
    let runs = (SAMPLE_NS / sample_ns(1).max(1_000)).max(1);
    let mut times_ns = Vec::new();
    let began = Instant::now();
    while times_ns.len() < 5 || began.elapsed().as_millis() < 500 {
        times_ns.push(sample_ns(runs));
    }
    times_ns.sort_unstable();
    print(&format!("{id} {}", times_ns[times_ns.len() / 2]));
}

/// Prints the most memory this program has held so far, where the system says so: in a browser the module's memory, which
/// never shrinks.
pub fn print_peak_memory(after: &str) {
    if let Some(bytes) = peak_memory_bytes() {
        print(&format!("peak memory after {after}: {:.1} MB", bytes as f64 / 1e6));
    }
}

/// Prints how many letters a text has, and how many bytes the file that says the same.
pub fn print_length(id: &str, letters: usize, file_bytes: usize) {
    print(&format!("{id}: {letters} letters, {file_bytes} bytes as a file"));
}

#[cfg(target_arch = "wasm32")]
fn peak_memory_bytes() -> Option<u64> {
    const PAGE_BYTES: u64 = 65_536;
    Some(core::arch::wasm32::memory_size(0) as u64 * PAGE_BYTES)
}

#[cfg(not(target_arch = "wasm32"))]
fn peak_memory_bytes() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    let kilobytes: u64 = line.trim().strip_suffix("kB")?.trim().parse().ok()?;
    Some(kilobytes * 1_024)
}

#[cfg(not(target_arch = "wasm32"))]
#[allow(clippy::print_stdout, reason = "a bench prints what it measured")]
fn print(line: &str) {
    println!("{line}");
}

#[cfg(target_arch = "wasm32")]
fn print(line: &str) {
    crate::browser::print(line);
}
