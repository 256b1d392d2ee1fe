//! Factor tables: each value with low, typical, high, unit, source, year and how sure.
