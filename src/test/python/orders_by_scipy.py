"""Speed and orders of one WAV with NumPy and SciPy: the job of ``evenblade orders --json``, scripted.

    orders_by_scipy.py FILE.wav INSTALLATION.json ENGINE_RPM

It is the yardstick for speed, so it does the same job and is written as somebody who knows both libraries
would write it: whole arrays, no loop over samples, nothing computed twice, the transforms on all cores.

Steps, each in the same kind as the program's:
 1. read in blocks: hash of the file, level, offset, clipping, longest standstill; reduced to the lowest
    rate that holds every line (polyphase, 80 dB);
 2. spectra of 1.5 s frames over their own noise floor; comb of all lines, best path by dynamic programming
    on a grid of 0.1 %, then of 0.02 %; the same from either half of the frames, each tried on the other,
    as a test against chance; other speeds that would explain the lines as well;
 3. refinement by the phase of the lines that stand clear, smoothed with a stiffness of greatest likelihood,
    and a check of the ratio where it isn't known by its teeth; dwells;
 4. in every dwell all lines fitted together, the track sharpened by what the fit leaves, fitted again;
    errors from the scatter of the blocks and the noise beside each line; detection by Fisher's F; intervals
    that allow for noise (Rice); gear mesh at its own rate; other steady lines in what is left, at one
    frequency or in step with the speed; unevenness of the blades;
 5. one JSON document.
"""

import hashlib
import json
import sys
from collections import deque

import numpy as np
from scipy import fft, linalg, ndimage, signal, special, stats
from scipy.interpolate import CubicSpline
from scipy.io import wavfile

USABLE = 0.45
FALSE_ALARM = 0.01
BLOCK = 1 << 20
TURN = 2 * np.pi


# ---------------------------------------------------------------- the lines


def line_table(installation):
    """Dicts of the lines, as multiples of propeller speed; the ratio; whether it is exact."""
    engine, drive = installation["engine"], installation["reduction"]
    blades, cycle, cylinders = installation["propeller"]["blades"], engine["cycle"], engine.get("cylinders", 0)
    teeth = "drivingTeeth" in drive
    ratio = drive["drivenTeeth"] / drive["drivingTeeth"] if teeth else drive.get("ratio", 1)
    firing = {"four-stroke": cylinders / 2, "two-stroke": cylinders, "electric": 0}[cycle]
    step = 0.5 if cycle == "four-stroke" else 1
    lines = []
    for k in range(1, 2 * blades + 1):
        passes = k % blades == 0
        weight = (1.25 if k == blades else 1.0) if passes else (1.15 if k == 1 else 0.8)
        lines.append(dict(of="propeller", order=float(k), at=float(k), blade=passes, weight=weight, main=weight > 1))
    highest = 2 if cycle == "electric" else max(4, 2 * firing)
    for m in np.arange(step, highest + 1e-9, step):
        fires = firing > 0 and m % firing == 0
        weight = (1.2 if m == firing else 1.0) if fires else 1.05 if m == 1 else 0.85 if m % 1 == 0 else 0.75
        lines.append(dict(of="crank", order=float(m), at=m * ratio, blade=False, weight=weight, main=weight > 1))
    if teeth:
        lines.append(dict(of="crank", order=float(drive["drivingTeeth"]), at=float(drive["drivenTeeth"]), mesh=True))
    return lines, ratio, blades, teeth or ratio == 1


def comb_of(lines):
    """The lines without mesh, each place once, rising."""
    comb = []
    for line in sorted((x for x in lines if "mesh" not in x), key=lambda x: (x["at"], -x["weight"])):
        if not comb or line["at"] - comb[-1]["at"] > 1e-6 * line["at"]:
            comb.append(line)
    return comb


def waves(turns, orders):
    """Cosine and sine of the angle of each order, orders in the first axis."""
    angle = TURN * (np.multiply.outer(orders, turns) % 1)
    return np.cos(angle), np.sin(angle)


# ---------------------------------------------------------------- reading


def low_pass(rate, step, keep):
    new = rate / step
    taps, beta = signal.kaiserord(80, 2 * (new - 2 * keep) / rate)
    h = signal.firwin(taps | 1, new / rate, window=("kaiser", beta)).astype(np.float32)
    return h / h.sum()


def steps(rate, keep):
    """Whole-number factors of at most 12, larger first, together as large as two of them can be."""
    factor = max(1, int(rate * USABLE / keep * (1 + 1e-12)))
    if factor <= 12:
        return [factor] if factor > 1 else []
    pairs = [(f, g) for f in range(2, 13) for g in range(2, f + 1) if f * g <= factor]
    return list(max(pairs, key=lambda p: (p[0] * p[1], -p[0])))


def reduced(x, rate, keep):
    for step in steps(rate, keep):
        h = low_pass(rate, step, keep)
        x = signal.resample_poly(x, 1, step, window=h)
        rate /= step
    return x, rate


class Reader:
    """One pass over a file: hash, quality, and the first stage of the reduction, block by block."""

    def __init__(self, file):
        self.file = file
        self.rate, self.samples = wavfile.read(file, mmap=True)
        if self.samples.ndim > 1:
            self.samples = self.samples[:, 0]
        name = self.samples.dtype.name
        self.scale = {"int16": 2.0**-15, "int32": 2.0**-31, "uint8": 2.0**-7}.get(name, 1.0)
        self.zero = 128 if name == "uint8" else 0

    def sound(self, start, end):
        """Samples as shares of full scale, silence beyond the ends."""
        x = self.samples[max(0, start) : end].astype(np.float32)
        x = (x - self.zero) * np.float32(self.scale)
        return np.pad(x, (max(0, -start), max(0, end - len(self.samples))))

    def read(self, keep):
        stages = steps(self.rate, keep)
        step = stages[0] if stages else 1
        h = low_pass(self.rate, step, keep) if stages else np.ones(1, np.float32)
        half, n, block = len(h) // 2, len(self.samples), BLOCK // step * step
        h = np.pad(h, (-(len(h) - 1) % step, 0))  # so that a result falls on each block's first sample
        parts, facts, edges = [], [], [np.array([-1])]
        for at in range(0, n, block):
            end = min(n, at + block)
            x = self.sound(at - half, end + half)
            own = x[half : half + end - at]
            facts.append((at, own.min(), own.max(), own.sum(dtype=float), float(np.dot(own, own))))
            edges.append(np.flatnonzero(np.diff(self.samples[at : end + 1])) + at)
            parts.append(signal.upfirdn(h, x, 1, step)[len(h) // step :][: -(-(end - at) // step)])
        self.quality = self.judged(facts, int(np.diff(np.concatenate(edges + [np.array([n - 1])])).max()))
        x, rate = np.concatenate(parts), self.rate / step
        if len(stages) > 1:
            x, rate = signal.resample_poly(x, 1, stages[1], window=low_pass(rate, stages[1], keep)), rate / stages[1]
        return x, rate

    def digest(self):
        whole = hashlib.sha256()
        with open(self.file, "rb") as f:
            while block := f.read(BLOCK):
                whole.update(block)
        return whole.hexdigest()

    def judged(self, facts, still):
        _, low, high, total, squares = map(np.array, zip(*facts))
        top, bottom, n = float(high.max()), float(low.min()), len(self.samples)
        near, clipped = max(0.0005 * (top - bottom), self.scale), 0
        for sign, extreme in ((1, top), (-1, -bottom)):
            few = many = runs = 0
            for at, lowest, highest, _, _ in facts:
                if (highest if sign > 0 else -lowest) >= extreme - 4 * near:
                    x = sign * self.sound(at, min(n, at + BLOCK))
                    many += np.count_nonzero(x >= extreme - 4 * near)
                    flat = x >= extreme - near
                    few += np.count_nonzero(flat)
                    runs += np.count_nonzero(flat[:-2] & flat[1:-1] & flat[2:])
            clipped += max(0, 2 * few - many) if few > 0.75 * many and runs > 0.1 * few else 0
        mean = total.sum() / n
        return dict(
            clippedShare=clipped / n,
            longestStuckRun=still,
            peak=max(top, -bottom),
            mean=mean,
            rms=float(np.sqrt(max(0, squares.sum() / n - mean**2))),
        )


# ---------------------------------------------------------------- speed


class Frames:
    """Overlapped spectra over their own noise floor, and each bin as evidence of a line."""

    def __init__(self, x, rate, up_to):
        self.length = min(1.5, len(x) / rate / 4)
        n = round(self.length * rate)
        padded = fft.next_fast_len(int(1.6 * n), real=True)
        self.bin = rate / padded
        bins = min(padded // 2, int(up_to / self.bin) + 3)
        hop = max(n // 4, -(-(len(x) - n) // 900))
        self.hop, self.window = hop / rate, signal.windows.hann(n, sym=False).astype(np.float32)
        cut = signal.detrend(np.lib.stride_tricks.sliding_window_view(x, n)[::hop], axis=1)
        spectrum = fft.rfft(cut * self.window, padded, axis=1, workers=-1)
        power = np.square(spectrum.real) + np.square(spectrum.imag)
        half = max(8, round(12 / self.bin))
        knots = -(-bins // half) + 1
        starts = np.clip(np.arange(knots) * half - half, 1, power.shape[1] - 2 * half)
        near = np.lib.stride_tricks.sliding_window_view(power, 2 * half, axis=1)[:, starts]
        level = np.partition(near, int(0.35 * 2 * half), axis=2)[:, :, int(0.35 * 2 * half)] / -np.log(0.65)
        level = np.log(np.maximum(level, 1e-30))
        at = np.arange(bins) / half
        k, share = at.astype(int), (at % 1).astype(np.float32)
        k = np.minimum(k, knots - 2)
        floor = np.exp(level[:, k] + (level[:, k + 1] - level[:, k]) * share)
        self.density = floor.mean(axis=0) * 2 / (rate * np.square(self.window).sum())
        self.white = power[:, :bins] / floor
        reach = max(1, round(rate / n / self.bin))
        most = ndimage.maximum_filter1d(self.white, 2 * reach + 1, axis=1)
        bent, knee = np.log1p(self.white), np.log(1001)
        bent = np.where(bent > knee, knee + 0.25 * (bent - knee), bent)
        self.evidence = bent * self.white / np.maximum(most, 1e-30) - 0.4285
        self.lowest, self.highest = 3 / self.length, (bins - 2) * self.bin
        self.centre = np.arange(len(power)) * self.hop + self.length / 2

    def read(self, table, frames, hz):
        """Values at frequencies, straight between bins; not a number out of range."""
        outside = (hz < self.lowest) | (hz > self.highest)
        at = np.where(outside, self.lowest, hz) / self.bin
        k = at.astype(int)
        low, high = table[frames, k], table[frames, k + 1]
        return np.where(outside, np.nan, low + (at - k) * (high - low))


def comb_scores(frames, which, hz, comb):
    """Weighted evidence of all lines; hz has one row per frame."""
    score = np.zeros(np.broadcast_shapes((len(which), 1), hz.shape))
    for line in comb:
        score += line["weight"] * np.nan_to_num(frames.read(frames.evidence, which[:, None], line["at"] * hz + 0 * score))
    return score


def best_path(scores, places, cost):
    """Row by row the column that collects most, a move in place costing in proportion."""
    value, came = scores[0], np.empty(scores.shape, int)
    for i in range(1, len(scores)):
        tries = value - cost * np.abs(places[i][:, None] - places[i - 1])
        came[i] = tries.argmax(axis=1)
        value = tries[np.arange(len(value)), came[i]] + scores[i]
    path = [int(value.argmax())]
    for i in range(len(scores) - 1, 0, -1):
        path.append(int(came[i][path[-1]]))
    return np.array(path[::-1])


def path_through(frames, which, coarse_scores, grid, comb):
    places = np.broadcast_to(np.arange(len(grid)), (len(which), len(grid)))
    coarse = grid[best_path(coarse_scores[which], places, 0.15)]
    fine = np.log(coarse)[:, None] + np.arange(-30, 31) * 2e-4
    fine = np.clip(fine, np.log(grid[0]), np.log(grid[-1]))
    best = best_path(comb_scores(frames, which, np.exp(fine), comb), fine / 1e-3, 0.15)
    return np.exp(fine[np.arange(len(which)), best])


def on_mains(frames, hz):
    near = np.zeros(hz.shape, bool)
    for mains in (50, 60):
        k = np.rint(hz / mains)
        near |= (k >= 1) & (k <= 6) & (np.abs(hz - k * mains) < 0.04 * k + 0.25 / frames.length)
    return near


def stands_out(frames, hands, paths, comb):
    """Lines against chance on frames that had no part in finding the path tried on them."""
    tried, speeds = [], []
    for own, other in ((0, 1), (1, 0)):
        tried.append(hands[own])
        speeds.append(np.interp(hands[own], hands[other], paths[other]))
    tried, speeds = np.concatenate(tried), np.concatenate(speeds)
    means, counts, mains = [], [], []
    for line in comb:
        hz = line["at"] * speeds
        over = frames.read(frames.white, tried, hz)
        counts.append(np.count_nonzero(~np.isnan(over)))
        means.append(np.nansum(over) / max(1, counts[-1]))
        mains.append(on_mains(frames, hz).sum() > 0.9 * counts[-1])
    means, counts, mains = np.array(means), np.array(counts), np.array(mains)
    seen = counts > 0
    chance = stats.f.sf(means[seen] / 1.3, 2 * counts[seen], 20 * counts[seen])
    alone = (chance < FALSE_ALARM / 2 / seen.sum()) & ~mains[seen]
    free = seen & ~mains
    n = counts[free].sum()
    together = n > 0 and stats.f.sf((means * counts)[free].sum() / n / 1.3, 2 * n, 20 * n) < FALSE_ALARM / 2
    return bool(alone.any() or together)


def rivals(frames, path, comb, low, high):
    """Other speeds at which the comb explains the frames nearly as well."""
    every = np.arange(len(path))

    def seen(scale):
        return np.array([np.nanmean(frames.read(frames.evidence, every, line["at"] * scale * path)) if
                         np.any(~np.isnan(frames.read(frames.evidence, every[:1], line["at"] * scale * path[:1]))) else np.nan
                         for line in comb])

    own = seen(1)
    few = np.count_nonzero(own > 1) <= 1
    absent = np.array([0 if few else 1.5 if line["main"] else 0.4 for line in comb])

    def explained(e):
        return np.nansum(np.where(np.isnan(e), np.nan, np.where(e > 1, e, -absent)))

    strongest, chosen, others = comb[int(np.nanargmax(own))]["at"], explained(own), []
    for line in comb:
        scale = strongest / line["at"]
        hz = path.mean() * scale
        if abs(scale - 1) > 0.01 and low <= hz <= high and explained(seen(scale)) > 0.92 * chosen:
            others.append(hz)
    return others


def smoothed(y, variance, beyond=0.0):
    """Penalised least squares on the second difference, its stiffness by greatest likelihood.

    Readings at even steps. Returns the curve and the standard error of the way it goes, drawn on by so many
    steps at either end.
    """
    n = len(y)
    w = 1 / np.clip(variance, np.median(variance) / 1e4, np.median(variance) * 1e4)
    t = np.arange(n)
    line = np.polyval(np.polyfit(t, y, 1, w=np.sqrt(w)), t)
    y = y - line
    bands = np.zeros((3, n))
    d = np.array([1.0, -2.0, 1.0])
    for i in range(3):
        for j in range(i, 3):
            bands[2 - (j - i), j : n - 2 + j] += d[i] * d[j]
    best = None
    for stiff in 10 ** np.arange(-5, 9.1, 0.5) * np.median(w):
        system = stiff * bands
        system[2] += w
        factor = linalg.cholesky_banded(system, check_finite=False)
        curve = linalg.cho_solve_banded((factor, False), w * y, check_finite=False)
        scale = (6 + np.dot(w * y, y - curve)) / (6 + n - 2)
        like = -np.log(factor[2]).sum() + 0.5 * (n - 2) * np.log(stiff) - 0.5 * (n + 4) * np.log(scale)
        if best is None or like > best[0]:
            best = like, curve, scale, factor, stiff
    _, curve, scale, factor, stiff = best
    way = np.zeros(n)
    way[[0, 1, -2, -1]] = -1 - beyond, beyond, -beyond, 1 + beyond
    variance = way @ linalg.cho_solve_banded((factor, False), way) + 2 * beyond**3 / 3 / stiff
    return line + curve, np.sqrt(scale * variance)


class Track:
    """The propeller's angle in revolutions over time, a cubic through knots."""

    def __init__(self, time, turns):
        self.curve = CubicSpline(time, turns, bc_type="not-a-knot")
        self.time = time

    def turns(self, t):
        inside = np.clip(t, self.time[0], self.time[-1])
        return self.curve(inside) + (t - inside) * self.curve(inside, 1)

    def hz(self, t):
        return self.curve(np.clip(t, self.time[0], self.time[-1]), 1)


def phase_locked(x, rate, frames, path, comb, exact):
    """Track, the readings it goes through, and the ratio's error, from the phases of lines that stand clear."""
    every = np.arange(len(path))
    standing = []
    for line in comb:
        over = frames.read(frames.white, every, line["at"] * path)
        if np.count_nonzero(~np.isnan(over)) > len(path) / 2 and np.nanmean(over) > 4:
            place = np.clip(np.rint(line["at"] * path / frames.bin).astype(int), 0, len(frames.density) - 1)
            density = frames.density[place].mean()
            standing.append((line, np.nanmean(over) * density, density))
    smooth = ndimage.convolve1d(path, [0.25, 0.5, 0.25], mode="nearest")
    turned = np.concatenate([[0], np.cumsum(0.5 * (smooth[1:] + smooth[:-1]) * frames.hop)])
    start = Track(frames.centre, turned)
    seconds = len(x) / rate
    block = max(0.4, min(1.0, seconds / 6))
    n = max(1, round(block / 16 * rate))
    slices = len(x) // n
    middle = (np.arange(slices) + 0.5) * n / rate
    x = (x - x.mean())[: slices * n].reshape(slices, n)
    orders = np.array([s[0]["at"] for s in standing])
    crank = np.array([s[0]["of"] == "crank" for s in standing])
    density = np.array([s[2] for s in standing])
    clear = clear_lines(orders * path.mean(), np.array([s[1] for s in standing]), block)
    tones = np.empty((len(orders), slices), complex)
    for at in range(0, slices, 1024):
        part = slice(at, at + 1024)
        t = np.arange(at * n, min(at + 1024, slices) * n).reshape(-1, n) / rate
        cos, sin = waves(start.turns(t), orders)
        tones[:, part] = ((cos * x[part]).mean(axis=2)) - 1j * (sin * x[part]).mean(axis=2)
    base = start.turns(middle)
    correction, ratio_error = np.zeros(slices), 0.0

    def blocks(width, hop):
        turn = np.outer(orders, correction) + np.outer(orders * crank * ratio_error, base + correction)
        still = tones * np.exp(-TURN * 1j * turn)
        w = signal.windows.hann(width, sym=True)
        cut = np.lib.stride_tricks.sliding_window_view(still, width, axis=1)[:, ::hop]
        return cut @ (2 * w / w.sum()), np.lib.stride_tricks.sliding_window_view(correction, width)[::hop] @ (w / w.sum())

    def noise(width):
        return (density * 1.5 / (width * n / rate))[:, None] / clear[:, None]

    z, _ = blocks(8, 2)
    step = z[:, 1:] * z[:, :-1].conj()
    weight = np.abs(step) / noise(8)
    rates = (weight * orders[:, None] * np.angle(step)).sum(axis=0) / (weight * orders[:, None] ** 2).sum(axis=0)
    at = middle[4] + (np.arange(len(rates)) * 2 + 1) * n / rate
    rates = np.interp(middle, at, rates / (TURN * 2 * n / rate))
    correction = np.cumsum(rates) * n / rate
    width = 16
    for round_ in range(5):
        if round_ == 3:
            width = 8
        if round_ in (2, 3):
            turn = np.outer(orders, correction) + np.outer(orders * crank * ratio_error, base + correction)
            whole = np.abs((tones * np.exp(-TURN * 1j * turn)).mean(axis=1)) ** 2 - density / seconds
            clear = clear_lines(orders * path.mean(), whole, width * n / rate)
        z, current = blocks(width, width // 2)
        time = middle[0] + ((width - 1) / 2 + np.arange(z.shape[1]) * (width // 2)) * n / rate
        mean = z.mean(axis=1, keepdims=True)
        turn = TURN * orders[:, None]
        off = np.angle(z * mean.conj()) / turn
        weight = turn**2 * np.maximum(np.abs(z) ** 2 - 2 * noise(width), 0.02 * np.abs(z) ** 2) / noise(width)
        if round_ == 1 and not exact and crank.any() and not crank.all():
            ratio_error = ratio_off(np.unwrap(np.angle(z), axis=1) / turn, weight, time, crank, path.mean())
        below = weight.sum(axis=0)
        read = current + (weight * off).sum(axis=0) / below
        variance = 4 / 3 / np.maximum(below, 1e-8 * below.max())
        curve, _ = smoothed(read, variance)
        fresh = Track(time, start.turns(time) + curve)
        moved = fresh.turns(middle) - base
        if round_ > 2 and np.abs(moved - correction).max() < 2e-4:
            correction = moved
            break
        correction = moved
    return fresh, (time, start.turns(time) + read, variance), ratio_error


def clear_lines(hz, power, seconds):
    """1 for lines into whose blocks no neighbour leaks, next to nothing for the others."""
    x = np.maximum(1.1, np.abs(hz[:, None] - hz) * seconds)
    share = np.where(x < 2, 1, 1 / (np.pi * x * (x**2 - 1)) ** 2)  # envelope of a Hann window's transform
    np.fill_diagonal(share, 0)
    free = (power > 0) & (share @ np.maximum(power, 0) < 0.03 * power)
    return np.where(free if free.any() else power == power.max(), 1.0, 1e-9)


def ratio_off(turns, weight, time, crank, hz):
    """Share by which the crank's lines run faster than the ratio says; 0 where that isn't certain."""
    slope, error = [], []
    for side in (~crank, crank):
        w = weight[side].sum(axis=0)
        y = (weight[side] * turns[side]).sum(axis=0) / w
        t = time - np.average(time, weights=w)
        slope.append((w * t * y).sum() / (w * t * t).sum())
        error.append(1 / (w * t * t).sum())
    apart = slope[1] - slope[0]
    certain = abs(apart) > 4 * np.sqrt(sum(error)) and abs(apart) * (time[-1] - time[0]) > 0.6
    return apart / hz if certain and abs(apart / hz) < 0.01 else 0.0


def find_dwells(track, seconds):
    """Stretches of at least 5 s whose smoothed speed stays within about 1 % of its middle."""
    step = 0.1
    t = np.arange(0.5 * step, seconds, step)
    hz = ndimage.uniform_filter1d(track.hz(t), 11, mode="nearest")
    least, found, todo = min(5, 0.75 * seconds), [], [(0, len(t))]
    while todo:
        start, end = todo.pop()
        if (end - start) * step < least:
            continue
        high, low, begin, best = deque(), deque(), start, (start, start)
        for i in range(start, end):
            while high and hz[high[-1]] <= hz[i]:
                high.pop()
            while low and hz[low[-1]] >= hz[i]:
                low.pop()
            high.append(i)
            low.append(i)
            while hz[high[0]] - hz[low[0]] > 0.023 * hz[low[0]]:
                begin += 1
                if high[0] < begin:
                    high.popleft()
                if low[0] < begin:
                    low.popleft()
            if i + 1 - begin > best[1] - best[0]:
                best = begin, i + 1
        if (best[1] - best[0]) * step < least:
            continue
        found.append((best[0] * step, min(seconds, best[1] * step)))
        todo += [(start, best[0]), (best[1], end)]
    return sorted(found)


# ---------------------------------------------------------------- orders


class Fit:
    """All lines of a dwell together; each block's level and slope fitted along."""

    def __init__(self, x, rate, dwell, track, orders, steady):
        first, last = round(dwell[0] * rate), round(dwell[1] * rate)
        blocks = int(max(8, min(400, round(dwell[1] - dwell[0]))))
        n = (last - first) // blocks
        self.n, self.blocks, self.rate, self.first = n, blocks, rate, first
        self.orders, self.lines = np.asarray(orders), len(orders) + len(steady)
        self.time = (first + np.arange(blocks * n)).reshape(blocks, n) / rate
        self.columns = np.empty((blocks, 2 * self.lines + 1, n))
        ramp = np.linspace(-1, 1, n)
        drift = np.stack([np.full(n, 1 / np.sqrt(n)), ramp / np.sqrt((ramp**2).sum())])
        for b in range(0, blocks, 16):
            part = self.columns[b : b + 16]
            time, turning = self.time[b : b + 16], 2 * len(orders)
            for first_column, pair in ((0, waves(track.turns(time), orders)), (turning, waves(time, steady))):
                for i in range(2):
                    part[:, first_column + i : first_column + 2 * len(pair[i]) : 2] = pair[i].transpose(1, 0, 2)
            part[:, -1] = x[first + b * n : first + (b + part.shape[0]) * n].reshape(-1, n)
            part -= (part @ drift.T) @ drift
        sums = self.columns @ self.columns.transpose(0, 2, 1)
        self.normal, self.products = sums[:, :-1, :-1], sums[:, :-1, -1]
        self.factor = linalg.cho_factor(self.normal.sum(axis=0))
        self.solution = linalg.cho_solve(self.factor, self.products.sum(axis=0))
        self.complex = self.solution[0::2] - 1j * self.solution[1::2]
        self.left = self.columns[:, -1] - self.solution @ self.columns[:, :-1]

    def wishes(self, track):
        """What the residual asks the track to be moved by, smoothed: a sharper track and how far it moved."""
        turning = 2 * len(self.orders)
        turn = np.repeat(TURN * self.orders, 2)
        swap = np.empty(turning)
        swap[0::2], swap[1::2] = self.solution[1:turning:2], -self.solution[0:turning:2]
        slope = (turn * swap) @ self.columns[:, :turning]
        parts = max(1, round(self.n / self.rate / 0.4))
        edges = np.arange(parts) * self.n // parts
        above = np.add.reduceat(slope * self.left, edges, axis=1).ravel()
        below = np.add.reduceat(slope * slope, edges, axis=1).ravel()
        variance = self.left.var() / np.maximum(below, 1e-9 * below.max())
        time = (self.time[:, edges] + self.n / parts / 2 / self.rate).ravel()
        curve, _ = smoothed(above / np.maximum(below, 1e-9 * below.max()), variance)
        return Track(time, track.turns(time) + curve), float(np.sqrt(np.mean(curve**2)))

    def scatter(self):
        """Covariance of the solution from what each block would change in it (blocks as clusters)."""
        gradient = self.products - self.normal @ self.solution
        change = linalg.cho_solve(self.factor, gradient.T)
        a, b = self.solution[0::2], self.solution[1::2]
        size = np.maximum(np.hypot(a, b), 1e-300)
        along = (a[:, None] * change[0::2] + b[:, None] * change[1::2]) / size[:, None]
        across = (b[:, None] * change[0::2] - a[:, None] * change[1::2]) / size[:, None]
        m = self.blocks
        own = np.empty((self.lines, m), complex)
        for i in range(self.lines):
            pair = self.normal[:, 2 * i : 2 * i + 2, 2 * i : 2 * i + 2]
            step = np.linalg.solve(pair, gradient[:, 2 * i : 2 * i + 2, None])[:, :, 0]
            own[i] = step[:, 0] - 1j * step[:, 1]
        return (along**2).sum(axis=1) * m / (m - 1), (across**2).sum(axis=1) * m / (m - 1), own


def noise_beside(left, rate, places):
    """Density beside each line, free of the others, and its degrees of freedom."""
    n = int(max(0.3, min(1.5, left.size / rate / 6)) * rate)
    hz, density = signal.welch(left.ravel(), rate, nperseg=n, detrend=False)
    dof = 1.9 * (left.size // (n // 2) - 1)
    results = []
    for place in places:
        middle = round(place / hz[1])
        at = np.array([middle + s * k for k in range(2, 9) for s in (-1, 1)])
        at = at[(at >= 1) & (at < len(hz) - 1)]
        free = at[[all(abs(o - hz[k]) > 1.5 * hz[1] for o in places if o != place) for k in at]]
        used = density[free if len(free) >= 5 else at]
        results.append((np.median(used) / (1 - 2 / (9 * dof)) ** 3, dof * len(used) * 0.4))
    return np.array(results)


def interval95(observed, sigma, dof):
    """Length of a two-component vector measured with noise (Rice), widened for an estimated noise."""
    reach = stats.t.ppf(0.975, dof) * sigma
    if observed > 12 * sigma:
        middle = np.sqrt(max(0, observed**2 - sigma**2))
        return middle - reach, middle + reach
    wide = reach / stats.norm.ppf(0.975)
    square = (observed / wide) ** 2
    ends = []
    for p in (0.975, 0.025):
        at = special.chndtrinc(square, 2, p) if special.chdtr(2, square) > p else 0.0
        ends.append(wide * np.sqrt(max(0.0, at)))
    return ends[0], max(reach, ends[1])


def levels(fit, left, rate, places, confirmed):
    """Amplitude, error, interval and detection of the first lines of a fit, those that have a place."""
    beside = noise_beside(left, rate, places)
    along, across, own = fit.scatter()
    seconds, block = fit.blocks * fit.n / rate, fit.n / rate
    readings = []
    for i in range(len(places)):
        density, noise_dof = beside[i]
        noise, observed = density / seconds, abs(fit.complex[i])
        variance, dof = along[i], fit.blocks - 1.0
        if observed**2 < 16 * noise:
            variance, dof = 0.5 * (along[i] + across[i]), 2 * dof
        if stats.f.sf(variance / noise, dof, noise_dof) >= 0.01:
            trusted = min(noise_dof, 4 * dof)
            variance, dof = (dof * variance + trusted * noise) / (dof + trusted), dof + trusted
        stands = stats.f.sf(observed**2 / (2 * max(noise, variance)), 2, noise_dof) < FALSE_ALARM / len(places)
        stray = np.mean(np.abs(own[i]) ** 2) - 2 * density / block
        if confirmed and stray > 0 and observed**2 < 0.9 * (observed**2 + stray):
            squares = np.abs(fit.complex[i] + own[i]) ** 2
            strong = stats.f.sf(squares.mean() / (2 * density / block) / 3, 2 * fit.blocks, noise_dof) < 1e-8
            if stands or strong:
                size = np.sqrt(max(squares.mean() - 2 * density / block, observed**2 / 2))
                error = squares.std(ddof=1) / np.sqrt(fit.blocks) / (2 * size)
                reach = stats.t.ppf(0.975, fit.blocks - 1) * error
                readings.append((size, error, max(0, size - reach), size + reach, True))
                continue
        sigma = np.sqrt(variance)
        low, high = interval95(observed, sigma, dof)
        size = np.sqrt(max(0, observed**2 - 2 * variance))
        readings.append((size, sigma, low, max(high, 1.96 * sigma), bool(confirmed and stands)))
    return readings


def steady_lines(left, rate, stretch, low, high):
    """Bins of an averaged spectrum that stand out of the median around them."""
    n = int(stretch * rate)
    hz, density = signal.welch(left, rate, nperseg=n, detrend=False)
    bins = min(len(hz) - 3, int(high / hz[1]))
    dof = 1.9 * (len(left) // (n // 2) - 1)
    starts = np.clip(np.arange(8, len(hz), 16) - 40, 1, max(1, len(hz) - 80))
    near = np.lib.stride_tricks.sliding_window_view(density, min(80, len(hz) - 1))[starts]
    floor = np.repeat(np.median(near, axis=1), 16)
    k = np.arange(max(4, int(np.ceil(low / hz[1]))), min(bins, len(floor)))
    peak = (density[k] > 2 * floor[k]) & (density[k] >= density[k - 1]) & (density[k] >= density[k + 1])
    k = k[peak]
    k = k[stats.f.sf(density[k] / floor[k], dof, 60) < FALSE_ALARM / max(1, bins)]
    around = k[:, None] + np.arange(-2, 3)
    over = np.maximum(0, density[around] - floor[k][:, None])
    power = over.sum(axis=1)
    return [
        (float((o * a).sum() / p * hz[1]), float(np.sqrt(2 * p * hz[1])), float(density[i] / floor[i]))
        for o, a, p, i in zip(over, around, power, k)
    ]


def other_lines(fit, track, dwell, hz, wander, places, sizes, up_to):
    """Steady lines of the residual that no order explains: tones, and lines in step with the speed."""
    left, rate, seconds = fit.left.ravel(), fit.rate, dwell[1] - dwell[0]
    stretch = max(1, min(8, seconds / 4))
    found = [line + (False,) for line in steady_lines(left, rate, stretch, 4, up_to)]
    if wander > 0.002:
        turns = track.turns(fit.time.ravel())
        even = turns[0] + np.arange(len(left)) * hz / rate
        over = np.interp(even, turns, left)
        for order, size, stands in steady_lines(over, rate / hz, stretch * hz, 4 / hz, up_to / hz):
            same = [f for f in found if abs(f[0] - order * hz) < max(3 / stretch, wander * order * hz)]
            if all(f[2] < stands for f in same):
                found = [f for f in found if f not in same] + [(order * hz, size, stands, True)]
    def own(f):
        apart = np.abs(f[0] - places)
        reach = np.maximum(4 / stretch, (wander + 0.01) * places)
        return np.any((apart < 1.5 / seconds) | ((apart < reach) & (f[1] < 0.05 * sizes)))
    return sorted((f for f in found if not own(f)), key=lambda f: -f[1])[:12]


def measured(sound, slow, lines, readings, track, dwell, ratio_error, blades):
    """Everything about one dwell, as it goes into the document."""
    (x, rate), (y, slow_rate) = sound, slow
    seconds, confirmed, error = dwell[1] - dwell[0], readings is not None, None
    if confirmed:
        time, turns, variance = readings
        inside = (time >= dwell[0]) & (time <= dwell[1])
        beyond = (seconds - np.ptp(time[inside])) / 2 / (time[1] - time[0])
        curve, error = smoothed(turns[inside], variance[inside], beyond)
        track, error = Track(time[inside], curve), error / seconds
    at = np.linspace(dwell[0], dwell[1], 20 * int(seconds) + 2)
    speeds = track.hz(at)
    hz = float(track.turns(dwell[1]) - track.turns(dwell[0])) / seconds
    wander = float(speeds.max() - speeds.min()) / hz
    shaft = [line for line in lines if "mesh" not in line]
    where = np.array([line["at"] * (1 + ratio_error if line["of"] == "crank" else 1) for line in shaft])
    groups = []
    for i in np.argsort(where):
        if groups and (where[i] - where[groups[-1][-1]]) * hz * seconds < 1.5:
            groups[-1].append(i)
        else:
            groups.append([i])
    orders = [float(np.mean(where[g])) for g in groups]
    places = np.array(orders) * hz
    fit, moved = Fit(y, slow_rate, dwell, track, orders, []), np.inf
    for _ in range(3):
        if not confirmed or moved <= 0.2:
            break
        sharper, size = fit.wishes(track)
        moved = TURN * blades * size
        if moved > 0.02:
            track = sharper
            fit = Fit(y, slow_rate, dwell, track, orders, [])
    tones = other_lines(fit, track, dwell, hz, wander, places, np.abs(fit.complex), USABLE * slow_rate)
    first = round(dwell[0] * rate)
    high = steady_lines(x[first : round(dwell[1] * rate)], rate, max(1, min(8, seconds / 4)), USABLE * slow_rate, min(1000, USABLE * rate))
    every = np.array([line["at"] for line in lines]) * hz
    tones += [t + (False,) for t in high if np.all(np.abs(t[0] - every) > (wander + 0.01) * every)]
    beating = [t for t in tones if np.abs(places - t[0]).min() < 3 * slow_rate / fit.n][:4]
    if beating:
        more = [t[0] / hz for t in beating if t[3]]
        fit = Fit(y, slow_rate, dwell, track, orders + more, [t[0] for t in beating if not t[3]])
    result = [None] * len(lines)
    for group, reading in zip(groups, levels(fit, fit.left, slow_rate, places, confirmed)):
        for i in group:
            result[i] = reading, [f"{shaft[k]['of']} {shaft[k]['order']:g}" for k in group if k != i]
    for i, line in enumerate(lines):
        if "mesh" in line and line["at"] * hz < USABLE * rate:
            alone = Fit(x, rate, dwell, track, [line["at"]], [])
            result[i] = levels(alone, alone.left, rate, np.array([line["at"] * hz]), confirmed)[0], []
    document = []
    for line, entry in zip(lines, result):
        one = dict(of=line["of"], order=line["order"], propellerOrder=line["at"], frequencyHz=line["at"] * hz)
        if entry is None:
            folds = abs(line["at"] * hz - round(line["at"] * hz / rate) * rate)
            one.update(amplitude=None, beyondRange=True, foldsToHz=folds)
        else:
            (size, sigma, low, high_, detected), others = entry
            one.update(amplitude=float(size), standardError=float(sigma), ciLow=float(low), ciHigh=float(high_),
                       detected=detected, inseparableFrom=others)
        document.append(one)
    return dict(
        fromS=dwell[0], toS=dwell[1], propellerRpm=60 * hz, minPropellerRpm=60 * float(speeds.min()),
        maxPropellerRpm=60 * float(speeds.max()), standardErrorPropellerRpm=error and 60 * float(error), orders=document,
        unevenness=unevenness(lines, result, blades),
        unexplained=[dict(frequencyHz=t[0], amplitude=t[1], propellerOrder=t[0] / hz, followsSpeed=t[3]) for t in tones],
    )


def unevenness(lines, result, blades):
    sums = {True: [0.0, 0.0], False: [0.0, 0.0]}
    heard = False
    for line, entry in zip(lines, result):
        if line["of"] == "propeller" and entry is not None and not entry[1]:
            (size, sigma, _, _, detected), _ = entry
            sums[line["blade"]][0] += size**2
            sums[line["blade"]][1] += 4 * size**2 * sigma**2 + 4 * sigma**4
            heard |= line["blade"] and detected
    if not heard or sums[False][0] <= 0:
        return None
    value = np.sqrt(sums[False][0] / sums[True][0])
    error = np.hypot(*(np.sqrt(v) / (2 * s) for s, v in sums.values()))
    return dict(value=float(value), ciLow=float(value * np.exp(-1.96 * error)), ciHigh=float(value * np.exp(1.96 * error)))


# ---------------------------------------------------------------- the whole job


def main():
    file, installation, rpm = sys.argv[1], json.load(open(sys.argv[2])), float(sys.argv[3])
    lines, ratio, blades, exact = line_table(installation)
    comb = comb_of(lines)
    low, high = rpm / ratio / 60 * 0.95, rpm / ratio / 60 * 1.05
    reader = Reader(file)
    x, rate = reader.read(max(1000, max(line["at"] for line in lines) * high * 1.03))
    seconds = len(reader.samples) / reader.rate
    y, slow_rate = reduced(x, rate, comb[-1]["at"] * high * 1.03)

    frames = Frames(y, slow_rate, min(USABLE * slow_rate, comb[-1]["at"] * high * 1.02))
    grid = low * np.exp(np.arange(0, np.log(high / low) + 1e-3, 1e-3))
    every = np.arange(len(frames.centre))
    scores = comb_scores(frames, every, grid, comb)
    apart = every[:: int(np.ceil(frames.length / frames.hop - 1e-9))]
    hands = apart[0::2], apart[1::2]
    confirmed = stands_out(frames, hands, [path_through(frames, h, scores, grid, comb) for h in hands], comb)
    document = dict(file=file, sha256=reader.digest(), sampleRateHz=reader.rate, durationS=seconds, quality=reader.quality)
    if confirmed:
        path = path_through(frames, every, scores, grid, comb)
        ambiguous = rivals(frames, path, comb, low, high)
        track, readings, ratio_error = phase_locked(y, slow_rate, frames, path, comb, exact)
        dwells = find_dwells(track, seconds)
    else:
        ambiguous, readings, ratio_error, dwells = [], None, 0.0, [(0.0, seconds)]
        track = Track(np.array([0, seconds / 2, seconds]), np.array([0, seconds / 2, seconds]) * rpm / ratio / 60)
    document.update(confirmed=confirmed, rivalsPropellerRpm=[60 * r for r in ambiguous], ratioCorrection=ratio_error)
    document["dwells"] = [
        measured((x, rate), (y, slow_rate), lines, readings, track, dwell, ratio_error, blades)
        for dwell in dwells
    ]
    main_dwell = max(document["dwells"], key=lambda d: d["toS"] - d["fromS"], default=None)
    if main_dwell:
        document["engineRpm"] = main_dwell["propellerRpm"] * ratio
        document["standardErrorEngineRpm"] = (main_dwell["standardErrorPropellerRpm"] or 0) * ratio or None
    print(json.dumps(document, indent=2))


if __name__ == "__main__":
    main()
