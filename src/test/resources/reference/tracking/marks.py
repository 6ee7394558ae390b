# Reference values for tracking.MarksReferenceTest, made with numpy and scipy from the definitions alone:
#   python3 marks.py
# Marks are a multivariate normal seen in an orthonormal basis that every session's own zero is taken out of; chances are
# summed over all explanations by plain enumeration; variances of differences come from a pseudo-inverse.
import itertools
import numpy as np
from scipy.linalg import null_space
from scipy.stats import multivariate_normal

FACTORS = 0.4 * 1.25 ** np.arange(16)
WORTH, SMALL, LARGE, SLIP = 5, 1.5, 6, 5


class Marks:
    def __init__(self, sessions):
        """Each session: blades by position, marks by position (a list for repeats), standard error."""
        self.rows = [(s, p, blades[p], y, e) for s, (blades, marks, e) in enumerate(sessions) for p in range(len(blades))
                     for y in (marks[p] if isinstance(marks[p], list) else [marks[p]])]
        self.positions = len(sessions[0][0])
        self.names = []
        for blades, _, _ in sessions:
            self.names += [b for b in blades if b not in self.names]
        spreads = []
        for blades, marks, _ in sessions:
            means = [np.mean(m) for m in marks]
            spreads.append(max(means) - min(means))
        self.large = max(LARGE, max(spreads) / 2)
        weight = np.array([1 / r[4] for r in self.rows])
        zeros = np.stack([[w if r[0] == s else 0 for r, w in zip(self.rows, weight)] for s in range(len(sessions))])
        self.basis = null_space(zeros)  # of readings over their errors
        self.weight = weight
        self.y = self.basis.T @ (np.array([r[3] for r in self.rows]) * weight)

    def column(self, kind, which):
        hit = {"position": lambda k, r: r[1] == which, "blade": lambda k, r: r[2] == which, "slip": lambda k, r: k == which}[kind]
        return self.basis.T @ np.array([w if hit(k, r) else 0 for k, (r, w) in enumerate(zip(self.rows, self.weight))])

    def log(self, out):
        total = []
        for size in (SMALL, self.large):
            for f in FACTORS:
                cov = f**2 * np.eye(self.y.size)
                for kind, which in out:
                    x = self.column(kind, which)
                    cov = cov + (SLIP if kind == "slip" else size) ** 2 * np.outer(x, x)
                total.append(-WORTH * np.log(f) - WORTH / (2 * f * f) + multivariate_normal.logpdf(self.y, np.zeros(self.y.size), cov))
        return np.logaddexp.reduce(total) - np.log(2)

    def chances(self):
        b, p, n = len(self.names), self.positions, len(self.rows)
        told = n - len({r[0] for r in self.rows})

        def groups(kind, items):
            few = len(items) < 4
            one = 0.85 if few else 0.7
            for i in items:
                yield [(kind, i)], one / len(items)
            if not few:
                pairs = list(itertools.combinations(items, 2))
                for pair in pairs:
                    yield [(kind, i) for i in pair], 0.2 / len(pairs)
            yield [(kind, i) for i in items], 1 - one - (0 if few else 0.2)

        priors = [("nothing", [], 0.5)]
        priors += [("blades", g, 0.2 * s) for g, s in groups("blade", self.names)]
        priors += [("positions", g, 0.2 * s) for g, s in groups("position", list(range(p)))]
        priors += [("both", [("blade", i), ("position", j)], 0.1 * 0.8 / b / p) for i in self.names for j in range(p)]
        priors += [("both", [("blade", i) for i in self.names] + [("position", j) for j in range(p)], 0.1 * 0.2)]
        slips = 1 - (1 - (0.005 if b == 2 else 0.02)) ** n if told > 2 else 0
        logs = []
        for family, out, share in priors:
            logs.append((family, None, np.log(share * (1 - slips)) + self.log(out)))
            if slips:
                for k in range(n):
                    logs.append((family, k, np.log(share * slips / n) + self.log(out + [("slip", k)])))
        top = max(x[2] for x in logs)
        whole = sum(np.exp(x[2] - top) for x in logs)
        result = {}
        for family, slip, value in logs:
            c = np.exp(value - top) / whole
            result[family] = result.get(family, 0) + float(c)
            if slip is not None:
                result["slip"] = result.get("slip", 0) + float(c)
        return result

    def variances(self, more=None):
        rows = [(s, p, b, e) for s, p, b, _, e in self.rows]
        if more:
            rows += [(99, p, b, more[1]) for p, b in enumerate(more[0])]
        zeros = sorted({r[0] for r in rows})
        x = np.array([[r[0] == z for z in zeros] + [r[1] == p for p in range(self.positions)] + [r[2] == b for b in self.names]
                      for r in rows], float)
        w = np.array([1 / r[3] ** 2 for r in rows])
        cov = np.linalg.pinv(x.T @ (x * w[:, None]))
        z = len(zeros)
        at = lambda i, j: cov[i, i] + cov[j, j] - 2 * cov[i, j]
        spans = (range(z, z + self.positions), range(z + self.positions, x.shape[1]))
        return max(at(i, j) for span in spans for i, j in itertools.combinations(span, 2))


three = Marks([("ABC", [0.1234, [3.4567, 3.1289], -0.2345], 0.4), ("CAB", [0.3456, 0.0567, 2.8913], 0.5)])
print("three blades", three.chances())
for out in ([("blade", "B")], [("position", 1)], [("blade", "B"), ("position", 2)], [("blade", "B"), ("slip", 3)]):
    print("  ", out, three.log(out) - three.log([]))
four = Marks([("ABCD", [0.1234, 2.4567, -0.2345, 1.5432], 0.6), ("BCDA", [1.3456, -1.0567, 2.8913, 0.4321], 0.6)])
print("four blades", four.chances())
far = Marks([("ABC", [0.1234, 17.4567, -0.2345], 0.4), ("CAB", [16.3456, 0.0567, 0.8913], 0.5)])
print("gross", far.chances())
print("   position 2", far.log([("position", 1)]) - far.log([]))
two = Marks([("AB", [0.1234, 1.9567], 0.4), ("BA", [0.3456, 0.0567], 0.5), ("AB", [0.1111, 2.3456], 0.5)])
print("two blades", two.chances())
print("worst variance with ABC CAB", three.variances(), "and BAC at 0.3", three.variances(("BAC", 0.3)))
