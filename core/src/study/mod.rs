//! One open plan: what is drawn, what follows from it, and what changed. The only stateful part.

pub mod carry;
pub mod overlap;
