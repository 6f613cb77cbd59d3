#!/usr/bin/python3
"""Speciation and recipes with numpy and scipy, as a peer for the benchmarks.

Reads one JSON document on standard input and writes one on standard output.
  speciate: {"waters": [[mol/L of each component], ...]}
            -> {"ph": [...], "ec": [...], "seconds": s}
  recipes:  {"shares": [[share of each nutrient] for each fertiliser],
             "targets": [[mg/L], ...]}
            -> {"grams": [[...], ...], "seconds": s}
The water is closed and at 25 C. Constants are typed here a second time, from
the same sources as the program's facts, so that a slip on either side shows.
"""
import json
import os
import sys
import time

for threads in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[threads] = "1"

import numpy as np  # noqa: E402
from scipy.optimize import brentq, nnls  # noqa: E402

COMPONENTS = ["NH4", "K", "Na", "Ca", "Mg", "NO3", "Cl", "SO4", "CO3", "PO4", "B", "Cit"]
CHARGE = np.array([1, 1, 1, 2, 2, -1, -1, -2, -2, -3, 0, -3], dtype=float)
T = 298.15


def phreeqc(a, b, c, d, e, f=0.0):
    return a + b * T + c / T + d * np.log10(T) + e / T**2 + f * T**2


WATER = phreeqc(293.29227, 0.1360833, -10576.913, -123.73158, 0, -6.996455e-5)
HCO3 = phreeqc(107.8871, 0.03252849, -5151.79, -38.92561, 563713.9)
CO2 = phreeqc(464.1965, 0.09344813, -26986.16, -165.75951, 2248628.9)
AMMONIA = phreeqc(0.6322, -0.001225, -2835.76, 0, 0)

# name: (log K, protons, charge, components)
SPECIES = {
    "OH": (WATER, -1, -1, ""),
    "HCO3": (HCO3, 1, -1, "CO3"), "CO2": (CO2, 2, 0, "CO3"),
    "HSO4": (1.988, 1, -1, "SO4"),
    "HPO4": (12.346, 1, -2, "PO4"), "H2PO4": (19.553, 2, -1, "PO4"), "H3PO4": (21.721, 3, 0, "PO4"),
    "NH3": (AMMONIA, -1, 0, "NH4"), "BOH4": (-9.24, -1, -1, "B"),
    "HCit": (6.396, 1, -2, "Cit"), "H2Cit": (11.157, 2, -1, "Cit"), "H3Cit": (14.285, 3, 0, "Cit"),
    "CaSO4": (2.30, 0, 0, "Ca SO4"), "MgSO4": (2.37, 0, 0, "Mg SO4"), "KSO4": (0.85, 0, -1, "K SO4"),
    "NaSO4": (0.70, 0, -1, "Na SO4"), "NH4SO4": (1.11, 0, -1, "NH4 SO4"),
    "CaHCO3": (11.435, 1, 1, "Ca CO3"), "MgHCO3": (11.399, 1, 1, "Mg CO3"),
    "CaCO3": (3.224, 0, 0, "Ca CO3"), "MgCO3": (2.98, 0, 0, "Mg CO3"),
    "CaH2PO4": (20.961, 2, 1, "Ca PO4"), "CaHPO4": (15.085, 1, 0, "Ca PO4"), "CaPO4": (6.459, 0, -1, "Ca PO4"),
    "MgH2PO4": (21.066, 2, 1, "Mg PO4"), "MgHPO4": (15.216, 1, 0, "Mg PO4"),
    "CaCit": (4.87, 0, -1, "Ca Cit"), "CaHCit": (9.26, 1, 0, "Ca Cit"), "CaH2Cit": (12.257, 2, 1, "Ca Cit"),
    "MgCit": (4.89, 0, -1, "Mg Cit"), "MgHCit": (8.91, 1, 0, "Mg Cit"), "MgH2Cit": (12.2, 2, 1, "Mg Cit"),
}
NAMES = ["H"] + COMPONENTS + list(SPECIES)
LOGK = np.array([0.0] + [0.0] * len(COMPONENTS) + [s[0] for s in SPECIES.values()])
PROTONS = np.array([1.0] + [0.0] * len(COMPONENTS) + [s[1] for s in SPECIES.values()])
Z = np.concatenate([[1.0], CHARGE, [float(s[2]) for s in SPECIES.values()]])
MADE_OF = np.zeros((len(NAMES), len(COMPONENTS)))
for i, c in enumerate(COMPONENTS):
    MADE_OF[1 + i, i] = 1
for i, s in enumerate(SPECIES.values()):
    for c in s[3].split():
        MADE_OF[1 + len(COMPONENTS) + i, COMPONENTS.index(c)] = 1

PUBLISHED = {  # McCleskey et al. 2012: a b c d e f B
    "H": (.01414, 5.355, 224.2, .00918, 1.842, 39.23, .3), "Na": (.003763, .877, 26.23, .00027, 1.141, 32.07, 1.7),
    "K": (.003046, 1.261, 40.70, .00535, .9316, 22.59, 1.5), "NH4": (.003341, 1.285, 39.04, .00132, .607, 11.19, .3),
    "Ca": (.009645, 1.984, 62.28, .03174, 2.334, 132.3, 2.8), "Mg": (.01068, 1.695, 57.16, .02453, 1.915, 80.5, 2.1),
    "Cl": (.003817, 1.337, 40.99, .00613, .9469, 22.01, 1.5), "SO4": (.01037, 2.838, 82.37, .03324, 5.889, 193.5, 2.6),
    "NO3": (.001925, 1.214, 39.9, .00118, .5045, 23.31, .1), "HCO3": (.000614, .9048, 21.14, -.00503, .8957, 10.97, .1),
    "CO3": (-.000326, 2.998, 64.03, -.00181, 5.542, 120.2, 2.3), "OH": (.003396, 2.925, 121.3, .00933, .1086, 35.9, .01),
    "HSO4": (.000927, .8337, 29.56, .02887, .873, 36.25, 7.0), "KSO4": (.002439, 4.253, 129.7, .01576, 6.21, 146.8, 1.3),
}
LIMITS = {"H2PO4": 36, "HPO4": 114, "PO4": 207, "BOH4": 35, "H2Cit": 30, "HCit": 90, "Cit": 210, "CaHCO3": 19, "MgHCO3": 18,
          "NaSO4": 30, "NH4SO4": 40, "CaH2PO4": 25, "CaPO4": 25, "MgH2PO4": 25, "CaCit": 25, "CaH2Cit": 25, "MgCit": 25, "MgH2Cit": 25}


def conductors():
    limit, drop, b = np.zeros(len(NAMES)), np.zeros(len(NAMES)), np.ones(len(NAMES))
    for i, name in enumerate(NAMES):
        if name in PUBLISHED:
            p = PUBLISHED[name]
            limit[i], drop[i], b[i] = (p[0] * 25 + p[1]) * 25 + p[2], (p[3] * 25 + p[4]) * 25 + p[5], p[6]
        elif name in LIMITS:
            z = abs(Z[i])
            limit[i], drop[i], b[i] = LIMITS[name], (LIMITS[name] * .229 + 30.2 * z) * z, 1.5
    return limit, drop, b


LIMIT, DROP, B = conductors()


class Solution:
    """One water, kept between calls so that each starts where the last ended."""

    def __init__(self, totals):
        self.here = np.array([i for i, v in enumerate(totals) if v > 0])
        self.totals = np.array(totals)[self.here]
        self.made = MADE_OF[:, self.here]
        self.possible = MADE_OF.sum(axis=1) == self.made.sum(axis=1)
        self.log = np.log10(self.totals)
        self.strength = 0.5 * float(np.sum(self.totals * np.minimum(np.abs(CHARGE[self.here]), 2) ** 2))
        self.conc = None

    def at(self, ph):
        """Charge in eq/L with the pH held."""
        for _ in range(100):
            root = np.sqrt(self.strength)
            gamma = -0.5085 * Z**2 * (root / (1 + root) - 0.3 * self.strength)
            constant = LOGK - PROTONS * ph - gamma + self.made @ gamma[1 + self.here]
            constant[1:1 + len(COMPONENTS)] = 0
            for _ in range(200):
                conc = np.where(self.possible, 10 ** np.minimum(constant + self.made @ self.log, 3), 0)
                miss = self.made.T @ conc - self.totals
                if np.max(np.abs(miss) / self.totals) < 1e-12:
                    break
                slope = (self.made.T * conc) @ self.made * np.log(10)
                self.log += np.clip(np.linalg.solve(slope, -miss), -2, 2)
            self.conc = conc
            strength = 0.5 * float(np.sum(conc * Z**2))
            if abs(strength - self.strength) < 1e-12:
                break
            self.strength = strength
        return float(np.sum(self.conc * Z))

    def rest(self):
        """pH at which the charges balance, and EC in mS/cm."""
        ph = brentq(lambda p: np.arcsinh(self.at(p) / 1e-8), 1, 12, xtol=1e-10)
        self.at(ph)
        root = np.sqrt(self.strength)
        return ph, float(np.sum(self.conc * np.maximum(0, LIMIT - DROP * root / (1 + B * root))))


def speciate(question):
    began = time.perf_counter()
    found = [Solution(w).rest() for w in question["waters"]]
    return {"ph": [f[0] for f in found], "ec": [f[1] for f in found], "seconds": time.perf_counter() - began}


def recipes(question):
    shares, targets = np.array(question["shares"]), np.array(question["targets"])
    began, grams = time.perf_counter(), []
    for target in targets:
        a = 1000 * shares.T / target[:, None]
        grams.append(nnls(a, np.ones(len(target)))[0])
    seconds = time.perf_counter() - began
    return {"grams": [list(g) for g in grams], "seconds": seconds}


if __name__ == "__main__":
    json.dump({"speciate": speciate, "recipes": recipes}[sys.argv[1]](json.load(sys.stdin)), sys.stdout)
