# Reference values for speed.DwellFinderTest, made with numpy from the rules that stand in DwellFinder's Javadoc:
#   python3 dwells.py
# Speed is read every tenth of a second (0.5 s at most: 20 000 places; 8 at least), meant over a second. The lever moves about
# a place where the speed differs by 2.4 % within 3 s and stays different over 3 s on either side by 2.4 % and 2.5 times the
# scatter of both, or differs by 6 %. What lies between and lasts a second, or a whole dwell, goes on outwards as long as the
# speed is within 0.8 % of the second at its end, up to the next. Up to 9 % from slowest to fastest it is a dwell; of more, the
# longest part within 2.3 % is, and then what is left on either side.
import numpy as np


def half_up(x):
    return int(np.floor(x + 0.5))


def found(from_s, to_s, hertz):
    length = to_s - from_s
    places = max(8, min(20000, half_up(length / 0.1)))
    step = length / places
    raw = np.array([hertz(from_s + (i + 0.5) * step) for i in range(places)])
    half = (max(1, half_up(1 / step)) | 1) // 2
    total = np.concatenate([[0.0], np.cumsum(raw)])
    v = np.empty(places)
    for i in range(places):
        h = min(half, i, places - 1 - i)
        v[i] = (total[i + h + 1] - total[i - h]) / (2 * h + 1)
    least = int(np.ceil(min(5, 0.75 * length) / step - 1e-9))
    about, stay, second = half_up(1.5 / step), half_up(3 / step), half_up(1 / step)

    def moved(i):
        b, a = max(0, i - about), min(places - 1, i + about)
        change = abs(v[a] / v[b] - 1)
        if change < 0.024:
            return False
        before, after = v[max(0, b - stay) : b + 1], v[a : min(places, a + 1 + stay)]
        stayed = abs(after.mean() / before.mean() - 1)
        scatter = np.sqrt((np.mean((before / before.mean() - 1) ** 2) + np.mean((after / after.mean() - 1) ** 2)) / 2)
        return change > 0.06 or (stayed > 0.024 and stayed > 2.5 * scatter)

    still, begin = [], 0
    for i in range(places + 1):
        if i == places or moved(i):
            if (i - begin) * step >= 1 or i - begin >= least:
                still.append([begin, i])
            begin = i + 1
    dwells = []

    def spread(part):
        return part.max() / part.min() - 1

    def narrow(a, b):
        best, start = (a, a), a
        for i in range(a, b):
            while spread(v[start : i + 1]) > 0.023:
                start += 1
            if i + 1 - start > best[1] - best[0]:
                best = (start, i + 1)
        if best[1] - best[0] >= least:
            narrow(a, best[0])
            dwells.append(best)
            narrow(best[1], b)

    for h in range(len(still)):
        first, last = still[h][0], still[h][1] - 1
        low = 0 if h == 0 else still[h - 1][1]
        high = places if h + 1 == len(still) else still[h + 1][0]
        own = v[first : min(places - 1, first + second) + 1].mean()
        while first - 1 >= max(0, low) and abs(v[first - 1] / own - 1) < 0.008:
            first -= 1
        own = v[max(0, last - second) : last + 1].mean()
        while last + 1 <= min(places - 1, high) and abs(v[last + 1] / own - 1) < 0.008:
            last += 1
        still[h] = [first, last + 1]
        if last + 1 - first >= least:
            if spread(v[first : last + 1]) <= 0.09:
                dwells.append((first, last + 1))
            else:
                narrow(first, last + 1)
    return [(round(from_s + a * step, 9), round(from_s + b * step, 9)) for a, b in dwells]


def knots(times, hz):
    return lambda t: float(np.interp(t, times, hz))


def wander(base, share, period, knotted=None):
    return lambda t: (knotted(t) if knotted else base) * (1 + share * np.sin(2 * np.pi * t / period))


RUNS = {
    "a step": (100, 130, lambda t: 30 if t < 115 else 33),
    "drifts up and then ramps": (3, 33, knots([3, 10, 14, 22, 23.5, 33], [29, 29.7, 30.3, 33, 33.1, 33.2])),
    "ramps down and then drifts": (3, 33, knots([3, 12.5, 14, 22, 26, 33], [33.2, 33.1, 33, 30.3, 29.7, 29])),
    "short, with a step": (2, 6, lambda t: 30 if t < 5.4 else 32),
    "short, with a later step": (2, 6, lambda t: 30 if t < 5.7 else 32),
    "half a second": (1, 1.5, lambda t: 30.0),
    "a slow ramp": (0, 40, knots([0, 4, 36, 40], [30, 30.1, 36, 36.1])),
    "a slow ramp down": (0, 40, knots([0, 4, 36, 40], [36.1, 36, 30.1, 30])),
    "a drift of nearly 9 %": (0, 60, knots([0, 60], [30, 32.6])),
    "a drift of over 9 %": (0, 60, knots([0, 60], [30, 32.8])),
    "wander that comes back": (0, 30, wander(30, 0.017, 6.5)),
    "little wander with a step": (0, 30, wander(30, 0.006, 1.9, lambda t: 30 if t < 14 else 30.9)),
    "more wander with a step": (0, 30, wander(30, 0.02, 1.9, lambda t: 30 if t < 14 else 30.9)),
    "much wander with a larger step": (0, 30, wander(30, 0.016, 5.3, lambda t: 30 if t < 14 else 31.2)),
    "much wander with a large step": (0, 30, wander(30, 0.03, 5.3, lambda t: 30 if t < 14 else 33)),
    "a short hold between two moves": (0, 30, knots([0, 12, 13, 15.5, 16.5, 30], [30, 30, 32, 32, 34, 34])),
    "a longer hold between two moves": (0, 30, knots([0, 9, 10, 17.5, 18.5, 30], [30, 30, 32, 32, 34, 34])),
    "three quarters of an hour": (0, 2700, lambda t: 30 if t < 900 else 32 if t < 1800 else 30),
}
for name, (a, b, hz) in RUNS.items():
    print(name, found(a, b, hz))
