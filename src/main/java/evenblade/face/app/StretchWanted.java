package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.input.recording.BlockSink;
import evenblade.measure.lines.LineSpectrum;
import java.util.Arrays;
import java.util.Locale;

/**
 * The part of a recording that was asked for.
 *
 * @param fromS seconds from the recording's start
 * @param toS its end, at least {@link LineSpectrum#LEAST_S} later
 */
record StretchWanted(double fromS, double toS) {
    /** A recording's length is shown to a tenth of a second: half of that beyond its end is still its end. */
    private static final double ROUNDING_S = 0.05;

    /**
     * Where the request's stretch lies in a recording.
     *
     * @param startS of the recording's first sample
     * @param endS of its end
     * @throws BadInput where it reaches beyond the recording, runs backwards or is too short
     */
    static StretchWanted of(SpectrumRequest request, double startS, double endS) {
        double from = request.fromS().orElse(startS);
        double to = request.toS().orElse(endS);
        String found = String.format(Locale.ROOT, "a stretch from %s s to %s s", number(from), number(to));
        if (!(from >= startS - ROUNDING_S && to <= endS + ROUNDING_S)) {
            throw BadInput.in(request.file())
                    .found(
                            found,
                            String.format(
                                    Locale.ROOT,
                                    "one within the recording, which goes from %.1f s to %.1f s",
                                    startS,
                                    endS));
        }
        double inside = Math.min(endS, to) - Math.max(startS, from);
        // A hair is left for numbers such as 0.1 that no double holds.
        if (!(inside >= LineSpectrum.LEAST_S * (1 - 1e-9))) {
            throw BadInput.in(request.file())
                    .found(
                            found,
                            String.format(Locale.ROOT, "an end at least %.0f s after the start", LineSpectrum.LEAST_S));
        }
        return new StretchWanted(Math.max(startS, from), Math.min(endS, to));
    }

    private static String number(double seconds) {
        return seconds == Math.rint(seconds)
                ? String.format(Locale.ROOT, "%.0f", seconds)
                : String.format(Locale.ROOT, "%.2f", seconds);
    }

    /** Hands on only the frames of this stretch. */
    BlockSink cut(BlockSink sink, double rateHz, int channels) {
        long first = Math.round(fromS * rateHz);
        long end = Math.round(toS * rateHz);
        long[] done = {0};
        return (interleaved, frames) -> {
            long skipped = Math.max(0, Math.min(frames, first - done[0]));
            long kept = Math.max(0, Math.min(frames, end - done[0]));
            done[0] += frames;
            if (skipped == 0 && kept == frames) {
                sink.accept(interleaved, frames);
            } else if (kept > skipped) {
                sink.accept(Arrays.copyOfRange(interleaved, (int) skipped * channels, (int) kept * channels), (int)
                        (kept - skipped));
            }
        };
    }
}
