"""Growth of an amplitude with speed: slope of the logarithms and its standard error, by scipy.

Run: python3 tests/reference/diagnosis/growth.py > tests/reference/diagnosis/growth.json
"""
import json

import numpy as np
from scipy.stats import linregress

rng = np.random.default_rng(11)
cases = []
for slope, count in [(2.0, 5), (1.0, 6), (0.2, 4), (4.5, 8)]:
    speeds = np.sort(rng.uniform(100, 300, count))
    amplitudes = 0.3 * (speeds / 200) ** slope * np.exp(0.3 * rng.normal(size=count))
    fit = linregress(np.log(speeds), np.log(amplitudes))
    cases.append({"speeds": speeds.tolist(), "amplitudes": amplitudes.tolist(), "slope": fit.slope, "standardError": fit.stderr})
print(json.dumps(cases))
