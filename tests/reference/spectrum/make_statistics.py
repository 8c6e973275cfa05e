"""Writes statistics.json: F quantiles and log gamma by scipy, for the tests of the numerics room.

Run in this folder, with scipy installed: python3 make_statistics.py
"""
import json
import scipy
from scipy import special



def upper(p, a, b):
    """Through the inverse incomplete beta function: stats.f.isf goes by 1 - p and loses digits at small p."""
    z = special.betaincinv(b / 2, a / 2, p)
    return float(b * (1 - z) / (a * z))


quantiles = [{"probability": p, "degrees": [a, b], "value": upper(p, a, b)}
             for p in (0.5, 0.01, 1e-5, 1e-9) for a, b in ((2, 10), (12.8, 40), (30, 500.5), (400, 9), (1, 3))]
gammas = [{"x": x, "value": float(special.gammaln(x))} for x in (0.1, 0.5, 1.5, 3, 10.25, 500.5)]
with open("statistics.json", "w") as file:
    json.dump({"made": f"scipy {scipy.__version__}", "quantiles": quantiles, "gammas": gammas}, file, indent=1)
