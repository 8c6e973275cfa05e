"""Writes signals.json: spectrogram, analytic signal, levels and band limits by numpy and scipy for the spectrum room.

Run in this folder, with numpy and scipy installed: python3 make_signals.py
The input samples are rounded to 9 decimals and stored, so that both sides read the same numbers. Band limits and integrals are
written here from their definition with numpy's transform: mean out, odd extension faded by a half-cosine over its outer half,
zeros to a power of two, gain, inverse.
"""
import json
import numpy as np
import scipy
from scipy import signal, stats

rng = np.random.default_rng(20240229)
fs = 200.0
n = np.arange(420)
samples = np.round(
    9.8 + 0.9 * np.sin(2 * np.pi * (5 * n / fs + 6 * (n / fs) ** 2)) + 0.4 * np.cos(2 * np.pi * 61.0 * n / fs)
    + 0.3 * rng.standard_normal(n.size), 9)

spectrograms = []
for length, overlap, window, ours, detrend in [
    (64, 0.5, "hann", "hann", "constant"), (64, 0.75, "blackmanharris", "blackman-harris", "linear"),
    (100, 0.0, "boxcar", "rectangular", "none"), (63, 0.5, "hann", "hann", "constant"),
]:
    f, t, s = signal.spectrogram(samples, fs, window=window, nperseg=length, noverlap=int(overlap * length),
                                 detrend=False if detrend == "none" else detrend, mode="psd")
    spectrograms.append({"segmentLength": length, "overlap": overlap, "window": ours, "detrend": detrend,
                         "frequency": f.tolist(), "time": t.tolist(), "density": s.T.tolist()})

analytic = []
for length in (420, 419, 256, 97):
    z = signal.hilbert(samples[:length])
    analytic.append({"length": length, "imaginary": z.imag.tolist(), "envelope": np.abs(z).tolist()})

levels = []
for length in (420, 7):
    x = samples[:length] - samples[:length].mean()
    levels.append({"length": length, "mean": float(samples[:length].mean()), "rms": float(x.std()),
                   "peak": float(np.abs(x).max()), "kurtosis": float(stats.kurtosis(x, fisher=False))})

S = 2 ** (1 / 3)


def rise(value, edge):
    with np.errstate(divide="ignore"):
        u = np.clip(np.log(value / (edge / S)) / np.log(S), 0, 1)
    return 0.5 - 0.5 * np.cos(np.pi * u)


def filtered(x, lo, hi, gain):
    x = x - x.mean()
    settle = min(x.size - 1, int(np.ceil(10 * fs / lo)))
    fade = 0.5 - 0.5 * np.cos(np.pi * np.minimum(1, 2 * np.arange(settle) / settle))
    before = (2 * x[0] - x[settle:0:-1]) * fade
    after = (2 * x[-1] - x[-2:-settle - 2:-1]) * fade[::-1]
    length = 2 ** int(np.ceil(np.log2(x.size + 2 * settle)))
    f = np.fft.rfftfreq(length, 1 / fs)
    g = rise(f, lo) * rise(hi, np.maximum(f, 1e-300)) * gain(f)
    y = np.fft.irfft(np.fft.rfft(np.concatenate([before, x, after]), length) * g, length)
    return y[settle:settle + x.size]


def inverse(power):
    def gain(f):
        with np.errstate(divide="ignore", invalid="ignore"):
            g = (1 / (2j * np.pi * f)) ** power
        return np.where(f > 0, g, 0)
    return gain


bands = [{"from": lo, "to": hi, "limited": filtered(samples, lo, hi, lambda f: np.ones_like(f)).tolist(),
          "velocity": filtered(samples, lo, hi, inverse(1)).tolist(),
          "displacement": filtered(samples, lo, hi, inverse(2)).tolist()}
         for lo, hi in ((4.0, 30.0), (20.0, 100.0), (0.8, 12.5))]

with open("signals.json", "w") as file:
    json.dump({"made": f"scipy {scipy.__version__}, numpy {np.__version__}", "sampleRate": fs,
               "samples": samples.tolist(), "spectrograms": spectrograms, "analytic": analytic, "levels": levels,
               "bands": bands}, file)
