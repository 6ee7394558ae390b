"""Speed and orders of one mono WAV with NumPy and SciPy: the job of ``evenblade orders``, scripted.

It is the yardstick for speed, so it is written as somebody who knows both libraries would write it:
whole arrays, no loop over samples, the cheapest polyphase reduction in two steps.

    orders_by_scipy.py FILE.wav RATIO BLADES FIRING_ORDER ENGINE_RPM [MESH_PROPELLER_ORDER]

Steps: read and hash; reduce to the lowest rate that keeps every line (1 kHz at least); comb of all lines
over frames of 2 s on a grid of 0.02 % around the entered speed +- 5 %; best path (dynamic programming);
phase refinement of the strongest lines (three rounds of demodulation, 1.0, 0.7, 0.5 Hz); least squares of
all lines in blocks of about 1 s with the tracked phase; amplitude and standard error from the block
scatter. Prints the mean engine speed and a line per order.
"""

import hashlib
import io
import sys

import numpy as np
from scipy import ndimage, signal
from scipy.io import wavfile

USABLE = 0.45


def order_table(ratio, blades, firing, mesh):
    orders = set(float(k) for k in range(1, 2 * blades + 1))
    orders |= set(ratio * m for m in np.arange(0.5, max(4, 2 * firing) + 0.1, 0.5))
    comb = np.array(sorted(orders))
    return comb, np.append(comb, mesh) if mesh else comb


def reduced(x, rate, keep):
    """Whole-number decimation in steps of at most 10, linear-phase filters, 80 dB."""
    factor = int(rate * USABLE / keep)
    while factor > 1:
        step = next(s for s in (10, 8, 6, 5, 4, 3, 2, 1) if factor >= s and (factor % s == 0 or factor > 10))
        if step == 1:
            break
        new = rate / step
        width = (new - 2 * keep) / rate
        taps, beta = signal.kaiserord(80, 2 * width)
        taps |= 1
        h = signal.firwin(taps, new / rate, window=("kaiser", beta)).astype(np.float32)
        x = signal.resample_poly(x, 1, step, window=h / h.sum())
        rate, factor = new, factor // step
    return x, rate


def comb_path(x, rate, orders, centre, tolerance=0.05):
    """Best propeller speed per frame (centre times, speeds)."""
    n = int(2 * rate)
    hop = n // 4
    frames = np.lib.stride_tricks.sliding_window_view(x, n)[::hop]
    pad = 4 * n
    grid = centre * (1 + np.arange(-tolerance, tolerance, 2e-4))
    bins = np.rint(np.outer(grid, orders) * pad / rate).astype(int)
    window = signal.windows.hann(n, sym=False).astype(np.float32)
    top = int(bins.max()) + 1
    scores = np.empty((len(frames), len(grid)), np.float32)
    wide = int(20 * pad / rate) | 1
    for at in range(0, len(frames), 64):
        power = np.abs(np.fft.rfft(frames[at : at + 64] * window, pad, axis=1)[:, :top]) ** 2
        coarse = power[:, :: wide // 20]
        floor = ndimage.median_filter(coarse, (1, 41))
        floor = np.repeat(floor, wide // 20, axis=1)[:, :top] + 1e-30
        scores[at : at + 64] = np.log1p(power / floor)[:, bins].sum(axis=2)
    reach = 10
    bend = -2.0 * (np.arange(-reach, reach + 1) / 4.0) ** 2
    best, back = scores[0].copy(), []
    for row in scores[1:]:
        spread = np.lib.stride_tricks.sliding_window_view(
            np.pad(best, reach, constant_values=-1e9), 2 * reach + 1
        ) + bend.astype(np.float32)
        step = spread.argmax(axis=1)
        back.append(step - reach)
        best = row + spread[np.arange(len(grid)), step]
    path = [int(best.argmax())]
    for step in reversed(back):
        path.append(path[-1] + int(step[path[-1]]))
    return (np.arange(len(frames)) * hop + n / 2) / rate, grid[path[::-1]]


def refined(x, rate, orders, speed):
    """Phase refinement: speed per sample in, speed per sample out."""
    for band in (1.0, 0.7, 0.5):
        phase = 2 * np.pi * np.cumsum(speed) / rate
        step = max(1, int(rate / (8 * band)))
        h = signal.firwin(4 * step + 1, band, fs=rate).astype(np.float32)
        total = weight = 0
        for order in orders:
            z = signal.upfirdn(h, x * np.exp(-1j * order * phase).astype(np.complex64), 1, step)[2:-2]
            w = order**2 * np.mean(np.abs(z)) ** 2 / (np.var(np.diff(z)) + 1e-20)
            total = total + w * np.unwrap(np.angle(z)) / order
            weight += w
        angle = signal.savgol_filter(total / weight, 9, 2, deriv=1) * rate / step / (2 * np.pi)
        speed = speed + np.interp(np.arange(len(x)), np.arange(len(angle)) * step, angle)
    return speed


def fitted(x, rate, orders, speed):
    """Amplitude and standard error per order from block-wise joint least squares."""
    phase = 2 * np.pi * np.cumsum(speed) / rate
    n = int(rate)
    blocks = []
    for at in range(0, len(x) - n + 1, n):
        angle = np.outer(phase[at : at + n], orders)
        ramp = np.linspace(-1, 1, n)
        design = np.hstack([np.cos(angle), np.sin(angle), np.ones((n, 1)), ramp[:, None]])
        gram = design.T @ design
        c = np.linalg.solve(gram, design.T @ x[at : at + n])
        blocks.append(c[: len(orders)] - 1j * c[len(orders) : 2 * len(orders)])
    blocks = np.array(blocks)
    mean = blocks.mean(axis=0)
    error = np.sqrt((np.abs(blocks - mean) ** 2).sum(axis=0) / (2 * (len(blocks) - 1)) / len(blocks))
    return np.abs(mean), error


def main():
    file, ratio, blades, firing, rpm = sys.argv[1], *map(float, sys.argv[2:6])
    mesh = float(sys.argv[6]) if len(sys.argv) > 6 else 0
    with open(file, "rb") as f:
        raw = f.read()
    digest = hashlib.sha256(raw).hexdigest()
    rate, x = wavfile.read(io.BytesIO(raw))
    x = x.astype(np.float32) / 32768
    centre = rpm / ratio / 60
    comb, table = order_table(ratio, int(blades), firing, mesh)
    x, rate = reduced(x, rate, max(1000, table.max() * centre * 1.08))
    slow, slow_rate = reduced(x, rate, comb.max() * centre * 1.08)
    times, path = comb_path(slow, slow_rate, comb, centre)
    speed = np.interp(np.arange(len(slow)) / slow_rate, times, path)
    speed = refined(slow, slow_rate, comb, speed)
    at = np.arange(len(x)) / rate
    speed = np.interp(at, np.arange(len(slow)) / slow_rate, speed)
    amplitude, error = fitted(x.astype(float), rate, table, speed)
    print(f"{digest[:8]} engine {60 * ratio * speed.mean():.3f} rpm")
    for order, a, e in zip(table, amplitude, error):
        print(f"{order:9.4f} {a:.7f} +- {e:.7f}")


main()
