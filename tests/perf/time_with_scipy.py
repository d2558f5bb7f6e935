"""Times NumPy and SciPy on the arrays of numeric-against-scipy.ts: seconds, median of five, start-up excluded."""
import json
import sys
from time import perf_counter

import numpy
from scipy import special, stats
from scipy.spatial import ConvexHull

values = numpy.fromfile(sys.argv[1])
points = values.reshape(-1, 2)
x, y = points[:, 0].copy(), points[:, 1].copy()
few = numpy.linspace(0.01, 0.99, 1000)

quantities = {
    "standard deviation": lambda: numpy.std(values, ddof=1),
    "quantiles": lambda: numpy.quantile(values, [0.05, 0.5, 0.95]),
    "covariance": lambda: numpy.cov(points, rowvar=False),
    "line fit": lambda: stats.linregress(x, y),
    "convex hull": lambda: ConvexHull(points),
    "1,000 t quantiles": lambda: stats.t.ppf(few, 11.5),
    "1,000 beta quantiles": lambda: stats.beta.ppf(few, 3, 22),
}


def seconds(task):
    task()
    runs = []
    for _ in range(5):
        start = perf_counter()
        task()
        runs.append(perf_counter() - start)
    return sorted(runs)[2]


json.dump({name: seconds(task) for name, task in quantities.items()}, sys.stdout)
