#!/usr/bin/python3
"""Peer for the choice of holes: which k of m points lie furthest apart, put to a
general MILP solver (HiGHS by way of scipy.optimize.milp) in the usual way: one
0-1 variable for each point, one for the least distance d, and for each pair
d <= distance + M (2 - x_i - x_j). Reads [{"points": [[x, y], ...], "k": n}, ...]
on standard input and the limit in seconds for each as its argument.

Answers [{"spacing": d, "seconds": s, "proved": bool}, ...]; the seconds are of
the solving alone.
"""
import itertools
import json
import sys
import time

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_array


def solve(points, k, limit):
    m = len(points)
    pairs = list(itertools.combinations(range(m), 2))
    far = [float(np.hypot(points[i][0] - points[j][0], points[i][1] - points[j][1])) for i, j in pairs]
    most = max(far)
    rows, columns, values, upper = [], [], [], []
    for r, ((i, j), d) in enumerate(zip(pairs, far)):
        slack = most - d
        rows += [r, r, r]
        columns += [i, j, m]
        values += [slack, slack, 1.0]
        upper.append(d + 2 * slack)
    near = csr_array((values, (rows, columns)), shape=(len(pairs), m + 1))
    count = csr_array(np.array([[1.0] * m + [0.0]]))
    began = time.process_time()
    out = milp(
        c=np.array([0.0] * m + [-1.0]),
        constraints=[LinearConstraint(near, -np.inf, np.array(upper)), LinearConstraint(count, k, k)],
        integrality=np.array([1] * m + [0]),
        bounds=Bounds(np.zeros(m + 1), np.array([1.0] * m + [most])),
        options={"time_limit": limit, "mip_rel_gap": 1e-9},
    )
    seconds = time.process_time() - began
    if out.x is None:
        return {"spacing": 0.0, "seconds": seconds, "proved": False}
    used = [i for i in range(m) if out.x[i] > 0.5]
    least = min((float(np.hypot(points[i][0] - points[j][0], points[i][1] - points[j][1])) for i, j in itertools.combinations(used, 2)), default=0.0)
    return {"spacing": least, "seconds": seconds, "proved": bool(out.status == 0)}


def main():
    limit = float(sys.argv[1])
    json.dump([solve(q["points"], q["k"], limit) for q in json.load(sys.stdin)], sys.stdout)


main()
