package evenblade.rig;

/**
 * One line of one run: its strength at a steady speed (without any sensor), and how that strength breathes in this run.
 * The envelope is complex: amplitude factor and phase shift over time on the track's grid; null-free, 1 where steady.
 */
final class Line {
    /** Complex amplitude at the sensor's place, by engine rpm and axis: m/s² (SOUND: Pa-like, 1 = full scale). */
    interface Response {
        Phasor at(double engineRpm, Axis axis);
    }

    final LineId id;
    final Response response;
    final double[] envelopeRe;
    final double[] envelopeIm;

    Line(LineId id, Response response, double[] envelopeRe, double[] envelopeIm) {
        this.id = id;
        this.response = response;
        this.envelopeRe = envelopeRe;
        this.envelopeIm = envelopeIm;
    }

    /** A line whose strength swings by {@code depth} (standard deviation, share) with a memory. */
    static Line swinging(LineId id, Response response, SpeedTrack track, double depth, double memoryS, Dice dice) {
        double[] re = Wander.bounded(track.points(), SpeedTrack.STEP_S, memoryS, depth, dice);
        for (int i = 0; i < re.length; i++) {
            re[i] += 1;
        }
        return new Line(id, response, re, new double[re.length]);
    }
}
