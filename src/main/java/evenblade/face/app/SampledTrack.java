package evenblade.face.app;

import evenblade.input.recording.Series;
import evenblade.measure.speed.SpeedTrack;

/**
 * A speed that was read at even steps and kept so, straight between them: for pictures of the speed.
 *
 * @param fromS first time
 * @param toS last time
 * @param propellerHz speed at even steps from the first time to the last, at least 2
 */
record SampledTrack(double fromS, double toS, Series propellerHz) implements SpeedTrack {
    private static final int POINTS = 2000; // more than a picture has pixels across

    SampledTrack {
        if (propellerHz.size() < 2 || !(toS >= fromS)) {
            throw new IllegalArgumentException(
                    "a track of " + propellerHz.size() + " speeds from " + fromS + " to " + toS + " s");
        }
    }

    static SampledTrack of(SpeedTrack track) {
        if (track instanceof SampledTrack sampled) {
            return sampled;
        }
        double[] hz = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            hz[i] = track.propellerHzAt(track.fromS() + i * (track.toS() - track.fromS()) / (POINTS - 1));
        }
        return new SampledTrack(track.fromS(), track.toS(), Series.of(hz));
    }

    /** Step by step, as the speed runs straight between its points. */
    @Override
    public double revolutionsAt(double timeS) {
        double stepS = (toS - fromS) / (propellerHz.size() - 1);
        double turned = 0;
        double at = fromS;
        while (at + stepS < timeS && at + stepS < toS) {
            turned += stepS * (propellerHzAt(at) + propellerHzAt(at + stepS)) / 2;
            at += stepS;
        }
        return turned + (timeS - at) * (propellerHzAt(at) + propellerHzAt(timeS)) / 2;
    }

    @Override
    public double propellerHzAt(double timeS) {
        double share = toS > fromS ? (timeS - fromS) / (toS - fromS) : 0;
        double place = Math.max(0, Math.min(1, share)) * (propellerHz.size() - 1);
        int left = (int) Math.min(propellerHz.size() - 2.0, Math.floor(place));
        return propellerHz.at(left) + (place - left) * (propellerHz.at(left + 1) - propellerHz.at(left));
    }
}
