# Reference values for tie.AmplitudeReferenceTest, made with numpy and scipy from the definitions alone:
#   python3 amplitudes.py
# Amplitudes |c + k.T| are fitted by least squares from many starts; slopes are numeric; F-tests by scipy's distribution.
import numpy as np
from scipy.optimize import least_squares
from scipy.stats import f as fisher

DEG = np.pi / 180
TRACKS = np.array([m * np.exp(1j * a * DEG) for m, a in [(1, 0), (1.5, 70), (0.8, 160), (1.2, 230), (1.7, 300), (0.4, 20)]])


def model(p):
    return np.abs(p[0] + (p[1] + 1j * p[2]) * TRACKS)


def best(amplitudes, sigma, free):
    fits = []
    for c in (0.1, 0.5, 1, 2):
        for a in range(0, 360, 15):
            for k in (0.05, 0.3, 1):
                full = np.array([c, k * np.cos(a * DEG), k * np.sin(a * DEG)])

                def rest(q):
                    p = np.zeros(3)
                    p[free] = q
                    return (model(p) - amplitudes) / sigma

                fits.append(least_squares(rest, full[free], xtol=1e-15, ftol=1e-15, gtol=1e-15))
    fit = min(fits, key=lambda x: x.cost)
    p = np.zeros(3)
    p[free] = fit.x
    return p, 2 * fit.cost, fit.jac


def report(name, amplitudes, sigma):
    p, misfit, jac = best(amplitudes, sigma, [0, 1, 2])
    spare = len(TRACKS) - 3
    # Stated errors count as five readings.
    dof = 5 + spare
    variance = (5 + misfit) / dof
    cov = np.linalg.inv(jac.T @ jac) * variance
    u = np.array([0, p[1], p[2]]) / np.hypot(p[1], p[2])
    print(name, "c, |k|", abs(p[0]), np.hypot(p[1], p[2]), "misfit", misfit, "errors", np.sqrt(cov[0, 0]), np.sqrt(u @ cov @ u))
    for what, free in (("no track", [0]), ("nothing left", [1])):
        _, other, _ = best(amplitudes, sigma, free)
        gained = 3 - len(free)
        print("  ", what, other, "chance", fisher.sf((other - misfit) / gained / variance, gained, dof),
              "if both were added", fisher.sf((other + misfit) / gained / variance, gained, dof),
              "with four gained", fisher.sf((other - misfit) / 4 / variance, 4, dof),
              "with stated errors", fisher.sf((other - misfit) / gained, gained, 1e5))


truth = np.abs(2 + 0.5 * np.exp(40j * DEG) * TRACKS)
off = np.array([0.03, -0.04, 0.02, 0.05, -0.03, -0.02])
report("scattered", truth + off, 0.005)
for k in (0.030, 0.036):
    report("track does %.3f" % k, np.abs(2 + k * np.exp(40j * DEG) * TRACKS) + 0.6 * off, 0.02)
