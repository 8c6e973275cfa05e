"""Least-squares answers to balancing runs without phase, by scipy, on plain readings.

Run: python3 tests/reference/balance/four-runs.py > tests/reference/balance/four-runs.json

Unknowns: initial response (x, y) and amplitude per kg s. Residuals: |(x, y)| - A0 and
|(x, y) + s m (cos f, sin f)| - A for each trial. Many starts; the least sum of squares is kept.
"""
import json

import numpy as np
from scipy.optimize import least_squares

rng = np.random.default_rng(20240517)


def solve(initial, trials):
    mass = np.array([t["mass"] for t in trials])
    angle = np.array([t["angle"] for t in trials])
    amplitude = np.array([t["amplitude"] for t in trials])
    unit = mass.max()

    def residuals(p):
        z = p[0] + 1j * p[1]
        return np.concatenate([[abs(z) - initial], abs(z + p[2] * mass / unit * np.exp(1j * angle)) - amplitude])

    best = None
    for direction in np.linspace(0, 2 * np.pi, 12, endpoint=False):
        for effect in (0.3, 1, 3):
            start = [initial * np.cos(direction), initial * np.sin(direction), effect * initial]
            fit = least_squares(residuals, start, xtol=1e-15, ftol=1e-15, gtol=1e-15)
            if best is None or fit.cost < best.cost:
                best = fit
    x, y, s = best.x
    unbalance = (x + 1j * y) / (s / unit)
    correction = -unbalance
    return {
        "mass": abs(correction),
        "angle": float(np.angle(correction) % (2 * np.pi)),
        "residual": float(np.sqrt(2 * best.cost / (len(trials) + 1))),
        "sensitivity": abs(s) / unit,
    }


def case(name, initial, trials):
    return {"name": name, "initial": initial, "trials": trials, "answer": solve(initial, trials)}


def made(count):
    size, direction, s = rng.uniform(0.5, 2), rng.uniform(0, 2 * np.pi), 1.0
    z = size * np.exp(1j * direction)
    places = np.sort(rng.uniform(0, 0.5, count)) + 2 * np.pi * np.arange(count) / count
    trials = []
    for place in places:
        mass = rng.uniform(0.7, 1.2)
        amplitude = abs(z + s * mass * np.exp(1j * place)) + 0.03 * rng.normal()
        trials.append({"mass": mass * 1e-3, "angle": float(place), "amplitude": float(abs(amplitude))})
    return case(f"{count} trials, 3 % noise", float(size + 0.03 * rng.normal()), trials)


third = 2 * np.pi / 3
cases = [
    case(
        "classic",
        10,
        [{"mass": 0.05, "angle": i * third, "amplitude": a} for i, a in enumerate([7, 12, 18])],
    )
] + [made(count) for count in (3, 3, 4, 5, 6)]
print(json.dumps({"scipy": __import__("scipy").__version__, "cases": cases}, indent=1))
