#!/usr/bin/env python3
"""Times `evenblade orders` as a whole process against two others on the same file, in one run.

    /usr/bin/python3 orders_timing.py [ROUNDS]        after `mvn -B -q package`

The file: ten minutes of invented 48 kHz mono sound, 16 bit, speed wandering by 1 %. The others: starting
the virtual machine and reading the same file through the same reader (hash and quality included), and
the job scripted with SciPy (src/test/python/orders_by_scipy.py). Rounds take turns, so that other work on
the machine hits all three. Wall time and processor time (user and system, children included) are given,
best and median. At the end the two answers are held against each other: speed, amplitudes and intervals,
lines detected, unevenness. The script is run by the same Python that runs this file. Where the packages were
made (`mvn -B -Pinstaller -DskipTests package`), the program as it is installed takes its turns too.
"""

import json
import os
import pathlib
import resource
import statistics
import subprocess
import sys
import tempfile
import time

import numpy as np
import scipy
from scipy.io import wavfile

ROOT = pathlib.Path(__file__).resolve().parents[3]
JAR = ROOT / "target/evenblade.jar"
INSTALLED = ROOT / "target/installer/evenblade/bin/evenblade"
INSTALLATION = """{ "name": "invented",
  "engine": { "cycle": "four-stroke", "cylinders": 4, "idleRpm": 1600, "maxRpm": 5600 },
  "reduction": { "drivingTeeth": 21, "drivenTeeth": 51, "kind": "gear" },
  "propeller": { "blades": 3 } }"""


def invent(file, seconds=600, rate=48000):
    rng = np.random.default_rng(1)
    t = np.arange(seconds * rate) / rate
    speed = 32.92 * (1 + 0.006 * np.sin(2 * np.pi * 0.05 * t) + 0.004 * np.sin(2 * np.pi * 0.17 * t + 1))
    phase = 2 * np.pi * np.cumsum(speed) / rate
    x = 0.02 * rng.standard_normal(len(t))
    for order, amplitude in [(1, 0.1), (2, 0.02), (3, 0.15), (6, 0.05), (51 / 21, 0.06), (102 / 21, 0.12), (204 / 21, 0.04)]:
        x += amplitude * np.cos(order * phase + order)
    wavfile.write(file, rate, np.round(x * 0.9 * 32767).astype(np.int16))


def timed(command):
    before, start = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    wall, after = time.perf_counter() - start, resource.getrusage(resource.RUSAGE_CHILDREN)
    return wall, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main():
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    with tempfile.TemporaryDirectory() as folder:
        wav, installation = f"{folder}/ten-minutes.wav", f"{folder}/installation.json"
        invent(wav)
        pathlib.Path(installation).write_text(INSTALLATION)
        classes = f"{JAR}{os.pathsep}{ROOT / 'target/test-classes'}"
        jobs = {
            "start and read": ["java", "-cp", classes, "evenblade.bench.DecodeTiming", wav, "1"],
            "evenblade orders": ["java", "-jar", str(JAR), "orders", wav, "--installation", installation,
                                 "--engine-rpm", "4800", "--json"],
            "SciPy": [sys.executable, str(ROOT / "src/test/python/orders_by_scipy.py"), wav, installation, "4800"],
        }
        if INSTALLED.exists():
            jobs["installed orders"] = [str(INSTALLED), *jobs["evenblade orders"][3:]]
            jobs["installed --help"] = [str(INSTALLED), "--help"]
            jobs["evenblade --help"] = ["java", "-jar", str(JAR), "--help"]
        times = {name: [] for name in jobs}
        for _ in range(rounds):
            for name, command in jobs.items():
                times[name].append(timed(command))
        answers = [json.loads(subprocess.run(jobs[name], check=True, capture_output=True).stdout)
                   for name in ("evenblade orders", "SciPy")]
    print(f"load {os.getloadavg()[0]:.1f}, {rounds} rounds")
    for name, pairs in times.items():
        wall, cpu = zip(*pairs)
        print(f"{name:18s} wall best {min(wall):6.2f} median {statistics.median(wall):6.2f} s"
              f"   processor best {min(cpu):6.2f} median {statistics.median(cpu):6.2f} s")
    print(f"Python {sys.version.split()[0]} ({sys.executable}), NumPy {np.__version__}, SciPy {scipy.__version__}")
    agree(*answers)


FILTERS = 2 * 10 ** (0.005 / 20) - 2  # either answer's filters are flat within 0.005 dB (docs/figures.md), which no error holds


def agree(ours, scripted):
    """Stops with a word where the two answers differ by more than their errors and their filters allow."""
    speed = ours["speed"]
    apart = abs(speed["engineRpm"] - scripted["engineRpm"])
    assert apart < 4 * np.hypot(speed["standardErrorEngineRpm"], scripted["standardErrorEngineRpm"]), apart
    assert ours["recording"]["sha256"] == scripted["sha256"]
    worst = 0.0
    one, other = ours["dwells"][0], scripted["dwells"][0]
    for a, b in zip(one["orders"], other["orders"], strict=True):
        assert a["order"] == b["order"] and a["detected"] == b["detected"], (a["name"], a["detected"], b["detected"])
        flat = FILTERS * b["amplitude"]
        off = max(0, abs(a["amplitude"] - b["amplitude"]) - flat) / np.hypot(a["standardError"], b["standardError"])
        worst = max(worst, off)
        assert off < 3, (a["name"], off)
        assert max(a["ciLow"], b["ciLow"]) <= min(a["ciHigh"], b["ciHigh"]) + flat, a["name"]
        assert 0.5 < a["standardError"] / b["standardError"] < 2, a["name"]
    assert abs(one["unevenness"] / other["unevenness"]["value"] - 1) < 0.01
    print(f"the answers agree: speeds {apart:.4f} rpm apart, amplitudes at most {worst:.1f} standard errors beside what the filters may do")


if __name__ == "__main__":
    main()
