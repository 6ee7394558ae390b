#!/bin/sh
# Makes the small files beside it (stereo.flac apart: two tones, 24 bit) from an invented signal: 3 s, mono; tones of 30, 90 and 146 Hz in noise.
# Encoders: ffmpeg's own AAC, libmp3lame, libvorbis, libopus. Run in this folder.
set -e
make() { ffmpeg -hide_banner -loglevel error -y -f lavfi -i "aevalsrc=0.05*sin(2*PI*30*t)+0.2*sin(2*PI*90*t)+0.15*sin(2*PI*146*t)+0.01*(random(0)-0.5):s=44100:d=3" "$@"; }
make -c:a aac -b:a 48k -metadata title=invented tones.m4a
make -f lavfi -i "testsrc=s=32x32:r=2:d=3" -map 0:a -map 1:v -c:a aac -b:a 48k -c:v mpeg4 -b:v 20k tones.mov
make -c:a libmp3lame -b:a 48k -metadata title=invented tones.mp3
make -c:a libvorbis -b:a 64k -metadata title=invented tones.ogg
make -c:a libopus -b:a 24k -metadata title=invented tones.opus
make -c:a flac -sample_fmt s16 -metadata title=invented tones.flac
ffmpeg -hide_banner -loglevel error -y -f lavfi -i "aevalsrc=0.3*sin(2*PI*97*t)|0.2*sin(2*PI*61*t):s=2000:d=1.1" -c:a flac -sample_fmt s32 -bits_per_raw_sample 24 -fflags +bitexact -map_metadata -1 stereo.flac
