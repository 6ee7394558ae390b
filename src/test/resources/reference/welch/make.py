"""Reference spectra by SciPy's welch, for the test of the averaged spectrum.

Run in this folder:  python3 make.py
Writes signal-*.txt (one sample a line) and case-*.txt (header, then frequency, density, power spectrum).
"""
import numpy as np
import scipy
from scipy import signal
from scipy.signal.windows import general_cosine

HFT95 = [1, 1.9383379, 1.3045202, 0.4028270, 0.0350665]
HFT144D = [1, 1.96760033, 1.57983607, 0.81123644, 0.22583558, 0.02773848, 0.00090360]
SFT3F = [0.26526, 0.5, 0.23474]
WINDOWS = {
    "HANN": lambda n: signal.get_window("hann", n, fftbins=True),
    "RECTANGULAR": lambda n: np.ones(n),
    "FLAT_TOP_HFT95": lambda n: general_cosine(n, HFT95, sym=False),
    "FLAT_TOP_HFT144D": lambda n: general_cosine(n, HFT144D, sym=False),
    "FLAT_TOP_SFT3F": lambda n: general_cosine(n, SFT3F, sym=False),
}

rng = np.random.default_rng(20240229)
t = np.arange(1501) / 416.0
SIGNALS = {
    "noise": rng.standard_normal(1200),
    "tones": 9.81 + 1.3 * np.cos(2 * np.pi * 33.3 * t + 0.4) + 0.21 * np.sin(2 * np.pi * 101.7 * t)
    + 0.05 * rng.standard_normal(t.size),
}
CASES = [  # signal, rate, window, segment, overlap, detrend
    ("noise", 1.0, "HANN", 256, 128, "CONSTANT"),
    ("noise", 2400.0, "HANN", 255, 127, "NONE"),
    ("noise", 2400.0, "FLAT_TOP_HFT95", 300, 225, "CONSTANT"),
    ("noise", 100.0, "RECTANGULAR", 1200, 0, "NONE"),
    ("noise", 100.0, "HANN", 97, 0, "CONSTANT"),
    ("tones", 416.0, "HANN", 416, 208, "CONSTANT"),
    ("tones", 416.0, "FLAT_TOP_HFT144D", 501, 400, "CONSTANT"),
    ("tones", 416.0, "FLAT_TOP_SFT3F", 333, 111, "NONE"),
    ("tones", 416.0, "HANN", 1501, 750, "CONSTANT"),
]

for name, x in SIGNALS.items():
    np.savetxt(f"signal-{name}.txt", x, fmt="%.17g")
for number, (name, rate, window, segment, overlap, detrend) in enumerate(CASES, 1):
    settings = dict(
        fs=rate, window=WINDOWS[window](segment), nperseg=segment, noverlap=overlap,
        detrend="constant" if detrend == "CONSTANT" else False, return_onesided=True,
    )
    f, density = signal.welch(SIGNALS[name], scaling="density", **settings)
    _, power = signal.welch(SIGNALS[name], scaling="spectrum", **settings)
    header = f"scipy {scipy.__version__} numpy {np.__version__}\n{name} {rate} {window} {segment} {overlap} {detrend}"
    np.savetxt(f"case-{number}.txt", np.column_stack([f, density, power]), fmt="%.17g", header=header)
