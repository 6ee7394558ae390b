# Reference values for balance.IntervalReferenceTest, made with numpy and scipy from the definitions alone:
#   python3 intervals.py
# Errors are carried by numeric slopes (central differences) or by brute search, never by a formula for them.
import numpy as np
from scipy.optimize import minimize_scalar, brentq
from scipy.stats import t as student

DEG = np.pi / 180


def at(length, degrees):
    return length * np.exp(1j * degrees * DEG)


# A machine: line at rest, what one g.mm adds, and the covariance of (V0 re, V0 im, alpha re, alpha im).
V0 = at(4.0, 35)
ALPHA = at(0.005, 70)
LINES = np.array(
    [[9.0e-3, 1.0e-3, -8e-6, 2e-6], [1.0e-3, 7.0e-3, 1e-6, -5e-6], [-8e-6, 1e-6, 3e-8, 4e-9], [2e-6, -5e-6, 4e-9, 2e-8]]
)
SCATTER = np.array(
    [[4.0e-2, -6e-3, -2.4e-5, 9e-6], [-6e-3, 3.0e-2, 5e-6, -1.5e-5], [-2.4e-5, 5e-6, 1.2e-7, -1e-8], [9e-6, -1.5e-5, -1e-8, 7e-8]]
)
WEIGHTS = np.diag([0, 0, 6e-9, 9e-9])
ALL = LINES + SCATTER + WEIGHTS
SHARE = 0.04  # scatter from run to run
FREEDOM = 12  # that it is known with


def covariance(w, c):
    """Of V0 + alpha.w, by numeric slopes."""
    x = np.array([V0.real, V0.imag, ALPHA.real, ALPHA.imag])
    slopes = np.zeros((2, 4))
    for k in range(4):
        h = 1e-3 * max(abs(x[k]), 1e-3)
        ends = []
        for s in (h, -h):
            y = x.copy()
            y[k] += s
            ends.append(complex(y[0], y[1]) + complex(y[2], y[3]) * w)
        d = (ends[0] - ends[1]) / (2 * h)
        slopes[:, k] = d.real, d.imag
    return slopes @ c @ slopes.T


C = -V0 / ALPHA
print("correction", abs(C), np.angle(C) / DEG % 360)
w = at(700, 200)
print("line at 700 g.mm, 200 deg", V0 + ALPHA * w, covariance(w, ALL).tolist())

# What a run with 10 g +- 0.3 g at 70 mm, 200 deg and 4 g +- 0.1 g at 50 mm, 320 deg will read.
pair = [(10, 70, 200, 0.3), (4, 50, 320, 0.1)]
total = sum(at(m * r, a) for m, r, a, e in pair)
spread = covariance(total, ALL)
for m, r, a, e in pair:
    for up, down in (
        (at((m + e) * r, a), at((m - e) * r, a)),
        (2000 * at(m * r, a + 1e-3), 2000 * at(m * r, a - 1e-3)),  # 2 deg along the tangent
    ):
        d = ALPHA * (up - down) / 2
        part = np.array([d.real, d.imag])
        spread = spread + np.outer(part, part)
line = V0 + ALPHA * total
spread = spread + SHARE**2 * (abs(line) ** 2 + np.trace(spread)) * np.eye(2)  # mean square of the line, errors included
print("predicted", line, spread.tolist())

# Degrees of freedom after Satterthwaite, of the correction and of alpha alone.
whole = np.trace(covariance(C, ALL))
part = np.trace(covariance(C, SCATTER))
nu = FREEDOM * (whole / part) ** 2
print("freedom", nu, "reach", student.ppf(0.975, nu), "widening", student.ppf(0.975, nu) / 1.959963984540054)
p = np.trace(SCATTER[2:, 2:])
q = p + np.trace(LINES[2:, 2:])
print("freedom of readings", FREEDOM * (q / p) ** 2)
e = (LINES + SCATTER)[2:, 2:]
a = np.array([ALPHA.real, ALPHA.imag])
print("trial effect", np.sqrt(a @ np.linalg.inv(e) @ a))

# Interval of the correction: masses and angles with which V0 + alpha.W may be nothing.
limit = student.ppf(0.975, nu) ** 2


def misfit(size, degrees):
    w = at(size, degrees)
    v = V0 + ALPHA * w
    d = np.array([v.real, v.imag])
    return d @ np.linalg.inv(covariance(w, ALL)) @ d


angle = np.angle(C) / DEG


def at_mass(size):
    return minimize_scalar(lambda d: misfit(size, d), bounds=(angle - 100, angle + 100), method="bounded", options={"xatol": 1e-9}).fun


def at_angle(d):
    return minimize_scalar(lambda m: misfit(m, d), bounds=(0, 6 * abs(C)), method="bounded", options={"xatol": 1e-7}).fun


print(
    "interval of mass",
    brentq(lambda m: at_mass(m) - limit, 0.2 * abs(C), abs(C)),
    brentq(lambda m: at_mass(m) - limit, abs(C), 5 * abs(C)),
)
print(
    "interval of angle, below and above",
    angle - brentq(lambda d: at_angle(d) - limit, angle - 80, angle),
    brentq(lambda d: at_angle(d) - limit, angle, angle + 80) - angle,
)
line = covariance(C, ALL)
turn = ALPHA * C / abs(ALPHA * C)
for name, u in (("mass", turn), ("across", turn * 1j)):
    d = np.array([u.real, u.imag])
    print("standard error", name, np.sqrt(d @ line @ d) / abs(ALPHA))
print("in degrees", np.sqrt(d @ line @ d) / abs(ALPHA) / abs(C) / DEG)

# Amplitudes alone: every mass and angle is tried, the line at rest solved for at each.
runs = [(4.1, 0.06, None), (2.75, 0.05, (9, 60, 100)), (5.0, 0.08, (11, 55, 230)), (6.3, 0.04, (7, 70, 330)), (5.3, 0.07, (12, 60, 60))]
print("amplitudes of the machine", [float(abs(V0 + ALPHA * (at(on[0] * on[1], on[2]) if on else 0))) for _, _, on in runs])
variances = []
for amplitude, error, on in runs:
    w = at(on[0] * on[1], on[2]) if on else 0
    length = abs(V0 + ALPHA * w)
    v = error**2 + SHARE**2 * (length**2 + (0.25 * abs(V0)) ** 2)
    if on:
        v += ((abs(V0 + ALPHA * at(on[0] * on[1], on[2] + 1e-3)) - abs(V0 + ALPHA * at(on[0] * on[1], on[2] - 1e-3))) * 1000) ** 2
    variances.append(v)
print("variances of amplitudes", [float(v) for v in variances])


def amplitudes(size, degrees):
    c = at(size, degrees)
    p = np.array([abs(1 - (at(on[0] * on[1], on[2]) if on else 0) / c) for _, _, on in runs])
    t = np.array([r[0] for r in runs])
    s = 1 / np.sqrt(np.array(variances))
    x, *_ = np.linalg.lstsq((p * s)[:, None], t * s, rcond=None)
    return np.sum((t * s - p * s * x[0]) ** 2)


sizes = abs(C) * np.exp(np.linspace(np.log(0.25), np.log(4), 1201))
turns = np.arange(-120, 120.01, 0.25)
table = np.array([[amplitudes(m, angle + d) for d in turns] for m in sizes])
inside = table <= table.min() + limit
held = sizes[inside.any(axis=1)]
bent = turns[inside.any(axis=0)]
print("amplitudes alone: least misfit", table.min(), "mass", held[0], held[-1], "turns", bent[0], bent[-1])

# Squares of amplitudes: O^2 + a^2 W^2 + X Wx + Y Wy, each weighted by the error of its square.
rows, squares = [], []
for amplitude, error, on in runs:
    w = at(on[0] * on[1], on[2]) if on else 0
    half = 1e-4
    longest = max(r[0] for r in runs)
    kept = max(amplitude, 0.05 * longest)
    sigma = np.hypot(error, 0.05 * kept) * ((kept + half) ** 2 - (kept - half) ** 2) / (2 * half)
    w = complex(w)
    rows.append(np.array([1, abs(w) ** 2, w.real, w.imag]) / sigma)
    squares.append(amplitude**2 / sigma)
scale = np.array([1, 1e5, 1e3, 1e3])
x = np.linalg.lstsq(np.array(rows) / scale, np.array(squares), rcond=None)[0] / scale
print("squares: O, a", np.sqrt(x[0]), np.sqrt(x[1]))
c = -np.sqrt(x[0] / x[1]) * (x[2] + 1j * x[3]) / abs(x[2] + 1j * x[3])
print("correction", abs(c), np.angle(c) / DEG % 360, "closure", np.hypot(x[2], x[3]) / 2 / np.sqrt(x[0] * x[1]))
alpha = -np.sqrt(x[0]) / c
print("alpha", alpha.real, alpha.imag)
