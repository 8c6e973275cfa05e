"""Fits the weights of causes by ridge logistic regression on the traits of planted recordings.

Run: as the head of tests/reports/diagnosis-traits.report.ts says; prints the table of cause-weights.ts. Only recordings of
kind `tune` go in. Which traits a cause may use, and the sign that sense asks of each, stand here; a weight that would come out
with the other sign is held at 0. Half of the recordings fit, the other half shows the scatter of calibration.
"""
import json
import sys

import numpy as np
from scipy.optimize import minimize

RIDGE = 0.1
FIELDS = {
    "unbalance": "+once +onceLead +onceOverTwice -axialOnce axisKnown -row -halves -noise -modulation -burst -odd -stranger -mains -blade -nearCritical straight lineKnown -onceFolded",
    "bent-shaft": "+once +onceLead onceOverTwice twice +axialOnce axisKnown -row -halves -noise -modulation -burst -odd -stranger -mains -nearCritical lineKnown -onceFolded",
    "misalignment": "+once +twice twiceLead onceOverTwice +straight lineKnown +axialTwice axisKnown -halves -noise -modulation -burst -fourTimes -blade -stranger -mains -row -twiceFolded",
    "joint-angle": "+twice +twiceLead -onceOverTwice -straight -cancelling lineKnown -twoBlades -axialTwice axisKnown -row -halves -noise -modulation -burst -bladeTwice -fourTimes -stranger -mains -twiceFolded",
    "joint-phase": "+twice +twiceLead -onceOverTwice +cancelling -axialTwice axisKnown -row -halves -noise -modulation -burst -stranger -mains -twiceFolded",
    "blade-pass": "+blade +bladeTwice +bladeLead -twoBlades -row -halves -noise -modulation -burst -stranger -mains -odd -bladeFolded",
    "looseness": "+row +halves -noise modulation -burst +once +onceLead -oddLead -twiceLead -bladeLead -mains -stranger",
    "rubbing": "+noise +modulation +burst row -halves -stranger -mains odd",
    "whirl": "+nearCritical +once +onceLead onceOverTwice -row -halves -noise -axialOnce axisKnown",
    "structural-resonance": "+stranger -mains -odd -halves -row -modulation -burst noise",
    "electrical": "+mains +mainsPair -stranger",
    "unexplained": "+odd +oddLead -row -halves -noise -modulation -burst -twice -once -blade lineKnown",
}


def fit(rows, cause):
    fields = [f.lstrip("+-") for f in FIELDS[cause].split()]
    bounds = [(None, None)] + [(0, None) if f[0] == "+" else (None, 0) if f[0] == "-" else (None, None) for f in FIELDS[cause].split()]
    x, y = [], []
    for row in rows:
        for candidate in row["candidates"]:
            # Folded lines and orders that share a place carry a judgement of their own.
            if candidate["cause"] == cause and candidate["adjustment"] == 0:
                x.append([1.0, *(row["traits"][f] for f in fields)])
                y.append(float(cause in row["planted"]))
    x, y = np.array(x), np.array(y)

    def loss(w):
        odds = x @ w
        value = np.sum(np.logaddexp(0, odds) - y * odds) + RIDGE / 2 * np.sum(w[1:] ** 2)
        p = 1 / (1 + np.exp(-odds))
        return value, x.T @ (p - y) + RIDGE * np.r_[0, w[1:]]

    best = minimize(loss, np.zeros(x.shape[1]), jac=True, bounds=bounds, method="L-BFGS-B")
    return best.x, fields, len(y), y.mean()


rows = json.load(open(sys.argv[1]))
table = {}
for cause in FIELDS:
    w, fields, count, rate = fit(rows, cause)
    table[cause] = (w[0], dict(zip(fields, w[1:])))
    print(f"// {cause}: {count} candidates, {100 * rate:.0f} % planted")
    kept = ", ".join(f"{f}: {v:.2f}" for f, v in zip(fields, w[1:]) if abs(v) >= 0.005)
    print(f"  {json.dumps(cause)}: {{ bias: {w[0]:.2f}, weights: {{ {kept} }} }},")

if len(sys.argv) > 2:
    rows = json.load(open(sys.argv[2]))
first, seen, bins, misses = 0, 0, {}, {}
alarms, still = 0, 0
for row in rows:
    found = []
    for candidate in row["candidates"]:
        bias, weights = table.get(candidate["cause"], (-1.5, {}))
        odds = bias + candidate["adjustment"] + sum(v * row["traits"][f] for f, v in weights.items())
        found.append((1 / (1 + np.exp(-odds)), candidate["cause"]))
    found.sort(reverse=True)
    if not row["planted"]:
        still += 1
        alarms += bool(found)
    for p, cause in found:
        bins.setdefault(min(9, int(10 * p)), []).append((p, cause in row["planted"]))
    if row["visible"] and row["tellable"]:
        seen += 1
        hit = bool(found) and found[0][1] in row["planted"]
        first += hit
        key = row["planted"][0]
        m = misses.setdefault(key, [0, 0, {}])
        m[0] += hit; m[1] += 1
        if not hit:
            name = found[0][1] if found else "none"
            m[2][name] = m[2].get(name, 0) + 1
print(f"// first {first}/{seen} = {100 * first / seen:.1f} %, false alarms {alarms}/{still}")
for key, m in misses.items():
    print("//", key, m)
for b in sorted(bins):
    p = np.array(bins[b])
    print(f"// {b / 10:.1f}: n {len(p)} said {p[:, 0].mean():.3f} was {p[:, 1].mean():.3f}")
