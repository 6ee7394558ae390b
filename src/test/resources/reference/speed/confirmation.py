# Reference values for speed.ConfirmationTest and speed.OtherMachineTest, made with numpy from the definitions alone:
#   python3 confirmation.py
# Spectra are lists of lines (hertz, evidence), each a parabola as wide as the resolution; speeds are tried on a grid four
# times as fine as the program's.
import numpy as np

RESOLUTION, LOWEST, HIGHEST, STANDS, FULL = 1 / 1.5, 2.0, 600.0, 0.7, 4.2


def credit(lines, hz):
    evidence = np.zeros_like(hz)
    for at, height in lines:
        evidence = np.maximum(evidence, height * (1 - ((hz - at) / RESOLUTION) ** 2))
    seen = (hz >= LOWEST) & (hz <= HIGHEST) & (evidence > STANDS)
    return np.where(seen, np.minimum(1, evidence / FULL), 0)


def score(lines, table, hz):
    return sum(weight * credit(lines, order * hz) for order, weight in table)


def grid(from_hz, to_hz):
    return from_hz * np.exp(np.arange(0, np.log(to_hz / from_hz) + 1e-4, 1e-4))


def bonus(hz, entered):
    return 0 * hz if entered is None else np.exp(-((np.log(hz / entered) / 0.08) ** 2) / 2)


def two_shafts(lines, propeller, crank, from_hz, to_hz, entered=None):
    """Speed, credit, wrong ratios (of 300 within a factor of e^0.5, those by 1.2 % and less left out) as good, and all."""
    hz = grid(from_hz, to_hz)
    turned = score(lines, crank, hz) + bonus(hz, entered)
    both = turned + score(lines, propeller, hz)
    best = int(np.argmax(both))
    wrong = [off for off in np.linspace(-0.5, 0.5, 300) if abs(off) > 0.012]
    as_good = sum((turned + score(lines, propeller, hz / np.exp(off))).max() >= both[best] for off in wrong)
    return hz[best], both[best] - bonus(hz[best], entered), as_good, len(wrong)


class JavaRandom:
    """java.util.Random, whose sequence is laid down."""

    def __init__(self, seed):
        self.state = (seed ^ 0x5DEECE66D) & ((1 << 48) - 1)

    def next(self, bits):
        self.state = (self.state * 0x5DEECE66D + 0xB) & ((1 << 48) - 1)
        return self.state >> (48 - bits)

    def double(self):
        high = self.next(26)
        return ((high << 27) + self.next(27)) / (1 << 53)


def scrambled(table, dice):
    return [(order * np.exp(0.12 * (2 * dice.double() - 1)), weight) for order, weight in table]


def one_shaft(lines, table, from_hz, to_hz, entered):
    hz = grid(from_hz, to_hz)
    right = score(lines, table, hz) + bonus(hz, entered)
    best = int(np.argmax(right))
    dice = JavaRandom(len(table))
    as_good = sum(
        (score(lines, scrambled(table, dice), hz) + bonus(hz, entered)).max() >= right[best] for _ in range(200)
    )
    return hz[best], right[best] - bonus(hz[best], entered), as_good


def other_machine(lines):
    """How much a series of eight comes to, and how many of a hundred scrambled ones do as well."""
    hz = grid(8, 250)
    series = [(float(k), 1.0) for k in range(1, 9)]
    most = score(lines, series, hz).max()
    dice = JavaRandom(8)
    return most, sum(score(lines, scrambled(series, dice), hz).max() >= most for _ in range(100))


# Three blades, 2.43, four-stroke four; five blades, electric, direct.
PROPELLER = [(1, 0.9), (2, 0.5), (3, 1.5), (4, 0.5), (5, 0.5), (6, 1.1), (9, 0.8), (12, 0.6)]
CRANK = [(0.5, 0.4), (1, 0.9), (1.5, 0.4), (2, 1.5), (2.5, 0.4), (3, 0.5), (3.5, 0.4), (4, 1.1), (6, 0.8), (8, 0.6)]
GEARED = PROPELLER, [(2.43 * order, weight) for order, weight in CRANK]
FAN = [(1, 0.9), (2, 0.5), (3, 0.5), (4, 0.5), (5, 1.5), (6, 0.5), (7, 0.5), (8, 0.5), (9, 0.5), (10, 1.1)]

room_a = [(120.4, 3.6), (198.9, 1.7), (40.8, 3.5), (15.3, 3.4), (213.6, 2.4), (41.2, 1.8), (35.1, 2.3), (80.6, 2.6),
          (413.7, 3.3), (119.3, 3.9), (30.7, 1.5), (115.5, 1.1), (16.9, 2.5), (70.9, 3.7)]
own = [(20, 2.5), (60, 3.4), (48.6, 1.5), (97.2, 3.1)]
print("two shafts in a room with lines", two_shafts(own + room_a, *GEARED, 15, 30))

ends = [(20, 3), (60, 3), (120, 3), (48.6, 3.5), (97.2, 3.5), (194.4, 3.5), (32.92, 4), (98.76, 4), (197.51, 4),
        (12.15, 4), (36.45, 4), (72.91, 4)]
print("two more propellers, e^0.4983 as fast and as slow", two_shafts(ends, *GEARED, 19.9, 20.1))

room_b = [(193.7, 3.3), (71.2, 1.8), (14.5, 2.1), (49.2, 1.1), (14.2, 3.9), (114.3, 1.7), (53.9, 3.8), (266.8, 3.4)]
room_c = [(77.0, 2.0), (43.0, 2.1), (363.9, 2.8), (123.3, 2.0), (125.7, 1.4), (14.3, 3.5), (12.4, 3.8), (209.0, 3.3)]
room_d = [(132.0, 2.9), (18.7, 1.3), (114.7, 3.5), (24.1, 1.6), (142.7, 2.4), (50.4, 2.0), (15.0, 2.3), (34.0, 2.1), (77.6, 3.0), (103.9, 3.2)]
fan = [(20, 2.6), (100, 3.2), (80, 3)]
for room in room_b, room_c, room_d:
    print("one shaft", one_shaft(fan + room, FAN, 12, 40, 21))


def comb(lines):
    return [(37.3 * k, 3.5 - 0.2 * k) for k in range(1, lines + 1)]


chance_a = [(53.3, 3.9), (52.0, 3.3), (270.9, 2.1), (74.3, 2.1), (27.6, 2.4), (41.2, 1.7), (34.8, 1.6), (229.0, 2.2), (43.1, 2.7)]
chance_b = [(271.2, 1.8), (121.8, 3.3), (170.9, 3.7), (263.3, 3.7), (21.7, 2.3), (85.5, 1.2), (20.3, 3.4), (380.5, 3.3), (51.5, 3.0)]
chance_c = [(134.8, 1.8), (22.6, 1.0), (228.6, 3.6), (123.1, 3.1), (101.9, 3.7), (230.4, 1.0), (260.9, 1.1), (178.0, 1.5), (265.5, 2.6)]
chance_d = [(350.6, 1.6), (239.3, 1.4), (92.9, 1.4), (157.6, 3.4), (71.6, 3.8), (237.0, 2.0), (112.2, 3.2), (238.3, 3.7), (30.9, 3.2)]
print("other machine", other_machine(comb(4) + chance_a), other_machine(comb(4) + chance_b))
print("other machine", other_machine(comb(3) + chance_c), other_machine(comb(4) + chance_d))
