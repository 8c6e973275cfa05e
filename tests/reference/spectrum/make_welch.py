"""Writes welch.json: windows, densities and spectra by scipy for the tests of the spectrum room.

Run in this folder, with numpy and scipy installed: python3 make_welch.py
The input samples are rounded to 9 decimals and stored, so that both sides read the same numbers.
"""
import json
import numpy as np
import scipy
from scipy import signal

rng = np.random.default_rng(20240117)
fs = 250.0
n = np.arange(600)
samples = np.round(
    1.7 + 0.004 * n + 0.8 * np.sin(2 * np.pi * 31.3 * n / fs) + 0.2 * np.cos(2 * np.pi * 77.0 * n / fs + 0.4)
    + 0.3 * rng.standard_normal(n.size), 9)

NAMES = {"rectangular": "boxcar", "hann": "hann", "hamming": "hamming", "blackman": "blackman",
         "blackman-harris": "blackmanharris", "flat-top": "flattop"}
DETREND = {"none": False, "constant": "constant", "linear": "linear"}

cases = []
for length, overlap, window, detrend in [
    (256, 0.5, "hann", "constant"), (256, 0.5, "hann", "none"), (256, 0.5, "hann", "linear"),
    (128, 0.75, "blackman-harris", "constant"), (64, 0.0, "rectangular", "constant"),
    (100, 0.5, "hann", "constant"), (101, 0.5, "hamming", "linear"), (97, 0.5, "blackman", "none"),
    (250, 0.3, "flat-top", "constant"), (600, 0.5, "hann", "constant"), (599, 0.5, "hann", "linear"),
    (2, 0.5, "rectangular", "none"), (3, 0.5, "hann", "none"), (512, 0.5, "flat-top", "none"),
]:
    f, p = signal.welch(samples, fs, window=NAMES[window], nperseg=length, noverlap=int(overlap * length),
                        detrend=DETREND[detrend])
    cases.append({"segmentLength": length, "overlap": overlap, "window": window, "detrend": detrend,
                  "frequency": f.tolist(), "density": p.tolist()})

spectra = []
for length, window in [(600, "hann"), (150, "flat-top"), (128, "blackman")]:
    f, p = signal.welch(samples, fs, window=NAMES[window], nperseg=length, detrend="constant", scaling="spectrum")
    spectra.append({"segmentLength": length, "window": window, "frequency": f.tolist(), "power": p.tolist()})

windows = [{"name": name, "length": length, "samples": signal.get_window(other, length, fftbins=True).tolist()}
           for name, other in NAMES.items() for length in (8, 13)]

with open("welch.json", "w") as file:
    json.dump({"made": f"scipy {scipy.__version__}, numpy {np.__version__}", "sampleRate": fs,
               "samples": samples.tolist(), "welch": cases, "spectra": spectra, "windows": windows}, file)
