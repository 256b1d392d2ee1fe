"""Times other libraries on the inputs that the benches write, geometry and graphs built before timing.

    cargo bench -p hobnail_core --bench noding -- --write FOLDER
    cargo bench -p hobnail_core --bench paths  -- --write FOLDER
    python3 tests/peers/peers.py FOLDER [RESULTS ...]

Needs shapely, scipy, igraph and numpy in the Python that runs it. Prints `library/operation/shape/size nanoseconds`,
the median of runs as processor time of this process, so that other work on the machine counts less. RESULTS are files
of lines `id nanoseconds` as the benches print them; with them a table of ratios follows.
Libraries that answer the same question must agree before they are timed.
"""

import itertools
import pathlib
import statistics
import sys
import time

import numpy as np

# Bench ids and the libraries they are held against, with the ratio aimed at by size.
AIMS = {
    ("noding", "shapely"): {10_000: 15, 100_000: 25},
    ("single", "scipy"): {100_000: 2},
    ("single", "igraph"): {100_000: 5},
    ("single", "petgraph"): {100_000: 3},
}


def median_ns(work, seconds=2.0, least=3):
    """Median processor time of a call in nanoseconds."""
    times, began = [], time.process_time()
    while len(times) < least or time.process_time() - began < seconds:
        start = time.process_time_ns()
        work()
        times.append(time.process_time_ns() - start)
    return statistics.median(times)


# Sources that full runs take in turn.
SOURCES = 16


def read_graph(path):
    """Nodes, sources, ends of links, lengths in micrometers."""
    data = path.read_bytes()
    nodes, count, *sources = (int(number) for number in np.frombuffer(data, "<u4", 2 + SOURCES))
    links = np.frombuffer(data, np.dtype([("a", "<u4"), ("b", "<u4"), ("um", "<u8")]), count, 4 * (2 + SOURCES))
    return nodes, sources, links["a"].astype(np.int64), links["b"].astype(np.int64), links["um"]


def paths(path):
    """Full single-source runs of scipy and igraph on one network."""
    import igraph
    import scipy.sparse
    from scipy.sparse.csgraph import dijkstra

    nodes, sources, a, b, um = read_graph(path)
    weights = um.astype(np.float64)
    matrix = scipy.sparse.csr_matrix(
        (np.concatenate([weights, weights]), (np.concatenate([a, b]), np.concatenate([b, a]))), (nodes, nodes)
    )
    graph = igraph.Graph(nodes, np.stack([a, b], 1).tolist())
    graph.es["weight"] = weights
    turns = itertools.cycle(sources)
    by_scipy = dijkstra(matrix, directed=True, indices=sources[0])
    by_igraph = np.array(graph.distances(sources[0], weights="weight")[0])
    # An arrangement has no parallel links, so the matrix sums none up; the answers must be the same.
    assert np.array_equal(by_scipy, by_igraph), path.stem
    yield "scipy/single", median_ns(lambda: dijkstra(matrix, directed=True, indices=next(turns)))
    yield "igraph/single", median_ns(lambda: graph.distances(next(turns), weights="weight"))


def noding(path):
    """Noding and faces of shapely on one drawing: union and polygonize."""
    import shapely

    ends = np.frombuffer(path.read_bytes(), "<i4").reshape(-1, 2, 2) / 1000.0
    lines = shapely.multilinestrings(shapely.linestrings(ends))
    run = lambda: shapely.polygonize([shapely.unary_union(lines)])
    assert shapely.get_num_geometries(run()) > 0, path.stem
    yield "shapely/noding", median_ns(run, seconds=1.0, least=1)


def main():
    folder, results = pathlib.Path(sys.argv[1]), {}
    for name in sys.argv[2:]:
        for line in pathlib.Path(name).read_text().splitlines():
            parts = line.split()
            if len(parts) == 2 and parts[1].replace(".", "").isdigit():
                results[parts[0]] = float(parts[1])
    for suffix, run in ((".graph", paths), (".i32", noding)):
        for path in sorted(folder.glob(f"*{suffix}")):
            shape, size = path.stem.rsplit("-", 1)
            for name, ns in run(path):
                results[f"{name}/{shape}/{size}"] = ns
                print(f"{name}/{shape}/{size} {ns:.0f}", flush=True)
    rows = []
    for (operation, library), aims in AIMS.items():
        for key, ours in results.items():
            if not key.startswith(operation + "/"):
                continue
            _, shape, size = key.split("/")
            theirs = results.get(f"{library}/{operation}/{shape}/{size}", results.get(f"{library}/{shape}/{size}"))
            if theirs:
                aim = aims.get(int(size))
                rows.append((operation, shape, int(size), ours, library, theirs, theirs / ours, aim))
    if rows:
        print(f"\n{'operation':10}{'shape':10}{'size':>8}{'ours ms':>10}  {'library':10}{'ms':>10}{'ratio':>8}{'aim':>6}")
    for operation, shape, size, ours, library, theirs, ratio, aim in sorted(rows):
        print(
            f"{operation:10}{shape:10}{size:8}{ours / 1e6:10.3f}  {library:10}{theirs / 1e6:10.3f}{ratio:8.1f}{aim or '':>6}"
        )


if __name__ == "__main__":
    main()
