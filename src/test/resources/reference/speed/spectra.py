# Reference values for speed.SpectraReferenceTest, made with numpy from the definitions alone:
#   python3 spectra.py
import numpy as np

RATE, SECONDS = 400.0, 6
n = int(RATE * SECONDS)
i = np.arange(n)
t = i / RATE
revolutions = 20 * t + 0.1 * t**2


def rough(a, b):
    """Something that is no line and the same everywhere: whole numbers, no chance."""
    return ((i * i * a + i * b) % 1009) / 1009 - 0.5


x = 2 + 0.3 * t + 1.5 * rough(37, 11)
for order, c, s in ((1.0, 0.7, 0.2), (2.43, -0.3, 0.4), (3.0, 0.25, -0.1)):
    x = x + c * np.cos(2 * np.pi * order * revolutions) + s * np.sin(2 * np.pi * order * revolutions)
x = x + 0.2 * np.cos(2 * np.pi * 111.3 * t)

# Short spectra: 1.5 s under a periodic Hann window, three quarters overlapped, padded to 1024, each without its straight line.
length, padded, hop = 600, 1024, 150
frames = (n - length) // hop + 1
bin_hz = RATE / padded
bins = int(np.ceil(160 / bin_hz)) + 3
window = 0.5 - 0.5 * np.cos(2 * np.pi * np.arange(length) / length)
half = round(12 / bin_hz)
reach = round(RATE / length / bin_hz)
knots = int(np.ceil(bins / half)) + 1
knee = np.log(1001)
over, evidence, floors = [], [], []
for f in range(frames):
    part = x[f * hop : f * hop + length]
    k = np.arange(length)
    part = part - np.polyval(np.polyfit(k, part, 1), k)
    power = np.abs(np.fft.rfft(part * window, padded)) ** 2
    level = []
    for j in range(knots):
        start = max(1, min(j * half - half, power.size - 2 * half))
        nearby = np.sort(power[start : start + 2 * half])
        level.append(nearby[int(0.35 * nearby.size)] / -np.log(0.65))
    floor = np.exp(np.interp(np.arange(bins) / half, np.arange(knots), np.log(level)))
    floors.append(floor)
    white = power[:bins] / floor
    over.append(white)
    value = np.log(1 + white)
    bent = np.where(value <= knee, value, knee + 0.25 * (value - knee))
    most = np.array([white[max(0, b - reach) : b + reach + 1].max() for b in range(bins)])
    evidence.append(bent * white / most - 0.4285)
over, evidence = np.array(over), np.array(evidence)
density = np.mean(floors, axis=0) * 2 / (RATE * np.sum(window**2))


def straight(row, hz):
    return float(np.interp(hz / bin_hz, np.arange(row.size), row))


PLACES = (20.1, 48.0, 60.4, 77.7, 111.3, 150.0)
print("frames", frames, "bins", bins, "bin", bin_hz, "lowest", 3 / 1.5, "highest", (bins - 2) * bin_hz)
for f in (0, 7, 12):
    print("frame", f, "centre", f * hop / RATE + 0.75)
    print("  over floor", [straight(over[f], hz) for hz in PLACES])
    print("  evidence", [straight(evidence[f], hz) for hz in PLACES])
print("density", [float(density[round(hz / bin_hz)]) for hz in PLACES])

# Mean evidence along a speed that rises from frame to frame: frequencies go along with it.
speed = 20 + 0.2 * (np.arange(frames) * hop / RATE + 0.75)
mean = speed.mean()
step = 4e-4
first = np.log(2.0)
grid = np.exp(first + step * np.arange(int(np.ceil((np.log((bins - 2) * bin_hz) - first) / step))))
total = np.zeros(grid.size)
count = np.zeros(grid.size)
for f in range(frames):
    at = grid * speed[f] / mean
    seen = (at >= 2.0) & (at <= (bins - 2) * bin_hz)
    total[seen] += np.interp(at[seen] / bin_hz, np.arange(bins), evidence[f])
    count[seen] += 1
lines = np.where(count > 0, total / np.maximum(count, 1), 0)


def line(hz):
    return float(np.interp((np.log(hz) - first) / step, np.arange(grid.size), lines))


print("mean speed", mean)
for order in (1.0, 1.5, 2.43, 3.0):
    print("  evidence at", order, line(order * mean))
print("  at 111.3", line(111.3))
seconds = 1.5 + (frames - 1) * hop / RATE
print("  stands from", max(0.7, 4.2 * 0.55 / np.sqrt(max(1, 1.9 * seconds / 1.5 - 0.9))))

# Lines turned back by their order times the angle, in sixteenths of a second's block; then once more by a correction.
rest = x - x.mean()
slices, width = 96, 25
correction = 0.02 * np.sin(0.9 * (np.arange(slices) + 0.5) / 16)
middle = (np.arange(slices) + 0.5) / 16
angle = 20 * middle + 0.1 * middle**2
hann = 0.5 - 0.5 * np.cos(2 * np.pi * (np.arange(16) + 0.5) / 16)
hann = hann / hann.sum()
for order, ratio in ((1.0, 0), (2.43, 0.004), (3.0, 0)):
    turned = (rest * np.exp(-2j * np.pi * order * revolutions)).reshape(slices, width).mean(axis=1)
    moved = correction + ratio * (angle + correction)
    turned = turned * np.exp(-2j * np.pi * order * moved)
    blocks = [2 * np.sum(hann * turned[b * 8 : b * 8 + 16]) for b in range((slices - 16) // 8 + 1)]
    print("order", order, len(blocks), [complex(blocks[b]) for b in (0, 4, 10)])
