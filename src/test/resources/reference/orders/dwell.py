# Reference values for orders.DwellReferenceTest, made with numpy and scipy from the definitions alone:
#   python3 dwell.py
# Eight blocks of one second, each block's level and slope projected out; least squares by numpy over all samples at once.
import numpy as np
from scipy import signal

RATE, SECONDS = 200.0, 8
n = int(RATE * SECONDS)
i = np.arange(n)
t = i / RATE
revolutions = 20 * t + 0.1 * t**2
LINES = [("order", 1.0), ("order", 2.43), ("order", 3.0), ("tone", 27.3)]
ANGLES = [2 * np.pi * (v * revolutions if k == "order" else v * t) for k, v in LINES]
AMPLITUDES = [(0.7, 0.2), (-0.3, 0.4), (0.25, -0.1), (0.05, 0.15)]


def rough(a, b):
    """Something that is no line and the same everywhere: whole numbers, no chance."""
    return ((i * i * a + i * b) % 1009) / 1009 - 0.5


CHANNELS = []
for scale, a, b, level in ((1.0, 37, 11, 3.0), (0.4, 53, 29, -1.0)):
    x = level + 0.02 * t**2 + 0.3 * rough(a, b)
    for k, ((c, s), angle) in enumerate(zip(AMPLITUDES, ANGLES)):
        # Lines swell a little over the dwell, so that blocks differ.
        x = x + scale * (1 + 0.02 * k * np.sin(1.1 * t + k)) * (c * np.cos(angle) + s * np.sin(angle))
    CHANNELS.append(x)

blocks = [slice(int(b * RATE), int((b + 1) * RATE)) for b in range(SECONDS)]


def free_of_drift(column):
    out = column.copy()
    for b in blocks:
        d = np.stack([np.ones(out[b].size), t[b]], axis=1)
        out[b] = out[b] - d @ np.linalg.lstsq(d, out[b], rcond=None)[0]
    return out


raw = np.stack([f(angle) for angle in ANGLES for f in (np.cos, np.sin)], axis=1)
columns = np.apply_along_axis(free_of_drift, 0, raw)
inverse = np.linalg.inv(columns.T @ columns)
np.set_printoptions(precision=10, linewidth=150)
variances, residuals, solutions = [], [], []
for c, x in enumerate(CHANNELS):
    x = free_of_drift(x)
    solution = np.linalg.lstsq(columns, x, rcond=None)[0]
    rest = x - columns @ solution
    solutions.append(solution)
    residuals.append(rest)
    variances.append(np.mean(rest**2))
    print("channel", c, "solution", solution.tolist(), "variance", np.mean(rest**2))
    for line in range(len(LINES)):
        a, b = solution[2 * line], solution[2 * line + 1]
        length = np.hypot(a, b)
        along, across, away, squares = 0, 0, 0, []
        for block in blocks:
            u = inverse @ (columns[block].T @ rest[block])
            ua, ub = u[2 * line], u[2 * line + 1]
            along += ((ua * a + ub * b) / length) ** 2
            across += ((ub * a - ua * b) / length) ** 2
            pair = columns[block][:, 2 * line : 2 * line + 2]
            own = np.linalg.lstsq(pair, rest[block], rcond=None)[0]
            away += own @ own
            squares.append(float((a + own[0]) ** 2 + (b + own[1]) ** 2))
        m = len(blocks)
        print("  line", line, "along", along * m / (m - 1), "across", across * m / (m - 1), "away", away / (m - 1))
        print("    squares", squares)

# What the residuals ask the angle to be moved by, in slices of a tenth of a second: the least squares step for one angle
# in each, channels weighted by their variance. The change with the angle is a numeric one.
h = 1e-5
wishes = []
for s in range(SECONDS * 10):
    part = slice(s * 20, (s + 1) * 20)
    above, below = 0, 0
    for c in range(2):
        ends = []
        for moved in (h, -h):
            total = 0
            for k, (kind, v) in enumerate(LINES):
                angle = ANGLES[k] + (2 * np.pi * v * moved if kind == "order" else 0)
                total = total + solutions[c][2 * k] * np.cos(angle) + solutions[c][2 * k + 1] * np.sin(angle)
            ends.append(total)
        slope = (ends[0] - ends[1]) / (2 * h)
        above += slope[part] @ residuals[c][part] / variances[c]
        below += slope[part] @ slope[part] / variances[c]
    wishes.append((t[s * 20 + 10], above / below, 1 / below))
for s in (0, 1, 17, 79):
    print("wish", s, *map(float, wishes[s]))

# Noise beside a line: Welch's method, the median of bins two to eight away, those beside other lines left out; a median of
# gamma variates lies below their mean.
f, density = signal.welch(residuals[0], RATE, "hann", 256, 128, detrend="constant", scaling="density")
stretches = (n - 256) // 128 + 1
for hz, others in ((30.0, []), (30.0, [34.6, 36.0]), (3.1, [])):
    middle = round(hz / f[1])
    bins = [k for k in range(middle - 8, middle + 9) if k >= 1 and abs(k - middle) >= 2 and all(abs(o - f[k]) >= 1.5 * f[1] for o in others)]
    median = np.median(density[bins])
    dof = 1.9 * stretches
    print("noise at", hz, others, len(bins), median, "over its share", median / (1 - 2 / (9 * dof)) ** 3, "dof", dof * len(bins) * 0.4)
