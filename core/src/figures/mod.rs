//! The engine of numbers: tables over axes, units, basis, ranges, sensitivity. Knows nothing of plans.
