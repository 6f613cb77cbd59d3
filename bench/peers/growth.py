#!/usr/bin/python3
"""Peer for growth: the equations of Van Henten (1994, Agric. Syst. 45:55-72)
by general-purpose solvers. Reads {"seasons": [[ppfd, hours, temp, co2, perM2,
rootShare], ...], "days": n} on standard input.

    growth.py dop853    scipy, order eight, 1e-11: the reference
    growth.py lsoda     scipy's LSODA at 1e-6, a call for each light and night
    growth.py rk4       numpy, all seasons in one array, 600 s steps
    growth.py rk4long   the same with 3600 s steps

Answers {"ends": [[store, structure], ...], "seconds": of the solving alone}.
"""
import json
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp


class Leaves:
    """What stays the same while air and light do; arrays or plain numbers."""

    def __init__(self, watts, temp, co2, roots):
        lost = 40.0 * 2.0 ** ((temp - 20) / 10)
        within = -1.32e-5 * temp ** 2 + 5.94e-4 * temp - 2.64e-3
        air = 1.83e-3 * (co2 - lost) / (1 / 0.007 + 1 / 0.005 + 1 / within)
        light = 17e-6 * (co2 - lost) / (co2 + 2 * lost) * watts
        self.full = 30 / 44 * light * air / (light + air)
        self.cover = 0.9 * 0.075 * (1 - roots)
        self.rate = 5e-6 * 1.6 ** ((temp - 20) / 10)
        self.burn = (3.47e-7 * (1 - roots) + 1.16e-7 * roots) * 2.0 ** ((temp - 25) / 10)

    def rates(self, store, structure):
        built = self.rate * store / (structure + store) * structure
        made = self.full * (1 - np.exp(-self.cover * structure))
        return made - built / 0.8 - self.burn * structure, built


def by_scipy(season, days, method, rtol, atol):
    ppfd, hours, temp, co2, per_m2, roots = season
    light, night = Leaves(ppfd / 4.57, temp, co2, roots), Leaves(0.0, temp, co2, roots)
    y = np.array([0.025, 0.075]) * per_m2
    for _ in range(days):
        for leaves, seconds in ((light, hours * 3600), (night, (24 - hours) * 3600)):
            y = solve_ivp(lambda t, x: leaves.rates(x[0], x[1]), (0, seconds), y, method=method, rtol=rtol, atol=atol).y[:, -1]
    return list(y)


def by_numpy(seasons, days, step):
    s = np.array(seasons, dtype=float)
    hours = s[0, 1]
    if not (s[:, 1] == hours).all():
        raise SystemExit('rk4 wants the same hours of light in all seasons')
    light, night = Leaves(s[:, 0] / 4.57, s[:, 2], s[:, 3], s[:, 5]), Leaves(0.0 * s[:, 0], s[:, 2], s[:, 3], s[:, 5])
    a, b = 0.025 * s[:, 4], 0.075 * s[:, 4]
    for _ in range(days):
        for leaves, seconds in ((light, hours * 3600), (night, (24 - hours) * 3600)):
            n = round(seconds / step)
            h = seconds / n
            for _ in range(n):
                k1, l1 = leaves.rates(a, b)
                k2, l2 = leaves.rates(a + h / 2 * k1, b + h / 2 * l1)
                k3, l3 = leaves.rates(a + h / 2 * k2, b + h / 2 * l2)
                k4, l4 = leaves.rates(a + h * k3, b + h * l3)
                a = a + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
                b = b + h / 6 * (l1 + 2 * l2 + 2 * l3 + l4)
    return [list(pair) for pair in zip(a, b)]


def main():
    asked = json.load(sys.stdin)
    seasons, days = asked['seasons'], asked['days']
    start = time.perf_counter()
    how = sys.argv[1]
    if how == 'dop853':
        ends = [by_scipy(s, days, 'DOP853', 1e-11, 1e-13) for s in seasons]
    elif how == 'lsoda':
        ends = [by_scipy(s, days, 'LSODA', 1e-6, 1e-9) for s in seasons]
    else:
        ends = by_numpy(seasons, days, {'rk4': 600, 'rk4long': 3600}[how])
    json.dump({'ends': ends, 'seconds': time.perf_counter() - start}, sys.stdout)


main()
