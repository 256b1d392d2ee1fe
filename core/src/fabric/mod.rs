//! From drawn lines to the planar arrangement: faces, blocks, frontage, land.
