"""Acceleration, inertia torque and best yoke twists of chains of joints, without any formula of the library under test.

Run:  python3 turning.py > turning.json      (Python 3, numpy, scipy; reads chains.json beside it)

Ratios come from following the pins: with driving pin p, driven axis v and driving axis u the ratio of one joint is
(u . v) / (1 - (p . v)^2), and the driven pin is v x p. Accelerations are fourth-order differences of these ratios, and
peaks are found by scipy's bounded minimiser. The inertia torque on a shaft is the derivative of the kinetic energy of
what turns behind the joint, over the ratio of that shaft. Best twists are searched for by scipy's Nelder-Mead from many
starts, minimising the spread of ln(ratio) over a turn.
"""

import json
import pathlib

import numpy as np
from scipy.optimize import minimize, minimize_scalar

CHAINS = json.loads((pathlib.Path(__file__).parent / "chains.json").read_text())
GRID = np.linspace(0, np.pi, 4001)


def direction(shaft):
    e, p = shaft["elevation"], shaft["plan"]
    return np.array([np.cos(e) * np.cos(p), np.cos(e) * np.sin(p), np.sin(e)])


def turn(vector, axis, angle):
    angle = np.asarray(angle)[..., None]
    along = (vector @ axis)[..., None] if vector.ndim > 1 else vector @ axis
    return vector * np.cos(angle) + np.cross(axis, vector) * np.sin(angle) + axis * along * (1 - np.cos(angle))


def carry(pin, u, v):
    normal = np.cross(u, v)
    sine = np.linalg.norm(normal)
    if sine == 0:
        return pin
    return turn(pin, normal / sine, np.full(len(pin), np.arctan2(sine, u @ v)))


def ratios(shafts, kinds, angles):
    """Speed ratio of every shaft at the input angles."""
    angles = np.atleast_1d(np.asarray(angles, float))
    axes = [direction(s) for s in shafts]
    out = [np.ones(len(angles))]
    pin = None
    for i, kind in enumerate(kinds):
        u, v = axes[i], axes[i + 1]
        if kind == "universal":
            if pin is None:
                normal = np.cross(u, v)
                if np.linalg.norm(normal) < 1e-12:
                    normal = np.array([-u[1], u[0], 0.0])
                pin = turn(np.tile(normal / np.linalg.norm(normal), (len(angles), 1)), u, angles)
            out.append(out[-1] * (u @ v) / (1 - (pin @ v) ** 2))
            pin = np.cross(v, pin)
            pin = pin / np.linalg.norm(pin, axis=1)[:, None]
        else:
            out.append(out[-1])
            pin = carry(pin, u, v) if pin is not None else None
        if pin is not None:
            pin = turn(pin, v, np.full(len(angles), shafts[i + 1]["yokeTwist"]))
    return np.array(out)


def slope(f, x, h=1e-3):
    return (f(x - 2 * h) - 8 * f(x - h) + 8 * f(x + h) - f(x + 2 * h)) / (12 * h)


def fine_slope(f, x):
    """Richardson's extrapolation of the fourth-order difference: sixth order."""
    return (16 * slope(f, x, 5e-4) - slope(f, x, 1e-3)) / 15


def peak(f):
    values = f(GRID)
    best = GRID[np.argmax(values)]
    found = minimize_scalar(lambda x: -f(np.array([x]))[0], bounds=(best - 0.002, best + 0.002), method="bounded", options={"xatol": 1e-10})
    return float(-found.fun), float(found.x % np.pi)


def acceleration(chain):
    rows = []
    for i in range(len(chain["shafts"])):
        value, where = peak(lambda x: fine_slope(lambda y: ratios(chain["shafts"], chain["joints"], y)[i], x))
        rows.append({"peak": value, "inputAngle": where})
    return rows


def body(length=0.1, diameter=0.005, density=7800):
    return density * length * np.pi * diameter**4 / 32


def inertia_torque(chain, rng):
    discs = [float(d) for d in rng.uniform(0, 1e-5, len(chain["shafts"]))]
    inertias = np.array([body() + d for d in discs])
    joint = int(rng.integers(len(chain["joints"])))

    def energy(x):
        r = ratios(chain["shafts"], chain["joints"], x)
        return 0.5 * (inertias[joint + 1 :, None] * r[joint + 1 :] ** 2).sum(axis=0)

    def on(shaft):
        backward = lambda x: -fine_slope(energy, x) / ratios(chain["shafts"], chain["joints"], x)[shaft]
        return peak(backward)[0]

    return {"discs": discs, "joint": joint, "behindJoint": on(joint + 1), "atPropeller": on(len(chain["shafts"]) - 1)}


def best_twists(shafts, rng):
    kinds = ["universal"] * (len(shafts) - 1)
    grid = np.linspace(0, np.pi, 90, endpoint=False)

    def spread(twists):
        turned = [{**s, "yokeTwist": t} for s, t in zip(shafts, [0, *twists, 0])]
        logs = np.log(ratios(turned, kinds, grid)[-1])
        return np.sqrt((logs**2).mean())

    best = None
    for _ in range(12):
        start = rng.uniform(-1.6, 1.6, len(shafts) - 2)
        found = minimize(spread, start, method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-15, "maxiter": 4000})
        if best is None or found.fun < best.fun:
            best = found
    turned = [{**s, "yokeTwist": t} for s, t in zip(shafts, [0, *best.x, 0])]
    high, _ = peak(lambda x: ratios(turned, kinds, x)[-1])
    low, _ = peak(lambda x: -ratios(turned, kinds, x)[-1])
    return float(high + low)


def phase_lines(rng):
    lines = []
    for joints in [2, 2, 2, 2, 3, 3, 3, 3, 3, 4, 4, 5]:
        elevation, plan = 0.0, 0.0
        shafts = [{"elevation": 0.0, "plan": 0.0, "yokeTwist": 0.0}]
        for _ in range(joints):
            elevation += float(rng.uniform(-0.4, 0.4))
            plan += float(rng.uniform(-0.4, 0.4))
            shafts.append({"elevation": elevation, "plan": plan, "yokeTwist": float(rng.uniform(-1.5, 1.5))})
        lines.append({"shafts": shafts, "degreeAtBest": best_twists(shafts, rng)})
    return lines


rng = np.random.default_rng(20240611)
moderate = [c for c in CHAINS if c["min"] > 0.3]
print(
    json.dumps(
        {
            "accelerations": [acceleration(c) for c in moderate],
            "chains": [{"shafts": c["shafts"], "joints": c["joints"]} for c in moderate],
            "inertia": [inertia_torque(c, rng) for c in moderate],
            "phases": phase_lines(rng),
        },
        indent=1,
    )
)
