"""Reference spectra by SciPy's welch, for the test of the averaged spectrum.

Run in this folder:  python3 make.py
Writes signal-*.txt (one sample a line) and case-*.txt (header, then frequency, density, power spectrum).
"""
import numpy as np
import scipy
from scipy import signal


rng = np.random.default_rng(20240229)
t = np.arange(1501) / 416.0
SIGNALS = {
    "noise": rng.standard_normal(1200),
    "tones": 9.81 + 1.3 * np.cos(2 * np.pi * 33.3 * t + 0.4) + 0.21 * np.sin(2 * np.pi * 101.7 * t)
    + 0.05 * rng.standard_normal(t.size),
}
CASES = {  # number: signal, rate, window, segment, overlap, detrend
    1: ("noise", 1.0, "HANN", 256, 128, "CONSTANT"),
    5: ("noise", 100.0, "HANN", 97, 0, "CONSTANT"),
    6: ("tones", 416.0, "HANN", 416, 208, "CONSTANT"),
    9: ("tones", 416.0, "HANN", 1501, 750, "CONSTANT"),
}

for name, x in SIGNALS.items():
    np.savetxt(f"signal-{name}.txt", x, fmt="%.17g")
for number, (name, rate, window, segment, overlap, detrend) in CASES.items():
    settings = dict(
        fs=rate, window=signal.get_window("hann", segment, fftbins=True), nperseg=segment, noverlap=overlap,
        detrend="constant", return_onesided=True,
    )
    f, density = signal.welch(SIGNALS[name], scaling="density", **settings)
    _, power = signal.welch(SIGNALS[name], scaling="spectrum", **settings)
    header = f"scipy {scipy.__version__} numpy {np.__version__}\n{name} {rate} {window} {segment} {overlap} {detrend}"
    np.savetxt(f"case-{number}.txt", np.column_stack([f, density, power]), fmt="%.17g", header=header)
