"""Resamples a made signal with scipy's polyphase filter, the kernel designed by scipy from the stated figures.

Run: python3 -m pip install numpy scipy && python3 make_resample.py
Writes resample.json beside it.
"""

import json
import pathlib

import numpy
import scipy
from scipy.signal import firwin, resample_poly

CROSSINGS, CUTOFF, BETA = 64, 0.95, 0.1102 * (100 - 8.7)
generator = numpy.random.default_rng(11)
samples = numpy.round(9.81 + generator.standard_normal(400), 6)
cases = []
for up, down in [(1, 2), (2, 1), (160, 147), (1, 6), (201, 199), (3, 4)]:
    widest = max(up, down)
    taps = firwin(2 * CROSSINGS * widest + 1, CUTOFF / widest, window=("kaiser", BETA), scale=False)
    mean = samples.mean()
    result = resample_poly(samples - mean, up, down, window=taps) + mean
    cases.append({"up": up, "down": down, "length": len(result), "samples": result[:: max(1, len(result) // 60)].tolist()})
target = pathlib.Path(__file__).with_name("resample.json")
target.write_text(json.dumps({"scipy": scipy.__version__, "input": samples.tolist(), "cases": cases}, indent=1) + "\n")
