//! End-to-end tests: the built page in a real browser, driven as a person would.
