//! Noding and faces together: drawn segments to the planar arrangement.
//!
//! `--write FOLDER` writes the inputs instead, as little-endian `i32` x, y, x, y of each segment in millimeters, so that
//! other libraries can be measured on the same.

mod common;

use std::path::PathBuf;

use hobnail_core::fabric::{Arrangement, SourceId, SourceSegment};

/// Measures, or writes the inputs.
pub fn main() -> std::io::Result<()> {
    let mut arguments = std::env::args().skip_while(|argument| argument != "--write").skip(1);
    let folder = arguments.next().map(PathBuf::from);
    for (shape, make) in common::SHAPES {
        for size in [1_000, 10_000, 100_000] {
            let pieces = make(size);
            if let Some(folder) = &folder {
                let numbers = pieces.iter().flatten().flat_map(|p| [p.x_mm, p.y_mm]);
                let bytes: Vec<u8> = numbers.flat_map(i32::to_le_bytes).collect();
                std::fs::write(folder.join(format!("{shape}-{size}.i32")), bytes)?;
                continue;
            }
            let numbered = pieces.iter().zip(0..);
            let segments: Vec<SourceSegment> = numbered
                .map(|(&[a, b], index)| SourceSegment::new(a, b, SourceId(index)))
                .collect();
            common::measure(&format!("noding/{shape}/{size}"), || Arrangement::of(&segments));
        }
    }
    Ok(())
}
