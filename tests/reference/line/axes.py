"""Axes and joint angles from ruler measures, without any formula of the library under test.

Run:  python3 axes.py > axes.json      (Python 3, numpy, scipy, mpmath)

Directions are differences of points in space; the joint angle is 2 asin(|u - v| / 2) of unit vectors in 30 digits; the
meeting of two axes is a least-squares problem for the two points nearest each other (numpy lstsq). Bounds are the
extremes over the box of tolerances, by scipy's L-BFGS-B from sixty random corners. The likely reach is the root of the
sum of squares of numerical derivatives times tolerances.
"""

import json

import mpmath as mp
import numpy as np
from scipy.optimize import minimize

mp.mp.dps = 30


def angle(u, v):
    u = [mp.mpf(float(x)) for x in u]
    v = [mp.mpf(float(x)) for x in v]
    nu, nv = mp.sqrt(sum(x * x for x in u)), mp.sqrt(sum(x * x for x in v))
    return float(2 * mp.asin(mp.sqrt(sum((a / nu - b / nv) ** 2 for a, b in zip(u, v))) / 2))


def quick_angle(u, v):
    u, v = u / np.linalg.norm(u), v / np.linalg.norm(v)
    return 2 * np.arcsin(np.linalg.norm(u - v) / 2)


def points(values):
    """Values: x, height, offset at both stations of the motor, then of the tube."""
    v = np.asarray(values, float).reshape(4, 3)
    return [np.array([x, o, h]) for x, h, o in v]


def meeting(values):
    a, b, c, d = points(values)
    u, v = b - a, d - c
    (s, t), *_ = np.linalg.lstsq(np.column_stack([u, -v]), c - a, rcond=None)
    p, q = a + s * u, c + t * v
    return (p + q) / 2, np.linalg.norm(p - q)


def at_station(a, b, x):
    return a + (b - a) * (x - a[0]) / (b[0] - a[0])


def angles(values, joints, measure):
    a, b, c, d = points(values[:12])
    if joints is None:
        return [measure(b - a, d - c)]
    first, second = at_station(a, b, values[12]), at_station(c, d, values[13])
    return [measure(b - a, second - first), measure(second - first, d - c)]


def bounds(f, values, tolerances):
    """Extremes over the box: bounded quasi-Newton from many corners; the least by the square, which is smooth at zero."""
    values, tolerances = np.array(values), np.array(tolerances)
    random = np.random.default_rng(7)
    out = []
    for score in (lambda x: f(x) ** 2, lambda x: -f(x)):
        best = np.inf
        for _ in range(60):
            scaled = lambda z: 1e3 * score(values + z * tolerances)
            start = random.choice([-1.0, 1.0], len(values))
            found = minimize(scaled, start, method="L-BFGS-B", bounds=[(-1, 1)] * len(values), options={"ftol": 1e-15, "gtol": 1e-12})
            best = min(best, score(values + found.x * tolerances))
        out.append(best)
    return [float(np.sqrt(out[0])), float(-out[1])]


def reach(f, values, tolerances):
    total = 0.0
    for i, t in enumerate(tolerances):
        h = 1e-6
        up, down = list(values), list(values)
        up[i] += h
        down[i] -= h
        total += ((f(up) - f(down)) / (2 * h) * t) ** 2
    return float(np.sqrt(total))


def case(rng, joints, tolerance):
    values = [
        0.0, rng.uniform(0.02, 0.05), rng.uniform(-0.01, 0.01),
        0.08, rng.uniform(0.02, 0.05), rng.uniform(-0.01, 0.01),
        0.16, rng.uniform(0.0, 0.03), rng.uniform(-0.02, 0.02),
        0.45, rng.uniform(-0.06, 0.02), rng.uniform(-0.03, 0.03),
    ]
    values = [float(v) for v in values]
    if joints:
        values += [0.095, 0.15]
    tolerances = [float(tolerance * rng.uniform(0.4, 1)) for _ in values]
    count = len(angles(values, joints, angle))
    rows = []
    for k in range(count):
        f = lambda x, k=k: angles(list(x), joints, quick_angle)[k]
        low, high = bounds(f, values, tolerances)
        rows.append({"value": angles(values, joints, angle)[k], "least": low, "greatest": high, "reach": reach(f, values, tolerances)})
    centre, gap = meeting(values[:12])
    row = {"values": values, "tolerances": tolerances, "angles": rows}
    if not joints:
        row |= {"centre": [float(x) for x in centre], "gap": float(gap)}
    else:
        a, b, c, d = points(values[:12])
        row["length"] = float(np.linalg.norm(at_station(c, d, values[13]) - at_station(a, b, values[12])))
    return row


def straight(tolerance):
    """Nearly one line: the least joint angle within the tolerances is none at all."""
    values = [0.0, 0.03, 0.0, 0.08, 0.0302, 0.0001, 0.16, 0.0301, 0.0002, 0.45, 0.0300, 0.0]
    tolerances = [tolerance] * 12
    f = lambda x: angles(list(x), None, quick_angle)[0]
    low, high = bounds(f, values, tolerances)
    return {"values": values, "tolerances": tolerances, "angles": [{"value": angles(values, None, angle)[0], "least": low, "greatest": high, "reach": None}]}


rng = np.random.default_rng(4201)
cases = [case(rng, None, 5e-4) for _ in range(3)] + [case(rng, True, 5e-4) for _ in range(2)]
cases += [case(rng, None, 2e-6), case(rng, True, 2e-6), straight(5e-4)]
print(json.dumps(cases, indent=1))
