#!/usr/bin/env python3
"""Makes the sound files beside it: the tests' two sines, written by SoX and flac, so that the readers
are checked against writers that aren't ours. Needs python3, sox and flac; the tests don't."""
import math, os, struct, subprocess

RATE, FRAMES = 2000, 3000
here = os.path.dirname(os.path.abspath(__file__))
raw = os.path.join(here, "signal.s32")


def sample(frame, lane):
    return 0.5 * math.sin(2 * math.pi * (37.3 + 11 * lane) * frame / RATE)


with open(raw, "wb") as f:
    for i in range(FRAMES):
        for lane in (0, 1):
            f.write(struct.pack("<i", round(sample(i, lane) * 2**31)))


def sox(name, *how):
    # -D: no dither, so that every sample is known to half a step.
    subprocess.run(["sox", "-D", "-t", "raw", "-r", str(RATE), "-e", "signed", "-b", "32", "-c", "2", raw,
                    *how, os.path.join(here, name)], check=True, stderr=subprocess.DEVNULL)


for bits in (8, 16, 24, 32):
    sox(f"signed{bits}.aiff", "-b", str(bits))
    sox(f"signed{bits}.au", "-e", "signed", "-b", str(bits))
sox("float32.aifc", "-e", "float", "-b", "32")
for bits in (32, 64):
    sox(f"float{bits}.au", "-e", "float", "-b", str(bits))
for bits in (8, 16, 24):
    sox(f"signed{bits}.flac", "-b", str(bits))
sox("extensible24.wav", "-b", "24")
sox("plain16.wav", "-b", "16")
# Short blocks, so that a file cut off still has whole ones before the cut.
subprocess.run(["flac", "-s", "-f", "-b", "576", "--no-padding", "-o", os.path.join(here, "blocks16.flac"),
                os.path.join(here, "plain16.wav")], check=True)
os.remove(os.path.join(here, "plain16.wav"))
sox("ulaw.au", "-e", "u-law", "-b", "8")
os.remove(raw)
