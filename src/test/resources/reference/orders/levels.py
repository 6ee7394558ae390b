# Reference values for orders.LevelReferenceTest, made with numpy and scipy from the definitions alone:
#   python3 levels.py
# Sixteen blocks of one second at a steady 20 Hz: a line that keeps step and swells, one that is hardly there, one whose phase jumps from
# block to block, one that stands still. Noise beside a line by Welch's method; F-tests and quantiles by scipy's distributions.
import numpy as np
from scipy import signal
from scipy.stats import f as fisher
from scipy.stats import t as student

RATE, SECONDS = 200.0, 16
n = int(RATE * SECONDS)
i = np.arange(n)
t = i / RATE
b = i // 200
ORDERS = (1.0, 2.0, 3.0, 4.0)
x = 0.3 * (((i * i * 37 + i * 11) % 1009) / 1009 - 0.5)
x = x + (1 + 0.03 * np.sin(1.7 * b)) * (0.7 * np.cos(2 * np.pi * 20 * t) + 0.2 * np.sin(2 * np.pi * 20 * t))
x = x + 0.05 * np.cos(2 * np.pi * 80 * t - 1)
x = x + 0.004 * np.cos(2 * np.pi * 40 * t)
x = x + 0.3 * (1 + 0.2 * np.sin(b)) * np.cos(2 * np.pi * 60 * t + 2.1 * b * b + 0.4)

blocks = [slice(200 * k, 200 * (k + 1)) for k in range(SECONDS)]


def free_of_drift(column):
    out = column.copy()
    for block in blocks:
        d = np.stack([np.ones(200), t[block]], axis=1)
        out[block] = out[block] - d @ np.linalg.lstsq(d, out[block], rcond=None)[0]
    return out


columns = np.apply_along_axis(
    free_of_drift, 0, np.stack([g(2 * np.pi * o * 20 * t) for o in ORDERS for g in (np.cos, np.sin)], axis=1)
)
y = free_of_drift(x)
inverse = np.linalg.inv(columns.T @ columns)
solution = np.linalg.lstsq(columns, y, rcond=None)[0]
rest = y - columns @ solution
f, density = signal.welch(rest, RATE, "hann", 256, 128, detrend="constant", scaling="density")
per_bin = 1.9 * ((n - 256) // 128 + 1)
M = len(blocks)
for line, order in enumerate(ORDERS):
    hz = 20 * order
    others = [20 * o for o in ORDERS if o != order]
    middle = round(hz / f[1])
    bins = [k for k in range(middle - 8, middle + 9) if abs(k - middle) >= 2 and all(abs(o - f[k]) >= 1.5 * f[1] for o in others)]
    noise = np.median(density[bins]) / (1 - 2 / (9 * per_bin)) ** 3
    noise_dof = per_bin * len(bins) * 0.4
    a, c = solution[2 * line], solution[2 * line + 1]
    length = np.hypot(a, c)
    along = across = away = 0
    squares = []
    for block in blocks:
        u = inverse @ (columns[block].T @ rest[block])
        ua, uc = u[2 * line], u[2 * line + 1]
        along += ((ua * a + uc * c) / length) ** 2
        across += ((uc * a - ua * c) / length) ** 2
        own = np.linalg.lstsq(columns[block][:, 2 * line : 2 * line + 2], rest[block], rcond=None)[0]
        away += own @ own
        squares.append((a + own[0]) ** 2 + (c + own[1]) ** 2)
    along, across, away = along * M / (M - 1), across * M / (M - 1), away / (M - 1)
    variance, dof = along, M - 1
    if length**2 < 16 * noise / SECONDS:
        variance, dof = (along + across) / 2, 2 * (M - 1)
    more = fisher.sf(variance / (noise / SECONDS), dof, noise_dof)
    if more >= 0.01:
        trusted = min(noise_dof, 4 * dof)
        variance, dof = (dof * variance + trusted * noise / SECONDS) / (dof + trusted), dof + trusted
    stands = fisher.sf(length**2 / 2 / max(noise / SECONDS, variance), 2, noise_dof)
    stray = away - 2 * noise
    step = fisher.sf(away / 2 / noise, 2 * (M - 1), noise_dof)
    mean = np.mean(squares)
    out = stray > 0 and length**2 < 0.9 * (length**2 + stray) and step < 1e-4
    in_blocks = fisher.sf(mean / 2 / noise / 3, 2 * M, noise_dof)
    print("order", order, "length", length, "sigma", np.sqrt(variance), "dof", dof, "chance of more scatter", more)
    print("   stands out by chance", stands, "of", 0.01 / 4, "out of step", out, step, "in blocks", in_blocks)
    print("   degrees", -np.degrees(np.arctan2(c, a)) % 360)
    if out:
        amplitude = np.sqrt(max(mean - 2 * noise, length**2 / 2))
        error = np.std(squares, ddof=1) / np.sqrt(M) / (2 * amplitude)
        print("   by blocks", amplitude, error, student.ppf(0.975, M - 1) * error)
