"""Chains of joints in space, solved without any formula of the library under test.

Run:  python3 chains.py > chains.json      (Python 3, numpy, scipy, mpmath)

Two ways, neither of them the library's:
1. Loop closure. The cross of a universal joint keeps its two pins at right angles, so the driven shaft turns until
   its pin, carried round its axis by a rotation matrix, is square to the driving pin. That equation is solved by
   bracketed root finding in 40 digits, joint after joint; the speed ratio is a numerical derivative of the result.
2. Following the pins: with driving pin p, driven axis v and driving axis u the ratio of one joint is
   (u . v) / (1 - (p . v)^2), and the driven pin is v x p. On 4096 input angles, in double precision; numpy's FFT gives
   the orders, scipy's bounded minimiser the extremes.
The script stops if the two disagree.
"""

import json
import sys

import mpmath as mp
import numpy as np
from scipy.optimize import minimize_scalar

mp.mp.dps = 40
ANGLES = [0.0, 0.3, 0.9, 1.5707963267948966, 2.4, 3.9, 7.7]


def direction(elevation, plan, m):
    return [m.cos(elevation) * m.cos(plan), m.cos(elevation) * m.sin(plan), m.sin(elevation)]


def cross(a, b):
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]


def dot(a, b):
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def unit(a, m):
    length = m.sqrt(dot(a, a))
    return [x / length for x in a]


def turn(vector, axis, angle, m):
    """Rodrigues' rotation of a vector about a unit axis."""
    c, s = m.cos(angle), m.sin(angle)
    across = cross(axis, vector)
    along = dot(axis, vector) * (1 - c)
    return [vector[i] * c + across[i] * s + axis[i] * along for i in range(3)]


def carry(pin, u, v, m):
    """The pin taken by the smallest rotation that brings axis u onto axis v."""
    normal = cross(u, v)
    sine = m.sqrt(dot(normal, normal))
    if sine == 0:
        return pin
    return turn(pin, unit(normal, m), m.atan2(sine, dot(u, v)), m)


def start(axes, kinds, m):
    """Driving pin of the first universal joint at input angle 0, and its place in the chain."""
    first = kinds.index("universal")
    u, v = axes[first], axes[first + 1]
    normal = cross(u, v)
    if dot(normal, normal) < 1e-24:
        return first, unit([-u[1], u[0], 0 * u[0]], m)
    return first, unit(normal, m)


class Closure:
    """The assembled line; every shaft's angle counts from its pose at input angle 0."""

    def __init__(self, chain):
        self.axes = [direction(mp.mpf(s["elevation"]), mp.mpf(s["plan"]), mp) for s in chain["shafts"]]
        self.kinds = chain["joints"]
        self.first, pin = start(self.axes, self.kinds, mp)
        self.pairs = []
        for i in range(self.first, len(self.kinds)):
            u, v = self.axes[i], self.axes[i + 1]
            if self.kinds[i] == "universal":
                driven = unit(cross(v, pin), mp)
                self.pairs.append((u, v, pin, driven))
            else:
                driven = carry(pin, u, v, mp)
                self.pairs.append(None)
            pin = turn(driven, v, mp.mpf(chain["shafts"][i + 1]["yokeTwist"]), mp)

    def output(self, angle):
        angle = mp.mpf(angle)
        for pair in self.pairs:
            if pair is None:
                continue
            u, v, driving, driven = pair
            p = turn(driving, u, angle, mp)
            closed = lambda phi: dot(turn(driven, v, phi, mp), p)
            angle = mp.findroot(closed, (angle - mp.pi / 2, angle + mp.pi / 2), solver="anderson", tol=mp.mpf(10) ** -70, maxsteps=400)
        return angle

    def ratio(self, angle):
        h = mp.mpf(10) ** -6
        f = [self.output(mp.mpf(angle) + k * h) for k in (-2, -1, 1, 2)]
        return (f[0] - 8 * f[1] + 8 * f[2] - f[3]) / (12 * h)


def follow_pins(chain, angles):
    axes = [direction(s["elevation"], s["plan"], np) for s in chain["shafts"]]
    first, pin = start(axes, chain["joints"], np)
    pins = np.array(turn(pin, axes[first], np.asarray(angles), np))
    ratio = np.ones(len(angles))
    for i in range(first, len(chain["joints"])):
        u, v = axes[i], axes[i + 1]
        if chain["joints"][i] == "universal":
            ratio = ratio * dot(u, v) / (1 - dot(pins, v) ** 2)
            pins = np.array(cross(v, pins))
            pins = pins / np.sqrt(dot(pins, pins))
        else:
            pins = np.array(carry(pins, u, v, np))
        pins = np.array(turn(pins, v, chain["shafts"][i + 1]["yokeTwist"], np))
    return ratio


def extremes(chain):
    grid = np.linspace(0, np.pi, 2001)
    values = follow_pins(chain, grid)
    out = []
    for sign in (1, -1):
        best = grid[np.argmin(sign * values)]
        found = minimize_scalar(
            lambda x: sign * follow_pins(chain, np.array([x]))[0],
            bounds=(best - 0.002, best + 0.002),
            method="bounded",
            options={"xatol": 1e-12},
        )
        out.append(sign * found.fun)
    return out


def orders(chain):
    n = 4096
    spectrum = np.fft.rfft(follow_pins(chain, 2 * np.pi * np.arange(n) / n)) * 2 / n
    return [abs(spectrum[k]) for k in (2, 4, 6, 8)]


def random_chains():
    rng = np.random.default_rng(20240607)
    chains = []
    for joints in [1, 1, 2, 2, 2, 3, 3, 4, 4, 5, 6, 7, 8, 8] * 2:
        kinds = [str(k) for k in rng.choice(["universal", "universal", "universal", "rigid", "flexible"], joints)]
        kinds[int(rng.integers(joints))] = "universal"
        bend = rng.choice([0.01, 0.2, 0.9])
        elevation, plan = rng.uniform(-0.6, 0.6), rng.uniform(-3, 3)
        shafts = [{"elevation": elevation, "plan": plan, "yokeTwist": rng.uniform(-3, 3)}]
        for kind in kinds:
            # Axes of a rigid joint are in line; 1e-3 rad apart they still show how the pin is carried over.
            spread = 1e-3 if kind == "rigid" else bend
            elevation = float(np.clip(elevation + rng.uniform(-spread, spread) / 1.5, -1.2, 1.2))
            plan += rng.uniform(-spread, spread) / 1.5
            shafts.append({"elevation": elevation, "plan": plan, "yokeTwist": rng.uniform(-3, 3)})
        chains.append({"shafts": shafts, "joints": kinds})
    chains.append(
        {
            "shafts": [
                {"elevation": 0.2, "plan": 0.3, "yokeTwist": 0.0},
                {"elevation": 0.2, "plan": 0.3, "yokeTwist": 0.7},
                {"elevation": -0.1, "plan": 0.5, "yokeTwist": 0.0},
            ],
            "joints": ["universal", "universal"],
            "note": "first joint straight: the pin starts horizontally to port",
        }
    )
    return chains


def solve(chain):
    closure = Closure(chain)
    ratio = [float(closure.ratio(a)) for a in ANGLES]
    apart = np.max(np.abs(np.array(ratio) / follow_pins(chain, ANGLES) - 1))
    if apart > 1e-12:
        sys.exit(f"the two ways disagree by {apart}: {chain}")
    low, high = extremes(chain)
    return {
        **chain,
        "inputAngles": ANGLES,
        "outputAngle": [float(closure.output(a)) for a in ANGLES],
        "ratio": ratio,
        "min": low,
        "max": high,
        "orders": orders(chain),
    }


print("[\n" + ",\n".join(json.dumps(solve(chain)) for chain in random_chains()) + "\n]")
