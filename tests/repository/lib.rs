//! Tests of the repository itself: its layout, its documents, its licenses.
