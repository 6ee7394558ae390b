package evenblade.face.app;

import evenblade.base.numeric.Phasor;
import evenblade.judge.tie.TieRun;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * How much propeller 1× differs between runs when nothing was changed, as a share of its size, in each of its two parts:
 * from the runs that were repeated without marking anew, pooled with what is usual.
 *
 * @param share standard deviation as a share of 1×
 */
record RunToRun(double share) {
    /**
     * Usual scatter of a line between runs: wind, throttle, and a sensor that was taken off and put back, 6 % in common and
     * 3 % for each line by itself (seen in trials with real fixings; no published source).
     */
    private static final double USUAL = 0.06;

    /** So many repeats that is worth: a guess. */
    private static final double USUAL_WORTH = 3;

    /**
     * From repeats.
     *
     * @param runs in order of time
     * @param marked when the tips were marked that count for each run; runs with the same marks are repeats
     */
    static RunToRun of(List<TieRun> runs, List<Instant> marked) {
        double squares = 0;
        int freedom = 0;
        boolean phase = runs.stream().allMatch(r -> r.phaseDegrees().isPresent());
        for (Instant at : marked.stream().distinct().toList()) {
            List<Phasor> alike = new ArrayList<>();
            for (int r = 0; r < runs.size(); r++) {
                // A line near the noise scatters by the noise, which its own error holds already.
                boolean clear =
                        runs.get(r).standardError() < USUAL * runs.get(r).amplitude();
                if (clear && marked.get(r).equals(at)) {
                    double angle = phase ? runs.get(r).phaseDegrees().orElseThrow() : 0;
                    alike.add(Phasor.ofDegrees(runs.get(r).amplitude(), angle));
                }
            }
            Phasor mean = alike.stream().reduce(Phasor.ZERO, Phasor::plus).times(1.0 / Math.max(1, alike.size()));
            double size = Math.max(Double.MIN_NORMAL, mean.magnitude());
            for (Phasor one : alike) {
                squares += Math.pow(one.minus(mean).magnitude() / size, 2);
            }
            freedom += Math.max(0, alike.size() - 1) * (phase ? 2 : 1);
        }
        return new RunToRun(Math.sqrt((USUAL_WORTH * USUAL * USUAL + squares) / (USUAL_WORTH + freedom)));
    }

    /** The runs with this scatter in their errors. */
    List<TieRun> within(List<TieRun> runs) {
        return runs.stream()
                .map(r ->
                        r.withError(Math.max(Double.MIN_NORMAL, Math.hypot(r.standardError(), share * r.amplitude()))))
                .toList();
    }
}
