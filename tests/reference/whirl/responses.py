"""Speed-frequency maps and steady whirl from the independent spectral model of hinge-lines.py.

Run from this folder: python3 responses.py   (writes responses.json; needs numpy and scipy)

Maps: mu = 1/omega of (mu^2 K + mu Omega G - M) x = 0 by scipy.linalg.eig of its companion matrix; positive omega forward,
negative backward. Whirl: the dense complex system (K - w^2 M +- w Omega G + i w C) q = f by numpy.linalg.solve, with C made
of scipy's eigenvectors: 2 zeta omega_k for each of the lowest eight modes, 2 zeta omega_8 for all above, and dashpots at the
elastic supports. A bent shaft is a stress-free curvature in the strain energy; a joint's couples act on the rotations
of the two shaft ends.
"""

import copy
import importlib.util
import json

import numpy as np
from scipy.linalg import eig, eigh

spec = importlib.util.spec_from_file_location("hinge_lines", "hinge-lines.py")
hinge = importlib.util.module_from_spec(spec)
spec.loader.exec_module(hinge)

SPEEDS = [0.0, 250.0, 1000.0, 4000.0]


def firm(line):
    """The line with a bush that resists the slope, for the angular stiffness."""
    own = copy.deepcopy(line)
    own["shafts"][-1]["supports"][-1]["angularStiffness"] = 35.0
    return own


def branches(line, speed, count=4):
    moving = copy.deepcopy(line)
    hinge.wet(moving)
    K, M, G = hinge.model(moving)
    n = len(K)
    zero, one = np.zeros((n, n)), np.eye(n)
    A = np.block([[zero, one], [M, -speed * G]])
    B = np.block([[one, zero], [zero, K]])
    mu = eig(A, B, right=False).real
    forward = np.sort(1 / mu[mu > 1e-12 * mu.max()])[:count]
    backward = np.sort(-1 / mu[mu < -1e-12 * mu.max()])[:count]
    return dict(speed=speed, forward=forward.tolist(), backward=backward.tolist())


def response(line, speeds, zeta, bushes, load, points):
    moving = copy.deepcopy(line)
    hinge.wet(moving)
    K, M, G, Z, there, pieces = hinge.assemble(moving)
    dashpots = np.zeros_like(K)
    for index, s in enumerate(line["shafts"]):
        for support in s["supports"]:
            if "radialStiffness" in support:
                here = there(index, support["at"], 0)
                dashpots += bushes * np.outer(here, here)
    f = np.zeros((2, len(K)), complex)  # constant, and times the square of the speed
    order, turn = 1, 1
    if load == "unbalance and bow":
        for index, s in enumerate(line["shafts"]):
            for k, d in enumerate(s["discs"]):
                f[1] += d["unbalance"] * np.exp(1j * d["phase"]) * there(index, d["at"], 0)
            if "runout" not in s:
                continue
            at = [p["at"] for p in s["supports"]]
            span = (min(at), max(at)) if len(set(at)) > 1 else (0, s["length"])
            curvature = -8 * (s["runout"] / 2) / (span[1] - span[0]) ** 2
            ei = hinge.section(s)[0]
            for p, (i, a, b) in enumerate(pieces):
                if i == index:
                    bend = ei * curvature
                    f[0] += bend * (there_in(there, p, pieces, 1) - there_in(there, p, pieces, -1))
    else:
        order, turn = 2, 1 if load == "joints forward" else -1
        angle = line["shafts"][1]["elevation"] - line["shafts"][0]["elevation"]
        f[0] += np.tan(angle) / 2 * there(0, line["shafts"][0]["length"], 1)
        f[0] -= np.sin(angle) / 2 * there(1, 0.0, 1)
    k, m, g, c = (Z.T @ X @ Z for X in (K, M, G, dashpots))
    values, psi = eigh(k, m)
    omega = np.sqrt(values)
    rates = 2 * zeta * np.minimum(omega, omega[7])
    damping = c + (m @ psi) @ np.diag(rates) @ (m @ psi).T
    looks = np.array([there(index, place, 0) @ Z for index, place in points])
    rows = []
    for speed in speeds:
        w = order * speed
        q = np.linalg.solve(k - w**2 * m + turn * w * speed * g + 1j * w * damping,
                            Z.T @ (f[0] + speed**2 * f[1]))
        rows.append((looks @ q).tolist())
    return dict(load=load, speeds=speeds, zeta=zeta, bushes=bushes,
                points=[dict(shaft=i, at=a) for i, a in points],
                amplitude=np.abs(np.array(rows)).tolist(), phase=np.angle(np.array(rows)).tolist())


def there_in(there, p, pieces, end):
    """The rotation at an end of a piece, taken in that piece."""
    size = len(there(0, 0.0, 0))
    block = hinge.DEGREE + 1
    row = np.zeros(size)
    row[(2 * p + 1) * block:(2 * p + 2) * block] = hinge.values(end)[0]
    return row


def main():
    lines = {name: dict(name=name, **line) for name, line in hinge.LINES.items()}
    lines["a bush that resists the slope"] = firm(lines["two joints"])
    maps = [dict(line=line, rows=[branches(line, speed) for speed in SPEEDS]) for line in lines.values()]

    bent = copy.deepcopy(lines["one joint"])
    bent["shafts"][1].update(elevation=0.2, runout=2e-4)
    bent["shafts"][1]["discs"][0].update(unbalance=3e-6, phase=0.7)
    elastic = copy.deepcopy(lines["three joints, elastic bushes"])
    elastic["shafts"][2].update(runout=1e-4)
    elastic["shafts"][3].update(runout=5e-5)
    elastic["shafts"][3]["discs"][0].update(unbalance=1e-6, phase=-1.1)
    speeds = [0.0, 120.0, 350.0, 700.0, 800.0, 1500.0]
    responses = []
    for line, loads, zeta, bushes, points in (
        (bent, ["unbalance and bow", "joints forward", "joints backward"], 0.02, 0.0, [(1, 0.35), (1, 0.0)]),
        (elastic, ["unbalance and bow"], 0.005, 30.0, [(3, 0.3), (2, 0.05), (2, 0.2)]),
    ):
        results = [response(line, speeds, zeta, bushes, load, points) for load in loads]
        responses.append(dict(line=line, results=results))
    with open("responses.json", "w", encoding="utf-8") as file:
        json.dump(dict(maps=maps, responses=responses), file, indent=1)
        file.write("\n")


main()
