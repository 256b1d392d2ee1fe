//! Blocks: faces joined across paths and alleys, so that a block is what streets go around.

use super::arrangement::Arrangement;
use super::carriers::Carrier;
use super::ids::FaceId;
use super::streets::DrawnLines;
use crate::plan::StreetRole;

/// The faces of each block, in order of their first faces.
///
/// Two faces are of one block when an edge that only a path or an alley carries lies between them. Cost: almost linear.
#[must_use]
pub fn blocks(lines: &DrawnLines, arrangement: &Arrangement, carriers: &[Option<Carrier>]) -> Vec<Vec<FaceId>> {
    // Each face points at a lower one of its block; the lowest points at itself.
    let mut toward: Vec<u32> = (0..arrangement.face_count() as u32).collect();
    fn lowest(toward: &mut [u32], mut face: u32) -> u32 {
        while toward[face as usize] != face {
            toward[face as usize] = toward[toward[face as usize] as usize];
            face = toward[face as usize];
        }
        face
    }
    for edge in arrangement.edges() {
        let Some(carrier) = carriers[edge.0 as usize] else {
            continue;
        };
        let role = lines.streets[carrier.street as usize].role;
        if !matches!(role, StreetRole::Path | StreetRole::Alley) {
            continue;
        }
        let (left, right) = (arrangement.face(edge.forward()), arrangement.face(edge.backward()));
        if left != FaceId::OUTSIDE && right != FaceId::OUTSIDE {
            let (left, right) = (lowest(&mut toward, left.0), lowest(&mut toward, right.0));
            toward[left.max(right) as usize] = left.min(right);
        }
    }
    let mut blocks: Vec<Vec<FaceId>> = Vec::new();
    let mut block_of = vec![0; toward.len()];
    for face in arrangement.bounded_faces() {
        let first = lowest(&mut toward, face.0);
        if first == face.0 {
            block_of[face.0 as usize] = blocks.len();
            blocks.push(Vec::new());
        }
        blocks[block_of[first as usize]].push(face);
    }
    blocks
}
