"""Critical speeds of jointed lines from an independent model, for tests/core/whirl/critical-speeds.test.ts.

Run from this folder: python3 hinge-lines.py   (writes hinge-lines.json; needs numpy and scipy)

The formulation shares nothing with the library's: every stretch of shaft between two points of interest carries
Legendre polynomials of degree 16 for the displacement and, independently, for the rotation of the section. The strain and
kinetic energies of a Timoshenko beam are integrated by Gauss points. Continuity, hinges and rigid supports are linear
constraints, removed by projecting on the null space of the constraint matrix; scipy.linalg.eigh solves
(M -+ G/n) x = mu K x, and omega = mu**-0.5 for the largest positive mu. Shear coefficient: Cowper 1966.
"""

import json
import numpy as np
from numpy.polynomial import legendre
from scipy.linalg import eigh, null_space

DEGREE = 16
STEEL = dict(name="steel", youngsModulus=207e9, shearModulus=79.6e9, density=7850, yieldStrength=250e6)
BRASS = dict(name="brass", youngsModulus=100e9, shearModulus=37e9, density=8500, yieldStrength=150e6)


def shaft(name, length, outer, supports=(), discs=(), inner=0.0, material=STEEL):
    return dict(name=name, length=length, outerDiameter=outer, innerDiameter=inner, material=material, elevation=0,
                plan=0, yokeTwist=0, supports=list(supports), discs=list(discs))


def disc(name, at, mass, radius):
    return dict(name=name, at=at, mass=mass, polarInertia=mass * radius**2 / 2, diametralInertia=mass * radius**2 / 4)


def joint(kind, mass=0.0, **more):
    return dict(kind=kind, mass=mass, polarInertia=0, **more)


def at(place, **more):
    return dict(at=place, **more)


PROPELLER = dict(blades=4, diameter=0.048, pitch=0.05)

LINES = {
    "one joint": dict(
        shafts=[shaft("motor", 0.06, 0.005, [at(0.01), at(0.045)]),
                shaft("propeller shaft", 0.35, 0.005, [at(0.012), at(0.32)], [disc("propeller", 0.35, 0.055, 0.017)])],
        joints=[joint("universal", 0.018)], propeller=PROPELLER),
    "two joints": dict(
        shafts=[shaft("motor", 0.05, 0.005, [at(0.005), at(0.035)], [disc("flywheel", 0.02, 0.08, 0.02)]),
                shaft("middle", 0.14, 0.006, inner=0.004),
                shaft("propeller shaft", 0.36, 0.005, [at(0.015), at(0.18), at(0.33)],
                      [disc("nut", 0.36, 0.004, 0.004), disc("brass propeller", 0.352, 0.055, 0.017)])],
        joints=[joint("universal", 0.012), joint("universal", 0.015)],
        propeller=dict(PROPELLER, wetMassFactor=1.4, wetInertiaFactor=1.1)),
    "three joints, elastic bushes": dict(
        shafts=[shaft("motor", 0.05, 0.008, [at(0.0, fixesSlope=True)]),
                shaft("first", 0.1, 0.006),
                shaft("second", 0.2, 0.006, [at(0.05, radialStiffness=2e5), at(0.16, radialStiffness=8e4)]),
                shaft("propeller shaft", 0.3, 0.004, [at(0.02, radialStiffness=1e6), at(0.15), at(0.28)],
                      [disc("screw", 0.3, 0.03, 0.02)], material=BRASS)],
        joints=[joint("universal", 0.02), joint("flexible", 0.01), joint("universal", 0.015)]),
    "flexible and rigid joints, steps": dict(
        shafts=[shaft("motor", 0.04, 0.003, [at(0.0), at(0.03)]),
                shaft("step", 0.1, 0.03, [at(0.05, radialStiffness=5e6, fixesSlope=True)], inner=0.02),
                shaft("thin", 0.25, 0.01, [at(0.2)], [disc("collar", 0.1, 0.4, 0.05)]),
                shaft("tail", 0.3, 0.012, [at(0.3)], [disc("wheel", 0.13, 1.5, 0.12)])],
        joints=[joint("flexible", 0.03, bendingStiffness=40.0), joint("rigid", 0.05), joint("rigid", 0.02)]),
    "stubby tube with heavy overhung disc": dict(
        shafts=[shaft("tube", 0.3, 0.06, [at(0.02), at(0.2)], [disc("propeller", 0.3, 6.0, 0.15)], inner=0.04)],
        joints=[]),
}


def wet(line):
    """The rule of the library, restated: last shaft, discs named propeller, else the aftmost; 1.25 unless given."""
    if "propeller" not in line:
        return
    mass = line["propeller"].get("wetMassFactor", 1.25)
    inertia = line["propeller"].get("wetInertiaFactor", 1.25)
    discs = line["shafts"][-1]["discs"]
    chosen = [d for d in discs if "propeller" in d["name"].lower()] or [max(discs, key=lambda d: d["at"])]
    for d in chosen:
        d["mass"] *= mass
        d["polarInertia"] *= inertia
        d["diametralInertia"] *= inertia


def values(xi):
    return legendre.legvander(np.atleast_1d(xi), DEGREE)


def slopes(xi):
    return np.stack([legendre.legval(np.atleast_1d(xi), legendre.legder(np.eye(DEGREE + 1)[k])) for k in
                     range(DEGREE + 1)], axis=1)


def section(s):
    do, di, m = s["outerDiameter"], s["innerDiameter"], s["material"]
    area, inertia = np.pi / 4 * (do**2 - di**2), np.pi / 64 * (do**4 - di**4)
    nu, b2 = m["youngsModulus"] / (2 * m["shearModulus"]) - 1, (di / do) ** 2
    kappa = 6 * (1 + nu) * (1 + b2) ** 2 / ((7 + 6 * nu) * (1 + b2) ** 2 + (20 + 12 * nu) * b2)
    return m["youngsModulus"] * inertia, kappa * m["shearModulus"] * area, m["density"] * area, m["density"] * inertia


def model(line):
    """K, M, G with the constraints taken out."""
    K, M, G, Z, *_ = assemble(line)
    return Z.T @ K @ Z, Z.T @ M @ Z, Z.T @ G @ Z


def assemble(line):
    """K, M, G over all coefficients, the basis Z of what the constraints allow, the field at a point, and the pieces."""
    pieces = []
    for index, s in enumerate(line["shafts"]):
        points = sorted({0.0, s["length"], *(p["at"] for p in s["supports"] + s["discs"])})
        pieces += [(index, a, b) for a, b in zip(points, points[1:])]
    block = DEGREE + 1
    size = 2 * block * len(pieces)
    K, M, G = (np.zeros((size, size)) for _ in range(3))
    rows = []
    xg, wg = legendre.leggauss(DEGREE + 4)

    def field(piece, xi, rotation):
        row = np.zeros(size)
        row[(2 * piece + rotation) * block:(2 * piece + rotation + 1) * block] = values(xi)[0]
        return row

    for p, (index, a, b) in enumerate(pieces):
        ei, gs, mu, rho = section(line["shafts"][index])
        jac = (b - a) / 2
        w, t = slice(2 * p * block, (2 * p + 1) * block), slice((2 * p + 1) * block, (2 * p + 2) * block)
        v, d = values(xg), slopes(xg) / jac
        weight = (wg * jac)[:, None]
        K[t, t] += d.T @ (ei * weight * d) + v.T @ (gs * weight * v)
        K[w, w] += d.T @ (gs * weight * d)
        K[w, t] -= d.T @ (gs * weight * v)
        K[t, w] -= v.T @ (gs * weight * d)
        M[w, w] += v.T @ (mu * weight * v)
        M[t, t] += v.T @ (rho * weight * v)
        G[t, t] += v.T @ (2 * rho * weight * v)

    def there(index, place, rotation):
        """The field at a point of a shaft, taken in the piece that ends or starts there."""
        for p, (i, a, b) in enumerate(pieces):
            if i == index and a - 1e-12 <= place <= b + 1e-12:
                return field(p, 2 * (place - a) / (b - a) - 1, rotation)
        raise ValueError(place)

    for p, ((i, _, _), (j, _, _)) in enumerate(zip(pieces, pieces[1:])):
        rows.append(field(p, 1, 0) - field(p + 1, -1, 0))
        bend = field(p, 1, 1) - field(p + 1, -1, 1)
        if i == j or line["joints"][i]["kind"] == "rigid":
            rows.append(bend)
        else:
            K += line["joints"][i].get("bendingStiffness", 0.0) * np.outer(bend, bend)
        if i != j:
            here = field(p, 1, 0)
            M += line["joints"][i]["mass"] * np.outer(here, here)
    for index, s in enumerate(line["shafts"]):
        for support in s["supports"]:
            here = there(index, support["at"], 0)
            if "radialStiffness" in support:
                K += support["radialStiffness"] * np.outer(here, here)
            else:
                rows.append(here)
            turn = there(index, support["at"], 1)
            if support.get("fixesSlope"):
                rows.append(turn)
            K += support.get("angularStiffness", 0.0) * np.outer(turn, turn)
        for d in s["discs"]:
            here, turn = there(index, d["at"], 0), there(index, d["at"], 1)
            M += d["mass"] * np.outer(here, here) + d["diametralInertia"] * np.outer(turn, turn)
            G += d["polarInertia"] * np.outer(turn, turn)
    return K, M, G, null_space(np.array(rows)), there, pieces


def speeds(matrices, whirl, order, count=4):
    K, M, G = matrices
    sign = -1 if whirl == "forward" else 1
    mu = eigh(M + sign * G / order, K, eigvals_only=True)
    return [float(1 / np.sqrt(m) / order) for m in mu[::-1][:count] if m > 0]


def main():
    cases = []
    for name, line in LINES.items():
        dry = json.loads(json.dumps(dict(name=name, **line)))
        moving = json.loads(json.dumps(line))
        wet(moving)
        matrices = model(moving)
        results = [dict(whirl=whirl, order=order, speeds=speeds(matrices, whirl, order))
                   for whirl in ("forward", "backward") for order in (1, 2, 4)]
        cases.append(dict(line=dry, results=results))
    with open("hinge-lines.json", "w", encoding="utf-8") as file:
        json.dump(cases, file, indent=1)
        file.write("\n")


if __name__ == "__main__":
    main()
