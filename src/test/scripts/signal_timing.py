"""Times reduction, spectrum and transform here and with SciPy, on the same samples, in one run.

From the project's folder, after `mvn -q test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath`:
    python3 src/test/scripts/signal_timing.py
Prints milliseconds of processor time, so that other load counts little: ours first (compiling included) and best of 7, SciPy best of 3.
"""
import os
import subprocess
import tempfile
import time

import numpy as np
import scipy
from scipy import fft, signal

rng = np.random.default_rng(1)
t = np.arange(28_800_000) / 48000.0
samples = (0.3 * np.sin(2 * np.pi * 34.3 * t) + 0.1 * rng.standard_normal(t.size)).astype(np.float32)
del t


def best(work, runs=3):
    took = []
    for _ in range(runs):
        start = time.process_time()
        result = work()
        took.append((time.process_time() - start) * 1e3)
    return min(took), result


def staged(x):
    """Three stages of the same factors and lengths as ours, Kaiser windows, 86 dB."""
    beta = signal.kaiser_beta(86)
    for factor, taps in ((5, 37), (2, 21), (2, 67)):
        h = signal.firwin(taps, 1 / factor, window=("kaiser", beta)).astype(np.float32)
        x = signal.upfirdn(h, x, 1, factor)
    return x


theirs = {}
theirs["reduce to 2.4 kHz"], _ = best(lambda: staged(samples))
whole, kept = best(lambda: signal.decimate(samples, 20, ftype="fir"))
theirs["averaged spectrum of what is kept (4 s, Hann)"], _ = best(
    lambda: signal.welch(kept, 2400, nperseg=8192, noverlap=4096))
for n in (4096, 9600, 65536, 1048576):
    repeats = max(1, (1 << 20) // n)
    x = samples[:n].astype(float)
    theirs[f"{repeats} transforms of {n}"], _ = best(lambda: [fft.rfft(x) for _ in range(repeats)])

classpath = os.pathsep.join(["target/classes", "target/test-classes", open("target/classpath").read().strip()])
with tempfile.NamedTemporaryFile(suffix=".f32") as file:
    samples.tofile(file)
    file.flush()
    java = ["java", "-Xmx512m", "-cp", classpath, "evenblade.bench.SignalTiming"]
    ours = subprocess.run(java + [file.name], check=True, capture_output=True, text=True).stdout
hour = subprocess.run(
    ["java", "-Xmx256m", "-cp", classpath, "evenblade.bench.SignalTiming", "hour"],
    check=True, capture_output=True, text=True).stdout

print(f"SciPy {scipy.__version__}, NumPy {np.__version__}; load {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
print("| work | first | best | SciPy best |\n| --- | --- | --- | --- |")
for line in ours.splitlines():
    name, first, fastest = line.rsplit(", ", 2)
    print(f"| {name} | {first} | {fastest} | {theirs[name]:.2f} |" if name in theirs else f"| {name} | {first} | {fastest} | – |")
print(f"\nscipy.signal.decimate(x, 20, ftype='fir') in one stage: {whole:.0f} ms\n")
print(hour)
