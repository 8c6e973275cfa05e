"""Sines with a floating level fitted to uneven samples by numpy's lstsq, and scipy's floating-mean Lomb-Scargle power.

Run: python3 -m pip install numpy scipy && python3 make_least_squares.py
Writes least-squares.json beside it.
"""

import json
import pathlib

import numpy
import scipy
from scipy.signal import lombscargle

generator = numpy.random.default_rng(5)
times = numpy.round(3 + numpy.cumsum(generator.exponential(0.01, 300)), 6)
samples = numpy.round(
    9.8 + 0.6 * numpy.cos(2 * numpy.pi * 33.3 * times + 0.4) + 0.2 * numpy.sin(2 * numpy.pi * 81 * times)
    + 0.1 * generator.standard_normal(300), 6)
frequency = numpy.array([0.05, 1, 12.5, 33.3, 50, 81, 160])
fits = []
power = lombscargle(times, samples - samples.mean(), 2 * numpy.pi * frequency, floating_mean=True, normalize=True)
for f, share in zip(frequency, power):
    columns = numpy.stack([numpy.ones_like(times), numpy.cos(2 * numpy.pi * f * times), numpy.sin(2 * numpy.pi * f * times)], 1)
    (_, a, b), *_ = numpy.linalg.lstsq(columns, samples, rcond=None)
    fits.append({"frequency": float(f), "amplitude": float(numpy.hypot(a, b)), "phase": float(numpy.arctan2(-b, a)), "share": float(share)})
result = {"scipy": scipy.__version__, "times": times.tolist(), "samples": samples.tolist(), "fits": fits}
pathlib.Path(__file__).with_name("least-squares.json").write_text(json.dumps(result, indent=1) + "\n")
