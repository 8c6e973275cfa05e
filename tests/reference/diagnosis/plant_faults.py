"""Recordings of small drive lines with planted faults, made in the time domain, for judging diagnoses.

Run:  python3 tests/reference/diagnosis/plant_faults.py test > tests/reference/diagnosis/planted-faults.json
      python3 tests/reference/diagnosis/plant_faults.py tune --single 3000 --sets 600 > tuning.json
      python3 tests/reference/diagnosis/plant_faults.py report --single 3000 --sets 600 > report.json

Nothing here is taken from the library. The three kinds draw from seeds that never meet (tune 10^6, test 2*10^6, report 3*10^6):
weights are fitted on `tune` alone, what is published comes from `report`, and the tests run on `test`.

A shaft turns at a speed that wanders; forces follow its angle: unbalance, a bow, universal joints by their exact kinematics,
blade pulses, knocks with a clearance, friction bursts, a lightly damped panel shaken at random, mains hum. Hull and mount
pass them on through two damped modes. The phone samples, half of them behind a gentle low-pass of
their own and half without, adds its noise and rounds.

`visible`: by the truth alone, the fault's own line (or noise) stands clear of the noise, is the strongest of the recording,
and does not fall on orders 1, 2 or the blade order by folding
(one without a cause of its own: on none to the sixth), nor on hum of size; a panel does not ring on a mains frequency. `tellable`: a single recording holds something that sets
the cause apart from its rivals; a bow whose axial motion is not known shakes just as unbalance does,
and a line whose bushes hold firmer than it says looks as if it whirled.
"""
import argparse
import base64
import json

import numpy as np
from scipy.linalg import eigh

KINDS = {"tune": 1_000_000, "test": 2_000_000, "report": 3_000_000}
STEEL = {"name": "carbon steel", "youngsModulus": 206e9, "shearModulus": 79.3e9, "density": 7850.0, "yieldStrength": 350e6}


def shaft(name, length, diameter, elevation, supports, discs=(), twist=0.0):
    return {"name": name, "length": length, "outerDiameter": diameter, "innerDiameter": 0, "material": STEEL,
            "elevation": elevation, "plan": 0, "yokeTwist": twist, "supports": [{"at": a} for a in supports], "discs": list(discs)}


def propeller(at, mass):
    return {"name": "propeller", "at": at, "mass": mass, "polarInertia": mass * 1.2e-4, "diametralInertia": mass * 0.6e-4}


def joint(kind):
    return {"kind": kind, "mass": 0.01, "polarInertia": 3e-7}


def turned(degrees):
    return -np.pi * degrees / 180


def line(name, shafts, joints, blades):
    return {"name": name, "shafts": shafts, "joints": joints,
            "propeller": {"blades": blades, "diameter": 0.045, "pitch": 0.045, "torqueCoefficient": 0.03}}


MOTOR = ("motor shaft", 0.06, 0.005)
LINES = {
    "one joint": line("one joint", [shaft(*MOTOR, 0, (0.005, 0.045)), shaft("shaft", 0.32, 0.004, turned(12), (0.02, 0.29), [propeller(0.31, 0.03)])],
                      [joint("universal")], 3),
    "two joints": line("two joints", [shaft(*MOTOR, 0, (0.005, 0.045)), shaft("middle", 0.08, 0.005, turned(8), ()),
                                      shaft("shaft", 0.3, 0.004, 0, (0.02, 0.27), [propeller(0.29, 0.03)])],
                       [joint("universal"), joint("universal")], 4),
    "coupling": line("coupling", [shaft(*MOTOR, 0, (0.005, 0.045)), shaft("shaft", 0.3, 0.004, 0, (0.02, 0.27), [propeller(0.29, 0.03)])],
                     [{**joint("flexible"), "bendingStiffness": 2.0}], 3),
    "two blades": line("two blades", [shaft(*MOTOR, 0, (0.005, 0.045)), shaft("shaft", 0.3, 0.004, turned(6), (0.02, 0.27), [propeller(0.29, 0.02)])],
                       [joint("universal")], 2),
    "slender": line("slender", [shaft(*MOTOR, 0, (0.005, 0.045)), shaft("shaft", 0.45, 0.004, turned(10), (0.02, 0.42), [propeller(0.44, 0.04)])],
                    [joint("universal")], 3),
}


def first_critical(of):
    """Hz: Euler-Bernoulli elements of 10 mm, bushes pinned, hinges at universal joints, discs as points, synchronous whirl."""
    elements, springs, masses, dof = [], [], [], 0
    y_at_joint = None
    for index, part in enumerate(of["shafts"]):
        cuts = sorted({0.0, part["length"], *(s["at"] for s in part["supports"]), *(d["at"] for d in part["discs"]),
                       *np.arange(0.01, part["length"], 0.01).round(4)})
        start = None
        nodes = []
        for k, _ in enumerate(cuts):
            if k == 0 and y_at_joint is not None:
                nodes.append((y_at_joint, dof)); dof += 1
            else:
                nodes.append((dof, dof + 1)); dof += 2
        for (left, right, a, b) in zip(nodes, nodes[1:], cuts, cuts[1:]):
            elements.append((left, right, b - a, part["outerDiameter"]))
        springs += [nodes[cuts.index(s["at"])][0] for s in part["supports"]]
        for d in part["discs"]:
            # The water that the propeller carries: a quarter more.
            masses += [(nodes[cuts.index(d["at"])][0], 1.25 * d["mass"])]
        y_at_joint = nodes[-1][0]
        if index < len(of["joints"]):
            masses.append((y_at_joint, of["joints"][index]["mass"]))
    stiffness, mass = np.zeros((dof, dof)), np.zeros((dof, dof))
    for (left, right, h, d) in elements:
        rigidity, weight = 206e9 * np.pi * d**4 / 64, 7850 * np.pi * d**2 / 4
        at = np.ix_([*left, *right], [*left, *right])
        stiffness[at] += rigidity / h**3 * np.array([[12, 6*h, -12, 6*h], [6*h, 4*h*h, -6*h, 2*h*h], [-12, -6*h, 12, -6*h], [6*h, 2*h*h, -6*h, 4*h*h]])
        mass[at] += weight * h / 420 * np.array([[156, 22*h, 54, -13*h], [22*h, 4*h*h, 13*h, -3*h*h], [54, 13*h, 156, -22*h], [-13*h, -3*h*h, -22*h, 4*h*h]])
    for y in springs:
        stiffness[y, y] += 1e9
    for y, m in masses:
        mass[y, y] += m
    return float(np.sqrt(eigh(stiffness, mass, eigvals_only=True, subset_by_index=[0, 0])[0]) / (2 * np.pi))


CRITICAL = {name: first_critical(of) for name, of in LINES.items() if name != "coupling"}


class Bench:
    """One line, one phone, one place: what stays the same from trial to trial."""

    def __init__(self, rng, sound):
        self.rng = rng
        self.sound = sound
        self.rate = 2000.0 if sound else float(rng.choice([100, 200, 208, 400])) * (1 + 0.01 * rng.normal())
        self.seconds = 3.0 if sound else (5.0 if self.rate > 300 else 8.0)
        self.modes = [(rng.uniform(70, 260), rng.uniform(0.04, 0.1), rng.uniform(0.1, 0.5) * rng.choice([-1, 1])) for _ in range(2)]
        self.noise = rng.uniform(0.02, 0.1)
        self.red = rng.uniform(0, 0.6)
        self.axial = not sound and rng.random() < 0.6
        self.gains = np.array([rng.uniform(0.6, 1.0), rng.uniform(0.4, 1.0)])  # radial y, z
        self.mix = rng.uniform(0.2, 1.3)  # rad, how the phone lies where its axes are not the line's
        self.phases = rng.uniform(0, 2 * np.pi, 40)
        self.residual = (rng.uniform(0.01, 0.06), rng.uniform(0.0, 0.03), rng.uniform(0.0, 0.03))
        # Half of the phones have a low-pass of their own in front of the sampling, of the second order.
        self.cutoff = rng.uniform(0.3, 0.6) * self.rate if rng.random() < 0.5 else None

        # What real recordings hold besides: hum, a tone, a row of orders, a wash of noise, each a share of the fault's size.
        share = lambda chance, most: np.exp(rng.uniform(np.log(0.02), np.log(most))) if rng.random() < chance else 0.0
        self.hum = (rng.choice([50.0, 60.0]), share(0.35, 0.4))
        self.tone = (rng.uniform(0.1, 0.45) * min(self.rate, 900), share(0.35, 0.3))
        self.row = [share(0.5, 0.25) for _ in range(5)]
        self.wash = (share(0.35, 1.0), rng.uniform(0.2, 0.9))

    def clock(self, speed):
        """Angle of the shaft on a fine time base; speed wanders by a few parts in a thousand over a second."""
        over = int(np.ceil(2400 / self.rate))
        fine = over * self.rate
        count = int(self.seconds * self.rate) * over
        steps = self.rng.normal(size=count)
        keep = np.exp(-1.0 / fine)
        spectrum = np.fft.rfft(steps)
        spectrum *= np.sqrt(1 - keep**2) / (1 - keep * np.exp(-2j * np.pi * np.arange(len(spectrum)) / count))
        wander = self.rng.uniform(0, 0.0025) * np.fft.irfft(spectrum, count)
        return over, fine, np.cumsum(2 * np.pi * speed * (1 + wander)) / fine

    def through(self, force, fine):
        spectrum = np.fft.rfft(force, axis=-1)
        s = 2j * np.pi * np.fft.rfftfreq(force.shape[-1], 1 / fine)
        passed = np.ones_like(s)
        for frequency, damping, gain in self.modes:
            w = 2 * np.pi * frequency
            passed = passed + gain * s**2 / (s**2 + 2 * damping * w * s + w**2)
        if self.cutoff is not None:
            w = 2 * np.pi * self.cutoff
            passed = passed * w**2 / (s**2 + 1.41 * w * s + w**2)
        return np.fft.irfft(spectrum * passed, force.shape[-1], axis=-1)


def ring(noise, fine, frequency, damping):
    spectrum = np.fft.rfft(noise)
    s = 2j * np.pi * np.fft.rfftfreq(len(noise), 1 / fine)
    w = 2 * np.pi * frequency
    return np.fft.irfft(spectrum * w**2 / (s**2 + 2 * damping * w * s + w**2), len(noise))


def joint_course(theta, angle, phase):
    """Angular acceleration behind a universal joint over omega^2 (about beta^2 sin 2 theta), scaled to a peak near 1."""
    c, s = np.cos(angle), np.sin(angle)
    course = c * s**2 * np.sin(2 * (theta + phase)) / (1 - s**2 * np.sin(theta + phase) ** 2) ** 2
    return course / angle**2


class Fault:
    """A cause with what it draws once; `force` gives axial, y, z at a trial's speed."""

    def __init__(self, cause, bench, blades, size):
        self.cause, self.bench, self.blades, self.size = cause, bench, blades, size
        r = bench.rng
        self.p = r.uniform(0, 2 * np.pi, 12)
        self.u = r.uniform(0, 1, 12)
        self.frequency = r.uniform(0.08, 0.42) * bench.rate if not bench.sound else r.uniform(90, 400)
        self.mains = r.choice([50.0, 60.0])
        self.strange = r.choice([3, 5] if blades != 3 else [4, 5]) if blades != 5 else 3

    def scale(self, s):
        """Growth with speed and what the trial's condition does, against the reference trial."""
        r, u = s["ratio"], self.u
        off, half, air = s["propeller"] == "off", s["jointTurned"], s["medium"] == "air"
        growth, left, changed, dry = {
            "unbalance": (r**2, 0.05 + 0.2 * u[0], 1, 0.9 + 0.2 * u[1]),
            "bent-shaft": (0.45 + 0.2 * u[2] + (0.55 - 0.2 * u[2]) * r**2, 0.75 + 0.25 * u[0], 0.92 + 0.16 * u[1], 0.9 + 0.2 * u[3]),
            "misalignment": (r**2, 0.8 + 0.25 * u[0], 0.1 + 0.5 * u[1] if u[4] < 0.8 else 1.5 + u[1], 0.9 + 0.2 * u[3]),
            "joint-angle": (r ** (1.2 + 0.8 * u[2]), 0.25 + 0.4 * u[0], 1, 0.4 + 0.4 * u[1]),
            "joint-phase": (r ** (1.2 + 0.8 * u[2]), 0.25 + 0.4 * u[0], 1, 0.4 + 0.4 * u[1]),
            "blade-pass": (r ** (2 + u[2]), 0, 1, 0.1 + 0.2 * u[1]),
            "looseness": (r ** (0.8 + u[2]), 0.6 + 0.4 * u[0], 0.9 + 0.2 * u[1], 0.9 + 0.2 * u[3]),
            "rubbing": (r ** (0.5 + u[2]), 0.7 + 0.4 * u[0], 0.85 + 0.3 * u[1], 0.9 + 0.2 * u[3]),
            "whirl": (1.0, 1.0, 1, 1.0),
            "structural-resonance": (r ** (0.5 + u[2]), 0.5 + 0.5 * u[0], 1, 0.7 + 0.3 * u[3]),
            "electrical": (1, 1, 1, 1),
            "unexplained": (r ** (2 * u[2]), 0.7 + 0.3 * u[0], 1, 1),
        }[self.cause]
        if self.cause == "whirl":
            at = (0.93 + 0.05 * self.u[5]) * r * (0.72 if off else 1) * (0.97 if air else 1)
            growth = at**2 / np.hypot(1 - at**2, 0.12 * at) * np.hypot(1 - 0.88, 0.12) / 0.88
        return growth * (left if off else 1) * (changed if half else 1) * (dry if air else 1)

    def force(self, theta, fine, s):
        a, p, u, r = self.size * self.scale(s), self.p, self.u, self.bench.rng
        gy, gz = self.bench.gains
        sin = np.sin
        zero = np.zeros_like(theta)
        if self.cause in ("unbalance", "whirl"):
            share = 0.03 + 0.17 * u[6]
            return a * np.array([share * sin(theta + p[1]), gy * sin(theta + p[0]), gz * sin(theta + p[0] + np.pi / 2)])
        if self.cause == "bent-shaft":
            share = 0.4 + 0.6 * u[6]
            twice = 0.05 + 0.15 * u[7]
            return a * np.array([share * sin(theta + p[1]), gy * (sin(theta + p[0]) + twice * sin(2 * theta + p[2])), gz * sin(theta + p[0] + np.pi / 2)])
        if self.cause == "misalignment":
            share, twice, thrice = 0.4 + 0.5 * u[6], 0.7 + 0.9 * u[7], 0.05 + 0.2 * u[8]
            if s.get("set"):
                twice = 0.3 + 0.4 * u[7]
            course = sin(theta + p[0]) + twice * sin(2 * theta + p[2]) + thrice * sin(3 * theta + p[3])
            return a * np.array([share * course, gy * course, gz * (sin(theta + p[4]) + twice * sin(2 * theta + p[5]))])
        if self.cause in ("joint-angle", "joint-phase"):
            angle = np.pi / 180 * (5 + 10 * u[8])
            inertia, couple = joint_course(theta, angle, p[0]), sin(2 * theta + p[1])
            part = 0.3 + 0.5 * u[7]
            course = part * inertia + (1 - part) * couple
            once = 0.1 + 0.25 * u[9]
            return a * np.array([(0.05 + 0.2 * u[6]) * course, gy * (course + once * sin(theta + p[3])), gz * (part * inertia - (1 - part) * couple)])
        if self.cause == "blade-pass":
            sharp = 1.0 + 2.0 * u[7]
            pulses = zero.copy()
            for b in range(self.blades):
                height = 1 + 0.06 * (self.p[b] / np.pi - 1)
                pulses += height * np.exp(sharp * (np.cos(theta - 2 * np.pi * b / self.blades) - 1) * self.blades**2 / 2)
            pulses -= pulses.mean()
            order = 2 * abs(np.mean(pulses * np.exp(-1j * self.blades * theta)))
            course = pulses / max(order, 1e-9)
            return a * np.array([(0.1 + 0.7 * u[6]) * course, gy * course, gz * course])
        if self.cause == "looseness":
            # A part that lifts: the swing is cut on one side, and it lands with a knock, harder every other turn.
            swing = np.maximum(sin(theta + p[0]), -0.2 - 0.5 * u[6])
            uneven = (0.5 + 0.5 * u[7]) if u[8] < 0.7 else 0.0
            turn = np.floor((theta + p[1]) / (2 * np.pi))
            phase = np.mod(theta + p[1], 2 * np.pi)
            knock = np.exp(-phase / (0.25 + 0.4 * u[9])) * sin(phase * (3 + 4 * u[10])) * (1 + uneven * (2 * np.mod(turn, 2) - 1))
            course = (swing - swing.mean()) + (2.5 + 3.0 * u[11]) * knock
            return a * np.array([0.3 * course, gy * course, gz * course])
        if self.cause == "rubbing":
            phase = np.mod(theta + p[0], 2 * np.pi)
            gate = np.exp((2 + 6 * u[6]) * (np.cos(phase) - 1))
            bursts = gate * r.normal(size=theta.size) * np.sqrt(fine / self.bench.rate)
            cut = np.minimum(sin(theta + p[0]), 0.3 + 0.5 * u[7])
            course = bursts + (0.5 + 0.8 * u[8]) * (cut - cut.mean())
            return a * np.array([0.4 * course, gy * course, gz * (0.5 * bursts + 0.6 * (cut - cut.mean()))])
        if self.cause == "structural-resonance":
            rung = ring(r.normal(size=theta.size), fine, self.frequency, 0.002 + 0.006 * u[6])
            course = rung / (np.std(rung) * np.sqrt(2))
            return a * np.array([0.3 * course, gy * course, gz * course])
        if self.cause == "electrical":
            t = np.arange(theta.size) / fine
            course = sin(2 * np.pi * self.mains * t + p[0]) + (0.2 + 0.8 * u[6]) * sin(4 * np.pi * self.mains * t + p[1])
            return a * np.array([0.3 * course, gy * course, gz * course])
        if self.cause == "unexplained":
            course = sin(self.strange * theta + p[0])
            return a * np.array([0.2 * course, gy * course, gz * sin(self.strange * theta + p[1])])
        raise ValueError(self.cause)


def residual_force(bench, theta, fine, blades, s):
    """What every sound line and every room shows a little of."""
    once, twice, blade = bench.residual
    p = bench.phases
    off = 0.5 if s["propeller"] == "off" else 1
    course = s["ratio"] ** 2 * (off * once * np.sin(theta + p[0]) + twice * np.sin(2 * theta + p[1]))
    course += (0 if off < 1 else blade) * np.sin(blades * theta + p[2])
    size = s["size"]
    t = np.arange(theta.size) / fine
    course += size * bench.hum[1] * (np.sin(2 * np.pi * bench.hum[0] * t + p[3]) + 0.5 * np.sin(4 * np.pi * bench.hum[0] * t + p[4]))
    course += size * bench.tone[1] * np.sin(2 * np.pi * bench.tone[0] * t + p[5])
    if not s["loose"]:
        for k, share in enumerate(bench.row):
            course += size * share * np.sin((k + 2) * theta + p[6 + k])
    depth, level = bench.wash[1], 0.5 * bench.wash[0] * size
    course += level * (1 + depth * np.cos(theta + p[12])) * bench.rng.normal(size=theta.size) * np.sqrt(fine / bench.rate)
    return np.array([0.2 * course, course, np.roll(course, 3)])


def record(bench, faults, blades, s):
    """Samples of each channel, and of the faults alone without noise, all as the phone takes them."""
    over, fine, theta = bench.clock(s["frequency"])
    s = {**s, "size": 0.8 * faults[0].size if faults else 0.0, "loose": any(f.cause in ("looseness",) for f in faults)}
    parts = [bench.through(f.force(theta, fine, s), fine)[:, ::over] for f in faults]
    rest = bench.through(residual_force(bench, theta, fine, blades, s), fine)[:, ::over] if s.get("lines", True) else 0 * bench.through(np.zeros((3, theta.size)), fine)[:, ::over]
    count = rest.shape[1]
    white = bench.rng.normal(size=(3, count))
    slow = np.fft.irfft(np.fft.rfft(bench.rng.normal(size=(3, count)), axis=1) / (1 + 1j * np.arange(count // 2 + 1) / (0.03 * count)), count, axis=1)
    background = bench.noise * (np.sqrt(1 - bench.red) * white + np.sqrt(bench.red) * slow * 3)
    total = sum(parts, rest + background)
    if bench.sound:
        scale = 0.1
        return scale * total[1:2], [scale * part[1:2] for part in parts], scale * background[1:2], scale * rest[1:2], theta[::over]
    if bench.axial:
        pick = np.array([[1, 0, 0], [0, 1, 0]]) if bench.mix < 0.75 else np.array([[1, 0, 0], [0, 0, 1]])
    else:
        c, d = np.cos(bench.mix), np.sin(bench.mix)
        pick = np.array([[c, d, 0], [0, 0, 1.0]])
    return pick @ total, [pick @ part for part in parts], pick @ background, pick @ rest, theta[::over]


def amplitude(samples, theta, order):
    """Peak amplitude of one order, the channel that shows it most."""
    return float(np.max(2 * np.abs(np.mean(samples * np.exp(-1j * order * theta), axis=1))))


def folded(frequency, rate):
    return abs(frequency - rate * round(frequency / rate))


def clear_of_mains(place, bench, apart):
    """Whether no hum of size that is in the recording falls on the fault's line."""
    mains, share = bench.hum
    return share < 0.1 or all(abs(place - folded(k * mains, bench.rate)) > apart for k in (1, 2))


MAIN = {"unbalance": 1, "bent-shaft": 1, "whirl": 1, "joint-angle": 2, "joint-phase": 2, "misalignment": 2}


def is_visible(fault, made, bench, s, blades):
    _, parts, background, rest, theta = made["all"]
    own, rate, f = made["own"], bench.rate, s["frequency"]
    count = own.shape[1]
    segment = min(count / 4, 4 * rate)
    apart = 3 * rate / segment
    wash = 0.5 * bench.wash[0] * 0.8 * fault.size * (0.1 if bench.sound else 1)
    still = np.hypot(float(np.max(np.std(background, axis=1))), wash)
    floor = 4.5 * still * np.sqrt(4 / segment)
    others = sum(parts) - own + rest
    if fault.cause in ("rubbing", "structural-resonance", "electrical"):
        high = float(np.max(np.std(own, axis=1)))
        if fault.cause == "rubbing":
            return high > 3 * still
        place = folded(fault.frequency if fault.cause == "structural-resonance" else fault.mains, rate)
        clear = all(abs(place - folded(k * f, rate)) > apart + 0.01 * k * f for k in (0.5, 1, 1.5, 2, 3, 4, 5, 6, blades, 2 * blades))
        if fault.cause == "structural-resonance":
            clear = clear and all(abs(place - folded(mains, rate)) > apart for mains in (50, 60, 100, 120))
        strongest = max(amplitude(others, theta, k) for k in (1, 2, 3, 4, blades))
        return clear and apart < place < rate / 2 - apart and high > 1.2 * strongest and high > 3 * floor
    if fault.cause == "looseness":
        row = [k for k in (0.5, 1, 1.5, 2, 3, 4, 5) if k * f < rate / 2 - apart]
        seen = [k for k in row if amplitude(own, theta, k) > 2 * floor and amplitude(own, theta, k) > 0.08 * amplitude(own, theta, 1)]
        halves = 0.5 in seen or 1.5 in seen
        return len(row) >= 5 and len(seen) >= (3 if halves else 5)
    main = {**MAIN, "blade-pass": blades, "unexplained": fault.strange}[fault.cause]
    place = folded(main * f, rate)
    rivals = ({1, 2, 3, 4, 5, 6, blades, 2 * blades} if fault.cause == "unexplained" else {1, 2, blades}) - {main}
    if not clear_of_mains(place, bench, apart):
        return False
    clear = all(abs(place - folded(k * f, rate)) > apart for k in rivals) and apart < place < rate / 2 - apart
    strongest = max(amplitude(others, theta, k) for k in (0.5, 1, 2, 3, 4, blades))
    mine = amplitude(own, theta, main)
    # Where hull and mount swallow the fault's own order and pass its side effects, its line is not the strongest.
    itself = all(mine > amplitude(own, theta, k) for k in (1, 2, 3, 4) if k != main and fault.cause != "misalignment")
    return clear and itself and mine > floor and mine > 1.2 * strongest


def packed(bench, samples):
    names = ["level"] if bench.sound else ["x", "y"]
    step = 1 / 32768 if bench.sound else 0.005
    unit = "full scale" if bench.sound else "m/s²"
    whole = np.clip(np.round(samples / step), -32767, 32767).astype("<i2")
    return [{"name": n, "unit": unit, "step": step, "data": base64.b64encode(row.tobytes()).decode()} for n, row in zip(names, whole)]


SINGLE = (["unbalance"] * 5 + ["bent-shaft"] * 2 + ["joint-angle"] * 3 + ["joint-phase"] + ["misalignment"] * 2 + ["blade-pass"] * 3 + ["looseness"] * 2
          + ["rubbing"] * 2 + ["structural-resonance"] * 2 + ["electrical"] * 2 + ["whirl"] + ["unexplained"] * 2 + ["nothing"] * 4)
SECOND = ["unbalance", "joint-angle", "blade-pass"]


def line_for(cause, rng):
    if cause == "joint-phase":
        return "two joints"
    if cause == "whirl":
        return "slender"
    if cause == "misalignment":
        return "coupling" if rng.random() < 0.8 else None
    if cause == "joint-angle":
        return [None, "one joint", "one joint", "two blades"][rng.integers(4)]
    if cause == "blade-pass":
        return ["one joint", "two joints", "coupling", "two blades"][rng.integers(4)]
    return [None, "one joint", "two joints", "coupling", "two blades"][rng.integers(5)]


def tellable(cause, name, bench):
    if cause == "bent-shaft":
        return bench.axial
    if cause in ("joint-angle", "blade-pass"):
        return name != "two blades"
    return not (cause == "misalignment" and name is None)


def single(seed):
    rng = np.random.default_rng(seed)
    cause = SINGLE[rng.integers(len(SINGLE))]
    bench = Bench(rng, rng.random() < 0.1 and cause not in ("whirl",))
    name = line_for(cause, rng)
    blades = LINES[name]["propeller"]["blades"] if name else 3
    f = rng.uniform(15, 55)
    if cause == "whirl":
        f = CRITICAL[name] * rng.uniform(0.93, 1.07)
    if cause == "looseness" and rng.random() < 0.85:
        f = float(np.clip(bench.rate * rng.uniform(0.055, 0.085), 10, 45))
    decoy = cause in ("unbalance", "bent-shaft") and rng.random() < 0.2
    if decoy:
        # The bushes hold firmer than the line says, so that it runs near a predicted critical speed and far from the true one.
        name, f = "slender", CRITICAL["slender"] * rng.uniform(0.78, 1.2)
    s = {"frequency": f, "ratio": 1.0, "propeller": "fitted", "medium": "water", "jointTurned": False, "lines": cause != "nothing"}
    faults = []
    if cause != "nothing":
        size = np.exp(rng.uniform(np.log(0.15), np.log(2.0)))
        faults.append(Fault(cause, bench, blades, size))
        others = [c for c in SECOND if c != cause and not (c == "joint-angle" and name in ("two joints", "coupling")) and not (c == "blade-pass" and name is None)]
        if rng.random() < 0.15 and cause in ("unbalance", "joint-angle", "blade-pass", "electrical", "structural-resonance"):
            faults.append(Fault(others[rng.integers(len(others))], bench, blades, size * rng.uniform(0.35, 0.7)))
    out = record(bench, faults, blades, s)
    visible = [is_visible(fault, {"all": out, "own": out[1][i]}, bench, s, blades) for i, fault in enumerate(faults)]
    return {"seed": seed, "planted": [fault.cause for fault in faults], "visible": bool(visible[0]) if visible else False,
            "tellable": bool(cause == "nothing" or (tellable(cause, name, bench) and not decoy)), "line": name, "rate": round(bench.rate, 4),
            "speed": round(2 * np.pi * f * (1 + 0.004 * rng.normal()), 4), "axial": "x" if bench.axial else None, "channels": packed(bench, out[0])}


SETS = ["unbalance"] * 3 + ["bent-shaft"] * 3 + ["misalignment"] * 2 + ["joint-angle"] * 3 + ["blade-pass"] * 2 + ["looseness", "rubbing", "whirl"] + ["structural-resonance"] * 2 + ["electrical"]


def trial_set(seed):
    rng = np.random.default_rng(seed)
    cause = SETS[rng.integers(len(SETS))]
    bench = Bench(rng, False)
    bench.rate, bench.axial = float(rng.choice([200, 208])) * (1 + 0.005 * rng.normal()), rng.random() < 0.3
    bench.seconds = 4.0
    name = {"misalignment": "coupling", "whirl": "slender", "joint-angle": ["one joint", "two blades"][rng.integers(2)],
            "blade-pass": ["one joint", "two blades", "two joints"][rng.integers(3)]}.get(cause, ["one joint", "two blades", "two joints", "coupling"][rng.integers(4)])
    blades = LINES[name]["propeller"]["blades"]
    top = CRITICAL[name] * rng.uniform(0.93, 0.98) if cause == "whirl" else rng.uniform(24, 44) if cause != "looseness" else rng.uniform(14, 18)
    fault = Fault(cause, bench, blades, np.exp(rng.uniform(np.log(0.25), np.log(2.0))))
    plan = [(0.7, "fitted", 0, "water"), (0.85, "fitted", 0, "water"), (1.0, "fitted", 0, "water"), (1.0, "off", 0, "air")]
    if LINES[name]["joints"]:
        plan.append((1.0, "fitted", 1, "water"))
    trials, visible = [], False
    for ratio, fitted, half, medium in plan:
        s = {"frequency": top * ratio, "ratio": ratio, "propeller": fitted, "medium": medium, "jointTurned": bool(half), "set": True}
        out = record(bench, [fault], blades, s)
        if (ratio, fitted, half) == (1.0, "fitted", 0):
            if cause == "misalignment":
                own = out[1][0]
                visible = amplitude(own, out[4], 1) > 3 * amplitude(out[3], out[4], 1) and amplitude(own, out[4], 1) > 0.1
            else:
                visible = is_visible(fault, {"all": out, "own": out[1][0]}, bench, s, blades)
        trials.append({"propeller": fitted, "medium": medium, "jointTurned": np.pi if half else 0,
                       "speed": round(2 * np.pi * s["frequency"] * (1 + 0.004 * rng.normal()), 4), "channels": packed(bench, out[0])})
    return {"seed": seed, "planted": [cause], "visible": bool(visible), "line": name, "rate": round(bench.rate, 4), "axial": "x" if bench.axial else None, "trials": trials}


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("kind", choices=KINDS)
    parser.add_argument("--single", type=int, default=200)
    parser.add_argument("--sets", type=int, default=40)
    asked = parser.parse_args()
    base = KINDS[asked.kind]
    print(json.dumps({"kind": asked.kind, "numpy": np.__version__, "lines": LINES, "criticals": CRITICAL,
                      "single": [single(base + i) for i in range(asked.single)],
                      "sets": [trial_set(base + 500_000 + i) for i in range(asked.sets)]}, separators=(",", ":"), default=float))
