//! The page as people use it, one file per thing they do.

mod load;
