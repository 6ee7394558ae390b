package evenblade.judge.tie;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.LinearFit;
import evenblade.base.numeric.Phasor;
import evenblade.base.numeric.Rice;
import evenblade.machine.installation.HubCounting;
import java.util.List;
import java.util.Optional;

/**
 * Tie from runs whose phase is known: complex least squares of V = c + k·T (+ q·P).
 *
 * <p>Runs after one marking share the pencil's error, and the track is read with errors as the shaking is. The scatter of
 * the markings about the fit is pooled with the stated errors, which count as a handful of readings; the intervals allow for
 * how few that is.
 */
public final class PhaseTie implements TrackTie {
    private static final double CHANCE = 0.05; // the usual 5 %

    /**
     * Readings that the stated errors are worth: what makes two runs differ is partly a guess. Ours, the same handful as
     * a stated reading error is worth.
     */
    private static final double GUESSED = 5;

    /** Degrees of freedom of an error that counts as known. */
    private static final double KNOWN = 1e5;

    private final List<TieRun> runs;
    private final HubCounting counting;
    private final boolean pitch;
    private final int rests;
    private final int latest;
    private final LinearFit fit;
    private final double misfit;
    private final int spare;
    private final double variance;
    private final double degreesOfFreedom;

    private PhaseTie(PhaseFit setup, HubCounting counting, boolean pitch, int latest, PhaseFit.Fitted fitted) {
        this.rests = setup.rests();
        this.latest = latest;
        this.runs = setup.runs();
        this.counting = counting;
        this.pitch = pitch;
        this.fit = fitted.fit();
        misfit = fitted.misfit();
        spare = Math.max(0, 2 * fitted.markings() - fit.design().rank());
        degreesOfFreedom = GUESSED + spare;
        variance = (GUESSED + misfit) / degreesOfFreedom;
    }

    /**
     * Fits, or nothing where the runs can't tell c and k apart.
     *
     * @param ownRest whether each seating of the blades has a c of its own, since moving them turns their mass too
     */
    static Optional<PhaseTie> of(List<TieRun> runs, HubCounting counting, boolean pitch, boolean ownRest) {
        List<List<String>> seatings = ownRest
                ? runs.stream().map(TieRun::seating).distinct().toList()
                : List.of(runs.get(runs.size() - 1).seating());
        int latest = seatings.indexOf(runs.get(runs.size() - 1).seating());
        PhaseFit setup = new PhaseFit(
                List.copyOf(runs),
                seatings.size(),
                runs.stream()
                        .map(run -> ownRest ? seatings.indexOf(run.seating()) : 0)
                        .toList(),
                runs.stream().map(run -> turned(counting, run.trackMm())).toList(),
                runs.stream()
                        .map(run -> pitch
                                ? run.pitchDeg().map(angles -> turned(counting, angles))
                                : Optional.<Phasor>empty())
                        .toList());
        return setup.fitted().map(fitted -> new PhaseTie(setup, counting, pitch, latest, fitted));
    }

    /**
     * A pattern round the hub, Σ d·e^{−jθ}, as it turns past a sensor whose line is A·cos(φ + α): counted with the
     * rotation, the blade at θ is ahead by θ and the pattern appears mirrored.
     */
    private static Phasor turned(HubCounting counting, Phasor pattern) {
        return counting == HubCounting.WITH_ROTATION ? new Phasor(pattern.re(), -pattern.im()) : pattern;
    }

    private double[][] rows(double one, Phasor track, Optional<Phasor> angles) {
        return PhaseFit.rows(rests, latest, one, track, angles);
    }

    /** Whether one c for all seatings does as well as this tie's own c for each, so that the blades' mass hardly differs. */
    boolean oneRestDoes(PhaseTie common) {
        int gained = common.spare - spare;
        return gained == 0
                || spare > 0 && Distributions.fTest(common.misfit - misfit, gained, variance, spare) > CHANCE;
    }

    /** k, as a phasor in the channel's unit per mm. */
    public Phasor perMillimetrePhasor() {
        return new Phasor(fit.parameter(2 * rests), fit.parameter(2 * rests + 1));
    }

    @Override
    public Size left() {
        return size(1, Phasor.ZERO, Phasor.ZERO, 0);
    }

    @Override
    public Size perMillimetre() {
        return size(0, new Phasor(1, 0), Phasor.ZERO, 0);
    }

    @Override
    public Optional<Size> perDegree() {
        return pitch ? Optional.of(size(0, Phasor.ZERO, new Phasor(1, 0), 0)) : Optional.empty();
    }

    @Override
    public List<Share> shares() {
        return runs.stream()
                .map(run -> new Share(
                        run.label(), run.amplitude(), size(0, turned(counting, run.trackMm()), Phasor.ZERO, 0)))
                .toList();
    }

    @Override
    public Size predicted(Phasor trackMm, double trackErrorMm) {
        return size(
                1,
                turned(counting, trackMm),
                pitch ? latestAngles() : Phasor.ZERO,
                trackErrorMm * perMillimetrePhasor().magnitude());
    }

    @Override
    public double expected(Phasor trackMm) {
        Phasor angles = pitch ? latestAngles() : Phasor.ZERO;
        return value(rows(1, turned(counting, trackMm), pitch ? Optional.of(angles) : Optional.empty()))
                .magnitude();
    }

    private Phasor latestAngles() {
        return turned(counting, runs.get(runs.size() - 1).pitchDeg().orElseThrow());
    }

    private Phasor value(double[][] rows) {
        return new Phasor(fit.estimate(rows[0]), fit.estimate(rows[1]));
    }

    @Override
    public boolean trackMatters() {
        double[][] unit = rows(0, new Phasor(1, 0), pitch ? Optional.of(Phasor.ZERO) : Optional.empty());
        double factor = fit.design().varianceFactor(unit[0]);
        double size = perMillimetrePhasor().magnitude();
        double many = Math.min(KNOWN, degreesOfFreedom);
        return Distributions.fTest(size * size / factor, 2, variance, many) < CHANCE;
    }

    private Size size(double one, Phasor track, Phasor angles, double furtherError) {
        double[][] rows = rows(one, track, pitch ? Optional.of(angles) : Optional.empty());
        Phasor value = value(rows);
        double error = Math.hypot(Math.sqrt(variance * fit.design().varianceFactor(rows[0])), furtherError);
        Rice.Interval interval = Rice.interval95(value.magnitude(), error, Math.min(KNOWN, degreesOfFreedom));
        return new Size(value.magnitude(), interval.low(), interval.high());
    }
}
