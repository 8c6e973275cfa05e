"""Shaft lines in twist as fine chains of lumps, solved densely with scipy.

Run:  python3 chains.py > chains.json      (Python 3, numpy, scipy)

Every shaft is cut into PIECES equal bars with the consistent inertia matrix; the frequencies of PIECES and of PIECES / 2
are extrapolated (Richardson, the error falls with the square of the length). The response to the joints is found in the
time-harmonic form with the joint as a gap of prescribed relative angle between two separate nodes: the unknowns are the
absolute angles, the gap a constraint with its own unknown torque, and the springs have the loss factor 2 zeta.
"""

import json

import numpy as np
from scipy.linalg import eigh

PIECES = 240


def assemble(case, pieces):
    nodes, elements, lumps, starts = 0, [], [], []
    for shaft in case["shafts"]:
        g, rho, d, di, length = (shaft[k] for k in ("shearModulus", "density", "outerDiameter", "innerDiameter", "length"))
        moment = np.pi / 32 * (d**4 - di**4)
        h = length / pieces
        starts.append(nodes)
        for i in range(pieces):
            elements.append((nodes + i, nodes + i + 1, g * moment / h, rho * moment * h))
        for at, inertia in shaft["discs"]:
            lumps.append((nodes + int(round(at / length * pieces)), inertia))
        nodes += pieces + 1
    ends = [s + pieces for s in starts]
    lumps.append((0, case["rotor"]))
    for i, joint in enumerate(case["joints"]):
        lumps.append((ends[i], joint["inertia"] / 2))
        lumps.append((starts[i + 1], joint["inertia"] / 2))
    k = np.zeros((nodes, nodes))
    m = np.zeros((nodes, nodes))
    for a, b, s, j in elements:
        k[np.ix_([a, b], [a, b])] += s * np.array([[1, -1], [-1, 1]])
        m[np.ix_([a, b], [a, b])] += j / 6 * np.array([[2, 1], [1, 2]])
    for n, j in lumps:
        m[n, n] += j
    return k, m, starts, ends


def frequencies(case, pieces, count):
    k, m, starts, ends = assemble(case, pieces)
    n = len(k)
    keep = np.eye(n)
    drop = []
    for i, joint in enumerate(case["joints"]):
        a, b = ends[i], starts[i + 1]
        if joint["stiffness"] is None:
            keep[b, a] = 1.0
            drop.append(b)
        else:
            k[np.ix_([a, b], [a, b])] += joint["stiffness"] * np.array([[1, -1], [-1, 1]])
    keep = np.delete(keep, drop, axis=1)
    values = eigh(keep.T @ k @ keep, keep.T @ m @ keep, eigvals_only=True)
    return np.sqrt(values[1 : count + 1])


def response(case, pieces):
    k, m, starts, ends = assemble(case, pieces)
    n, nj = len(k), len(case["joints"])
    w = case["frequency"]
    eta = 2 * case["damping"]
    a = np.zeros((n + nj, n + nj), dtype=complex)
    a[:n, :n] = k * (1 + 1j * eta) - w**2 * m
    rhs = np.zeros(n + nj, dtype=complex)
    for i, joint in enumerate(case["joints"]):
        p, q = ends[i], starts[i + 1]
        # torque t through the joint: acts backwards on p, forwards on q; theta_q - theta_p + t / k = gap
        a[p, n + i], a[q, n + i] = -1.0, 1.0
        a[n + i, p], a[n + i, q] = -1.0, 1.0
        if joint["stiffness"] is not None:
            a[n + i, n + i] = -1.0 / (joint["stiffness"] * (1 + 1j * eta))
        rhs[n + i] = joint["gap"][0] + 1j * joint["gap"][1]
    x = np.linalg.solve(a, rhs)
    return [abs(x[n + i]) for i in range(nj)] + [abs(x[0]), abs(x[n - 1])]


def extrapolate(coarse, fine):
    return [float(f + (f - c) / 3) for c, f in zip(coarse, fine)]


steel = dict(shearModulus=79.3e9, density=7850.0)
stainless = dict(shearModulus=76.9e9, density=7900.0)
brass = dict(shearModulus=40.1e9, density=8540.0)

CASES = [
    dict(
        name="one rigid joint",
        shafts=[
            dict(length=0.06, outerDiameter=0.005, innerDiameter=0.0, discs=[], **steel),
            dict(length=0.36, outerDiameter=0.005, innerDiameter=0.0, discs=[[0.33, 5.5e-6]], **stainless),
        ],
        joints=[dict(stiffness=None, inertia=4e-7, gap=[0.015, 0.0])],
        rotor=2.1e-5, frequency=690.0, damping=0.02,
    ),
    dict(
        name="two soft joints, a tube between",
        shafts=[
            dict(length=0.04, outerDiameter=0.004, innerDiameter=0.0, discs=[], **steel),
            dict(length=0.24, outerDiameter=0.008, innerDiameter=0.006, discs=[[0.12, 1e-6]], **brass),
            dict(length=0.3, outerDiameter=0.006, innerDiameter=0.0, discs=[[0.1, 2e-6], [0.3, 2e-5]], **stainless),
        ],
        joints=[dict(stiffness=60.0, inertia=1e-6, gap=[0.008, 0.003]), dict(stiffness=25.0, inertia=8e-7, gap=[-0.004, 0.007])],
        rotor=6e-6, frequency=1400.0, damping=0.05,
    ),
    dict(
        name="a bare bar with a light rotor",
        shafts=[dict(length=0.5, outerDiameter=0.01, innerDiameter=0.0, discs=[], **steel)],
        joints=[], rotor=1e-6, frequency=1.0, damping=0.02,
    ),
]

out = []
for case in CASES:
    w = extrapolate(frequencies(case, PIECES // 2, 4), frequencies(case, PIECES, 4))
    row = dict(case, frequencies=w)
    if case["joints"]:
        r = extrapolate(response(case, PIECES // 2), response(case, PIECES))
        row.update(jointTorque=r[: len(case["joints"])], rotorAngle=r[-2], endAngle=r[-1])
    out.append(row)
print(json.dumps(out, indent=1))
