"""The peer of welch.mjs: scipy.signal.welch on samples read from standard input as 64-bit floats. See README.md here."""
import json
import sys
import time
import numpy as np
import scipy
from scipy import signal

rate, rounds, lengths = float(sys.argv[1]), int(sys.argv[2]), [int(n) for n in sys.argv[3].split(",")]
samples = np.frombuffer(sys.stdin.buffer.read(), dtype="<f8")
result = {"versions": f"numpy {np.__version__}, scipy {scipy.__version__}", "runs": []}
for length in lengths:
    best = float("inf")
    for _ in range(rounds):
        start = time.perf_counter()
        _, density = signal.welch(samples, rate, nperseg=length)
        best = min(best, time.perf_counter() - start)
    result["runs"].append({"segmentLength": length, "seconds": best, "density": density[:200].tolist()})
print(json.dumps(result))
