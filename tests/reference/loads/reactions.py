"""Reactions of bent shaft lines on their supports, position by position through a turn.

Run:  python3 reactions.py > reactions.json      (Python 3, numpy)

The couples come from vectors: the driving pin is turned about its shaft by a rotation matrix, the driven pin is square to it
and to the driven axis, and the cross hands over a couple along the normal of both pins whose part along the driving axis is
the torque. Each position of 64 in a turn is a problem of statics of its own, solved with dense cubic beams of 40 to a
shaft; numpy's FFT over the positions gives the still part and that of order 2. Small angles between shafts are taken as the
library does (a hinge hands over a force square to either shaft), by carrying the sideways frame over each joint.
"""

import json

import numpy as np

PIECES = 40
G = 9.80665


def unit(v):
    return v / np.linalg.norm(v)


def direction(s):
    e, p = s["elevation"], s["plan"]
    return np.array([np.cos(e) * np.cos(p), np.cos(e) * np.sin(p), np.sin(e)])


def turn(axis, angle, v):
    return v * np.cos(angle) + np.cross(axis, v) * np.sin(angle) + axis * (axis @ v) * (1 - np.cos(angle))


def frames(line):
    """Two sideways directions for each shaft; the normal of each joint has the same components before and after."""
    u = direction(line["shafts"][0])
    a = unit(np.cross([0, 0, 1.0], u))
    out = [(u, a, np.cross(u, a))]
    for s in line["shafts"][1:]:
        u0, a0, b0 = out[-1]
        u1 = direction(s)
        n = np.cross(u0, u1)
        if np.linalg.norm(n) < 1e-12:
            out.append((u1, a0, b0))
            continue
        n = unit(n)
        beta = np.arctan2(np.linalg.norm(np.cross(u0, u1)), u0 @ u1)
        out.append((u1, turn(n, beta, a0), turn(n, beta, b0)))
    return out


def couples(line, theta, torque, frame):
    """Moment vectors on the ends of shafts: list of (shaft, end, vector)."""
    out = []
    pin = None
    for i in range(len(line["shafts"]) - 1):
        u, v = frame[i][0], frame[i + 1][0]
        n = unit(np.cross(u, v))
        if pin is None:
            pin = turn(u, theta, n)
        driven = unit(np.cross(v, pin))
        normal = unit(np.cross(pin, driven))
        size = torque / (normal @ u)
        out.append((i, "end", -(size * normal - torque * u)))
        on = size * normal
        out.append((i + 1, "start", on - (on @ v) * v))
        # even handing on: the driven pin stands where an even joint would have carried it
        twist = line["shafts"][i + 1]["yokeTwist"]
        even = turn(v, np.arctan2(np.cross(n, pin) @ u, n @ pin) + np.pi / 2, n)
        pin = turn(v, twist, even)
    return out


def solve(line, force, spread, moment):
    """force[(shaft, at)], spread[shaft], moment[(shaft, end)] in one plane, reactions per support."""
    count, base, h, ei = 0, [], [], []
    for s in line["shafts"]:
        base.append(count)
        count += PIECES + 1
        h.append(s["length"] / PIECES)
        ei.append(s["youngsModulus"] * np.pi * s["outerDiameter"] ** 4 / 64)
    n = 2 * count
    joints = len(line["shafts"]) - 1
    supports = [(i, at) for i, s in enumerate(line["shafts"]) for at in s["supports"]]
    size = n + joints + len(supports)
    a = np.zeros((size, size))
    b = np.zeros(size)
    for i in range(len(line["shafts"])):
        l = h[i]
        k = ei[i] / l**3 * np.array([[12, 6 * l, -12, 6 * l], [6 * l, 4 * l * l, -6 * l, 2 * l * l], [-12, -6 * l, 12, -6 * l], [6 * l, 2 * l * l, -6 * l, 4 * l * l]])
        for p in range(PIECES):
            r = 2 * (base[i] + p)
            a[r : r + 4, r : r + 4] += k
            b[r : r + 4] += spread.get(i, 0) * np.array([l / 2, l * l / 12, l / 2, -l * l / 12])
    node = lambda i, at: 2 * (base[i] + int(round(at / h[i])))
    for (i, at), f in force.items():
        b[node(i, at)] += f
    for (i, end), m in moment.items():
        b[node(i, 0 if end == "start" else line["shafts"][i]["length"]) + 1] += m
    for j in range(joints):
        p, q = node(j, line["shafts"][j]["length"]), node(j + 1, 0)
        for x, sign in ((p, 1), (q, -1)):
            a[x, n + j] = a[n + j, x] = sign
    for j, (i, at) in enumerate(supports):
        x = node(i, at)
        a[x, n + joints + j] = a[n + joints + j, x] = -1
    return np.linalg.solve(a, b)[n + joints :]


def run(line):
    frame = frames(line)
    positions = 64
    down = np.array([0, 0, -G])
    weight = []
    for plane in (1, 2):
        spread = {i: s["density"] * np.pi / 4 * s["outerDiameter"] ** 2 * (down @ frame[i][plane]) for i, s in enumerate(line["shafts"])}
        force = {(i, at): mass * (down @ frame[i][plane]) for i, s in enumerate(line["shafts"]) for at, mass in s["discs"]}
        for j, mass in enumerate(line["joints"]):
            force[(j + 1, 0.0)] = force.get((j + 1, 0.0), 0) + mass * (down @ frame[j + 1][plane])
        weight.append(solve(line, force, spread, {}))
    course = []
    for step in range(positions):
        parts = couples(line, 2 * np.pi * step / positions, line["torque"], frame)
        # displacement along a has the slope of a rotation about b; along b, of one about minus a
        along_a = {(i, e): m @ frame[i][2] for i, e, m in parts}
        along_b = {(i, e): -(m @ frame[i][1]) for i, e, m in parts}
        course.append(solve(line, {}, {}, along_a) + 1j * solve(line, {}, {}, along_b))
    spectrum = np.fft.fft(np.array(course), axis=0) / positions
    weight = weight[0] + 1j * weight[1]
    return dict(
        weight=list(np.abs(weight)),
        steady=list(np.abs(weight + spectrum[0])),
        second=list(np.abs(spectrum[2]) + np.abs(spectrum[-2])),
        others=float(np.max(np.abs(np.delete(spectrum, [0, 2, positions - 2], axis=0)))),
    )


steel = dict(youngsModulus=207e9, density=7850.0)
flat = dict(elevation=0.0, plan=0.0, yokeTwist=0.0, discs=[], supports=[])
LINES = [
    dict(
        name="one joint, four supports",
        torque=0.2,
        joints=[0.016],
        shafts=[
            dict(flat, length=0.06, outerDiameter=0.005, supports=[0.006, 0.045], **steel),
            dict(flat, length=0.4, outerDiameter=0.006, elevation=-0.2, supports=[0.03, 0.34], discs=[[0.39, 0.04]], **steel),
        ],
    ),
    dict(
        name="two joints in space, yoke turned",
        torque=0.5,
        joints=[0.02, 0.01],
        shafts=[
            dict(flat, length=0.08, outerDiameter=0.006, supports=[0.01, 0.06], **steel),
            dict(flat, length=0.1, outerDiameter=0.005, elevation=-0.12, plan=0.07, yokeTwist=0.6, **steel),
            dict(flat, length=0.32, outerDiameter=0.005, elevation=-0.02, plan=0.15, supports=[0.04, 0.16, 0.28], discs=[[0.312, 0.05]], **steel),
        ],
    ),
]
print(json.dumps([dict(line, **run(line)) for line in LINES], indent=1))
