//! The graph people move on: shortest paths, reach, centrality.
