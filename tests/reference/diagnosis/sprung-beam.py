"""Stiffness of the ends of a uniform beam from its resonances, by scipy, without any finite element.

Run: python3 tests/reference/diagnosis/sprung-beam.py > tests/reference/diagnosis/sprung-beam.json

Euler-Bernoulli beam, length L, at both ends a spring k across (N/m) and kappa against the slope (N m/rad). Its frequencies
are the roots of the determinant of the four end conditions; the fit minimises
sum ((ln f - ln f_measured) / s)^2 + ln(k/k0)^2 / ln(10)^2 + ln(kappa/kappa0)^2 / ln(10)^2 with |offsets| <= 4.
"""
import json

import numpy as np
from scipy.optimize import brentq, least_squares

E, RHO, D, L = 206e9, 7850.0, 0.004, 0.4
I, A = np.pi * D**4 / 64, np.pi * D**2 / 4
EI, M = E * I, RHO * A
SPREAD = np.log(10)
K0, KAPPA0 = 3000 * EI / L**3, 0.2 * EI / L


def determinant(b, k, kappa):
    """b = beta L. Columns: cos, sin, and the two decaying exponentials from either end."""
    p, q = k * L**3 / EI, kappa * L / EI
    e = np.exp(-b)
    c, s = np.cos(b), np.sin(b)
    # y, y', y'', y''' over b^n at 0 and at L
    at0 = np.array([[1, 0, -1, 0], [0, 1, 0, -1], [1, -1, 1, -1], [e, e, e, e]], float)
    atL = np.array([[c, -s, -c, s], [s, c, -s, -c], [e, -e, e, -e], [1, 1, 1, 1]], float)
    rows = []
    for y, sign in ((at0, 1.0), (atL, -1.0)):
        rows.append(b**2 * y[:, 2] - sign * q * b * y[:, 1])
        rows.append(b**3 * y[:, 3] + sign * p * y[:, 0])
    return np.linalg.det(np.array(rows) / np.array([[1 + q], [1 + p], [1 + q], [1 + p]]))


def frequencies(k, kappa, count):
    grid = np.linspace(0.05, 20, 1500)
    values = [determinant(b, k, kappa) for b in grid]
    roots = []
    for left, right, a, b in zip(grid, grid[1:], values, values[1:]):
        if a * b < 0:
            roots.append(brentq(determinant, left, right, args=(k, kappa), xtol=1e-13))
        if len(roots) == count:
            break
    return np.array(roots) ** 2 * np.sqrt(EI / M) / L**2 / (2 * np.pi)


rng = np.random.default_rng(7)
cases = []
for share_k, share_kappa, count, error in [(0.1, 30, 3, 0.01), (1, 10, 2, 0.01), (0.03, 1, 3, 0.005), (0.3, 100, 3, 0.02), (0.5, 8, 1, 0.01)]:
    truth = (share_k * K0, share_kappa * KAPPA0)
    measured = frequencies(*truth, count) * np.exp(error * rng.normal(size=count))

    def residuals(p):
        f = frequencies(K0 * np.exp(SPREAD * p[0]), KAPPA0 * np.exp(SPREAD * p[1]), count)
        return np.concatenate([np.log(f / measured) / error, p])

    fit = least_squares(residuals, [0.0, 0.0], bounds=(-4, 4), jac="3-point", x_scale=1.0, xtol=1e-12, ftol=1e-12, gtol=1e-12)
    covariance = np.linalg.inv(fit.jac.T @ fit.jac)
    cases.append(
        {
            "error": error,
            "frequencies": measured.tolist(),
            "truth": truth,
            "moved": fit.x.tolist(),
            "deviation": np.sqrt(np.diag(covariance)).tolist(),
            "totalChiSquare": 2 * fit.cost,
        }
    )

print(
    json.dumps(
        {
            "scipy": __import__("scipy").__version__,
            "beam": {"length": L, "diameter": D, "youngsModulus": E, "density": RHO},
            "pinned": (np.pi**2 * np.sqrt(EI / M) / L**2 / (2 * np.pi)),
            "stiffPinned": frequencies(1e12, 1e-9, 1)[0],
            "stiffFixed": frequencies(1e12, 1e9, 1)[0],
            "cases": cases,
        },
        indent=1,
    )
)
