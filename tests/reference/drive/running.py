"""Propellers of the Wageningen B series, and motors that turn them in moving water.

Run:  python3 running.py > running.json      (Python 3, numpy, scipy)

The terms are those of Oosterveld and van Oossanen (1975) as public listings print them, typed in apart from the library's.
Running points solve the balance of voltages with scipy's brentq over the current, not over the speed.
"""

import json

import numpy as np
from scipy.optimize import brentq

# factor, powers of J, P/D, area ratio, blades
THRUST = [
    (0.00880496, 0, 0, 0, 0),
    (-0.204554, 1, 0, 0, 0),
    (0.166351, 0, 1, 0, 0),
    (0.158114, 0, 2, 0, 0),
    (-0.147581, 2, 0, 1, 0),
    (-0.481497, 1, 1, 1, 0),
    (0.415437, 0, 2, 1, 0),
    (0.0144043, 0, 0, 0, 1),
    (-0.0530054, 2, 0, 0, 1),
    (0.0143481, 0, 1, 0, 1),
    (0.0606826, 1, 1, 0, 1),
    (-0.0125894, 0, 0, 1, 1),
    (0.0109689, 1, 0, 1, 1),
    (-0.133698, 0, 3, 0, 0),
    (0.00638407, 0, 6, 0, 0),
    (-0.00132718, 2, 6, 0, 0),
    (0.168496, 3, 0, 1, 0),
    (-0.0507214, 0, 0, 2, 0),
    (0.0854559, 2, 0, 2, 0),
    (-0.0504475, 3, 0, 2, 0),
    (0.010465, 1, 6, 2, 0),
    (-0.00648272, 2, 6, 2, 0),
    (-0.00841728, 0, 3, 0, 1),
    (0.0168424, 1, 3, 0, 1),
    (-0.00102296, 3, 3, 0, 1),
    (-0.0317791, 0, 3, 1, 1),
    (0.018604, 1, 0, 2, 1),
    (-0.00410798, 0, 2, 2, 1),
    (-0.000606848, 0, 0, 0, 2),
    (-0.0049819, 1, 0, 0, 2),
    (0.0025983, 2, 0, 0, 2),
    (-0.000560528, 3, 0, 0, 2),
    (-0.00163652, 1, 2, 0, 2),
    (-0.000328787, 1, 6, 0, 2),
    (0.000116502, 2, 6, 0, 2),
    (0.000690904, 0, 0, 1, 2),
    (0.00421749, 0, 3, 1, 2),
    (5.65229e-05, 3, 6, 1, 2),
    (-0.00146564, 0, 3, 2, 2),
]
TORQUE = [
    (0.00379368, 0, 0, 0, 0),
    (0.00886523, 2, 0, 0, 0),
    (-0.032241, 1, 1, 0, 0),
    (0.00344778, 0, 2, 0, 0),
    (-0.0408811, 0, 1, 1, 0),
    (-0.108009, 1, 1, 1, 0),
    (-0.0885381, 2, 1, 1, 0),
    (0.188561, 0, 2, 1, 0),
    (-0.00370871, 1, 0, 0, 1),
    (0.00513696, 0, 1, 0, 1),
    (0.0209449, 1, 1, 0, 1),
    (0.00474319, 2, 1, 0, 1),
    (-0.00723408, 2, 0, 1, 1),
    (0.00438388, 1, 1, 1, 1),
    (-0.0269403, 0, 2, 1, 1),
    (0.0558082, 3, 0, 1, 0),
    (0.0161886, 0, 3, 1, 0),
    (0.00318086, 1, 3, 1, 0),
    (0.015896, 0, 0, 2, 0),
    (0.0471729, 1, 0, 2, 0),
    (0.0196283, 3, 0, 2, 0),
    (-0.0502782, 0, 1, 2, 0),
    (-0.030055, 3, 1, 2, 0),
    (0.0417122, 2, 2, 2, 0),
    (-0.0397722, 0, 3, 2, 0),
    (-0.00350024, 0, 6, 2, 0),
    (-0.0106854, 3, 0, 0, 1),
    (0.00110903, 3, 3, 0, 1),
    (-0.000313912, 0, 6, 0, 1),
    (0.0035985, 3, 0, 1, 1),
    (-0.00142121, 0, 6, 1, 1),
    (-0.00383637, 1, 0, 2, 1),
    (0.0126803, 0, 2, 2, 1),
    (-0.00318278, 2, 3, 2, 1),
    (0.00334268, 0, 6, 2, 1),
    (-0.00183491, 1, 1, 0, 2),
    (0.000112451, 3, 2, 0, 2),
    (-2.97228e-05, 3, 6, 0, 2),
    (0.000269551, 1, 0, 1, 2),
    (0.00083265, 2, 0, 1, 2),
    (0.00155334, 0, 2, 1, 2),
    (0.000302683, 0, 6, 1, 2),
    (-0.0001843, 0, 0, 2, 2),
    (-0.000425399, 0, 3, 2, 2),
    (8.69243e-05, 3, 3, 2, 2),
    (-0.0004659, 0, 6, 2, 2),
    (5.54194e-05, 1, 6, 2, 2),
]


def series(terms, advance, pitch, area, blades):
    c, s, t, u, v = np.array(terms, dtype=float).T
    return float(np.sum(c * advance**s * pitch**t * area**u * blades**v))


def coefficient_rows():
    rows = []
    for blades, area in [(2, 0.3), (3, 0.5), (4, 0.4), (4, 0.55), (4, 0.7), (5, 0.75), (7, 1.05)]:
        for pitch in (0.5, 0.8, 1.0, 1.4):
            for advance in (0.0, 0.2, 0.4):
                rows.append(
                    dict(
                        blades=blades,
                        areaRatio=area,
                        pitchRatio=pitch,
                        advance=advance,
                        thrust=series(THRUST, advance, pitch, area, blades),
                        torque=series(TORQUE, advance, pitch, area, blades),
                    )
                )
    return rows


def running(case):
    k, r, i0, v, rs = case["speedConstant"], case["resistance"], case["noLoadCurrent"], case["voltage"], case["supplyResistance"]
    tau, d, p, z, area, va = case["throttle"], case["diameter"], case["pitch"], case["blades"], case["areaRatio"], case["waterSpeed"]

    def speed_at(current):
        return k * (tau * v - current * r - tau * (tau * current) * rs)

    def excess(current):
        w = speed_at(current)
        n = w / (2 * np.pi)
        j = va / (n * d)
        load = 1000 * n**2 * d**5 * series(TORQUE, j, p / d, area, z)
        return (current - i0) / k - load

    stall = tau * v / (r + tau**2 * rs)
    # down to the current at which J is 1
    slowest = 2 * np.pi * va / d
    top = stall if va == 0 else (tau * v - slowest / k) / (r + tau**2 * rs)
    current = brentq(excess, i0, top * (1 - 1e-12), xtol=1e-14, rtol=1e-14)
    w = speed_at(current)
    return dict(case, speed=w, current=current, torque=(current - i0) / k)


CASES = [
    dict(speedConstant=50.0, resistance=0.06, noLoadCurrent=1.1, voltage=11.1, supplyResistance=0.03, throttle=1.0,
         diameter=0.048, pitch=0.05, blades=4, areaRatio=0.55, waterSpeed=1.0),
    dict(speedConstant=50.0, resistance=0.06, noLoadCurrent=1.1, voltage=11.1, supplyResistance=0.03, throttle=0.4,
         diameter=0.048, pitch=0.05, blades=4, areaRatio=0.55, waterSpeed=0.6),
    dict(speedConstant=105.0, resistance=0.2, noLoadCurrent=0.5, voltage=7.4, supplyResistance=0.05, throttle=0.9,
         diameter=0.04, pitch=0.04, blades=3, areaRatio=0.5, waterSpeed=1.4),
    dict(speedConstant=105.0, resistance=0.2, noLoadCurrent=0.5, voltage=7.4, supplyResistance=0.05, throttle=0.9,
         diameter=0.04, pitch=0.04, blades=3, areaRatio=0.5, waterSpeed=0.0),
]

print(json.dumps(dict(coefficients=coefficient_rows(), running=[running(c) for c in CASES]), indent=1))
