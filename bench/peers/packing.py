#!/usr/bin/python3
"""Peer of the lid's search: the same question put to scipy's general solver.

Reads a JSON list of cases from standard input, each
  {"box": [x0, y0, x1, y1], "zones": [...], "n": 12, "target": 123.4}
with zones ["circle", x, y, r] or ["rect", x0, y0, x1, y1, clearance], and
prints for each the seconds of processor time until a layout within 1e-6 of the
target was found, or null where the limit was met first. Many starts, each
polished by SLSQP with analytic gradients on the near pairs; half of them change
the best so far, most begin with a short power-law repulsion. One thread.

  packing.py SEED LIMIT_SECONDS < cases.json
"""
import json
import os
import sys
import time
import warnings

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import numpy as np  # noqa: E402
from scipy.optimize import minimize  # noqa: E402

warnings.filterwarnings("ignore")


def slack(zone, p):
    """Room of the points p (n, 2) to a keep-clear zone, and its gradient."""
    if zone[0] == "circle":
        d = p - np.array(zone[1:3])
        r = np.hypot(d[:, 0], d[:, 1]) + 1e-300
        return r - zone[3], d / r[:, None]
    lo, hi, keep = np.array(zone[1:3]), np.array(zone[3:5]), zone[5]
    q = p - (lo + hi) / 2
    sign = np.where(q < 0, -1.0, 1.0)
    over = np.abs(q) - (hi - lo) / 2
    out = np.maximum(over, 0)
    r = np.hypot(out[:, 0], out[:, 1])
    inside = r == 0
    edge = (over == over.max(axis=1)[:, None]).astype(float)
    grad = np.where(inside[:, None], edge, out / np.where(inside, 1, r)[:, None])
    return np.where(inside, over.max(axis=1), r) - keep, grad * sign


class Case:
    def __init__(self, case, seed):
        box = np.array(case["box"], float)
        self.lo, self.hi, self.zones, self.n = box[:2], box[2:], case["zones"], case["n"]
        self.target = case["target"] * (1 - 1e-6)
        self.unit = float(np.sqrt((self.hi - self.lo).prod() / self.n))
        self.rng = np.random.default_rng(seed)
        self.i, self.j = np.triu_indices(self.n, 1)

    def least(self, p):
        d = p[self.i] - p[self.j]
        return float(np.sqrt((d * d).sum(axis=1).min()))

    def scatter(self, k):
        out = []
        while len(out) < k:
            p = self.lo + self.rng.random((1, 2)) * (self.hi - self.lo)
            if all(slack(z, p)[0][0] >= 0 for z in self.zones):
                out.append(p[0])
        return np.array(out)

    def rows(self):
        """Jittered rows at about the expected spacing."""
        size = self.hi - self.lo
        turned = self.rng.random() < 0.5
        w, h = size[::-1] if turned else size
        d = self.unit * self.rng.uniform(0.9, 1.35)
        count = max(1, round(h / (d * self.rng.uniform(0.8, 1.0))) + 1)
        stagger = self.rng.random() < 0.7
        pts = []
        for r in range(count):
            m = max(1, round(w / d) + 1 - (r % 2 if stagger else 0))
            pts += [((c + 0.5) / m * w, (r + 0.5) / count * h) for c in range(m)]
        p = self.rng.permutation(np.array(pts))[: self.n]
        p = (p[:, ::-1] if turned else p) + self.lo
        if len(p) < self.n:
            p = np.vstack([p, self.scatter(self.n - len(p))])
        return p + self.rng.normal(0, 0.12 * self.unit, p.shape)

    def start(self, best):
        if best is None or self.rng.random() < 0.5:
            p = self.scatter(self.n) if self.rng.random() < 0.5 else self.rows()
        else:
            p = best.copy()
            if self.rng.random() < 0.5:
                k = min(self.n, 1 + (self.rng.random() < 0.3))
                p[self.rng.choice(self.n, k, replace=False)] = self.scatter(k)
                p += self.rng.normal(0, 0.05 * self.unit, p.shape)
            else:
                p += self.rng.normal(0, self.rng.uniform(0.1, 0.4) * self.unit, p.shape)
        p = np.clip(p, self.lo, self.hi)
        if self.rng.random() < 0.6:
            p = self.repel(p)
            # A repulsion's minimum is often a symmetric saddle.
            p = p + self.rng.normal(0, self.rng.choice([0.03, 0.1, 0.2]) * self.unit, p.shape)
        return np.clip(p, self.lo, self.hi)

    def repel(self, p):
        u2, n = self.unit**2, self.n
        power = self.rng.choice([2.0, 6.0])

        def energy(x):
            q = x.reshape(n, 2)
            d = q[self.i] - q[self.j]
            s = (d * d).sum(axis=1) / u2 + 1e-6
            e = s**-power
            total = e.sum()
            g = np.zeros((n, 2))
            f = (-2 * power / u2 * e / s)[:, None] * d
            np.add.at(g, self.i, f)
            np.add.at(g, self.j, -f)
            for z in self.zones:
                v, dv = slack(z, q)
                b = np.minimum(v / self.unit, 0)
                total += 200 * n * (b * b).sum()
                g += (400 * n * b / self.unit)[:, None] * dv
            return np.log(total), (g / total).ravel()

        bounds = [(self.lo[0], self.hi[0]), (self.lo[1], self.hi[1])] * n
        return minimize(energy, p.ravel(), jac=True, method="L-BFGS-B", bounds=bounds,
                        options={"maxiter": 60}).x.reshape(n, 2)

    def polish(self, p):
        n, u = self.n, self.unit
        t = 0.0
        for _ in range(4):
            t = self.least(p)
            d = np.sqrt(((p[self.i] - p[self.j]) ** 2).sum(axis=1))
            near = d <= max(1.55 * t, np.sort(d)[min(len(d) - 1, 2 * n)])
            i, j = self.i[near], self.j[near]
            m, k = len(i), np.arange(len(i))
            close = [np.nonzero(slack(z, p)[0] < 1.2 * u)[0] for z in self.zones]
            rows = m + sum(map(len, close))

            def room(x):
                q = x[:-1].reshape(n, 2)
                e = q[i] - q[j]
                parts = [(e * e).sum(axis=1) - x[-1] ** 2]
                parts += [slack(z, q[c] * u)[0] / u for z, c in zip(self.zones, close)]
                return np.concatenate(parts)

            def slope(x):
                q = x[:-1].reshape(n, 2)
                e = 2 * (q[i] - q[j])
                a = np.zeros((rows, 2 * n + 1))
                a[k, 2 * i], a[k, 2 * i + 1] = e[:, 0], e[:, 1]
                a[k, 2 * j], a[k, 2 * j + 1] = -e[:, 0], -e[:, 1]
                a[:m, -1] = -2 * x[-1]
                at = m
                for z, c in zip(self.zones, close):
                    g = slack(z, q[c] * u)[1]
                    r = np.arange(len(c)) + at
                    a[r, 2 * c], a[r, 2 * c + 1] = g[:, 0], g[:, 1]
                    at += len(c)
                return a

            goal = np.zeros(2 * n + 1)
            goal[-1] = -1
            bounds = [(self.lo[0] / u, self.hi[0] / u), (self.lo[1] / u, self.hi[1] / u)] * n + [(0, None)]
            r = minimize(lambda x: -x[-1], np.append((p / u).ravel(), t / u), jac=lambda x: goal,
                         method="SLSQP", bounds=bounds,
                         constraints={"type": "ineq", "fun": room, "jac": slope},
                         options={"maxiter": 60, "ftol": 1e-13})
            if not np.isfinite(r.x).all():
                return None, 0.0
            q = np.clip(r.x[:-1].reshape(n, 2) * u, self.lo, self.hi)
            if any((slack(z, q)[0] < -1e-7 * u).any() for z in self.zones):
                return None, 0.0
            got = self.least(q)
            p = q
            if got >= r.x[-1] * u * (1 - 1e-7) or got <= t * (1 + 1e-12):
                return q, got
        return p, self.least(p)

    def seconds(self, limit):
        began = time.process_time()
        best, spacing = None, 0.0
        while time.process_time() - began < limit:
            p, t = self.polish(self.start(best))
            if p is not None and t > spacing:
                best, spacing = p, t
            if spacing >= self.target:
                return time.process_time() - began
        return None


def main():
    seed, limit = int(sys.argv[1]), float(sys.argv[2])
    cases = json.load(sys.stdin)
    json.dump([Case(c, seed + k).seconds(limit) for k, c in enumerate(cases)], sys.stdout)


if __name__ == "__main__":
    main()
