#!/usr/bin/env python3
# How much lossy codecs change low tones: one round trip for each codec, bit rate and frequency.
# Needs Python with NumPy, and ffmpeg with its own AAC encoder, libmp3lame, libvorbis and libopus.
# Run: python3 measure.py > measured.csv
#
# Signal, invented: 30 s mono at 48 kHz; propeller 1x at f (amplitude 0.02), blade pass at 3 f (0.1), a firing line at
# 4.86 f (0.1) with four harmonics falling as 1/n, white noise of 0.01 rms (seed 1). The tone's amplitude is
# found by least squares over the middle 20 s before and after; the change of each is printed in per cent.
import os, subprocess, sys, tempfile
import numpy as np

RATE = 48000
CODECS = [
    ("aac", "m4a", ["-c:a", "aac"], [32, 64, 128]),
    ("mp3", "mp3", ["-c:a", "libmp3lame"], [32, 64, 128]),
    ("vorbis", "ogg", ["-c:a", "libvorbis"], [48, 64, 128]),
    ("opus", "opus", ["-c:a", "libopus"], [16, 32, 64]),
]
FREQUENCIES = [12, 16, 20, 25, 30, 40, 50, 65]


def signal(f, seed=1):
    t = np.arange(30 * RATE) / RATE
    x = 0.02 * np.sin(2 * np.pi * f * t) + 0.1 * np.sin(2 * np.pi * 3 * f * t + 1)
    for n in range(1, 6):
        x += 0.1 / n * np.sin(2 * np.pi * 4.86 * f * n * t + n)
    return x + 0.01 * np.random.default_rng(seed).standard_normal(len(t))


def amplitude(x, f, rate):
    a = int(5 * rate)
    x = x[a:a + int(20 * rate)]
    t = np.arange(len(x)) / rate
    basis = np.stack([np.sin(2 * np.pi * f * t), np.cos(2 * np.pi * f * t)], 1)
    return np.hypot(*np.linalg.lstsq(basis, x, rcond=None)[0])


def run(*words, data=None):
    return subprocess.run(["ffmpeg", "-hide_banner", "-loglevel", "error", "-threads", "1", *words],
                          input=data, stdout=subprocess.PIPE, check=True).stdout


print("codec,kbit/s,propeller 1x Hz,1x change %,blade pass Hz,blade pass change %")
for f in FREQUENCIES:
    x = signal(f)
    raw = (x * 32767).round().astype("<i2").tobytes()
    before = [amplitude(x, f, RATE), amplitude(x, 3 * f, RATE)]
    for codec, ending, words, rates in CODECS:
        for rate in rates:
            with tempfile.TemporaryDirectory() as folder:
                file = os.path.join(folder, "x." + ending)
                run("-f", "s16le", "-ar", str(RATE), "-ac", "1", "-i", "-", *words, "-b:a", f"{rate}k", file, data=raw)
                y = np.frombuffer(run("-i", file, "-f", "f32le", "-ar", str(RATE), "-ac", "1", "-"), "<f4")
            change = [100 * (amplitude(y, k * f, RATE) / b - 1) for k, b in zip((1, 3), before)]
            print(f"{codec},{rate},{f},{change[0]:.1f},{3 * f},{change[1]:.1f}", flush=True)
