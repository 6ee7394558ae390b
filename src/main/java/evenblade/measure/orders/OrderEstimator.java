package evenblade.measure.orders;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.Rice;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Turns the fit of one dwell and channel into amplitudes with errors, and says what counts as detected. */
record OrderEstimator(
        OrderTable table, SpeedResult speed, Dwell dwell, List<FittedLine> lines, DwellFit fit, int channel) {
    /** Probability that any line of the table is detected in noise alone. */
    private static final double FALSE_ALARM = 0.01;
    /** Chance below which blocks are said to scatter more than the noise beside the line. */
    private static final double MORE_SCATTER = 0.01;
    /** Share of a line's power that must keep step with the track for it to count as coherent. */
    private static final double IN_STEP = 0.9;

    private static final double OUT_OF_STEP_CHANCE = 1e-4; // ours: one in ten thousand lines may be doubted wrongly
    /** A line that keeps no step at all is believed from its blocks where they stand this far over the noise. */
    private static final double STANDS_OVER = 3;

    private static final double BLOCKS_CHANCE = 1e-8; // ours: beyond doubt, blocks stand over what noise explains
    /** By chance an amplitude may come out far below its noise; 'below' is never said of less than this many errors. */
    private static final double LEAST_UPPER = 1.96;

    /**
     * Reads the lines fitted.
     *
     * @param spectrum of what the fit leaves of the channel
     * @param readings one per line of the table; those of the lines fitted are replaced
     */
    void read(ResidualSpectrum spectrum, List<OrderReading> readings) {
        List<DwellFit.Scatter> scatter = fit.scatter(channel);
        for (int l = 0; l < lines.size(); l++) {
            Level.Measured level = level(l, scatter.get(l), spectrum);
            List<Integer> members = lines.get(l).members();
            for (int member : members) {
                OrderLine line = table.lines().get(member);
                List<OrderLine> others = members.stream()
                        .filter(other -> other != member)
                        .map(table.lines()::get)
                        .toList();
                double hz = FittedLine.order(line, speed.ratioCorrection()) * dwell.propellerHz();
                readings.set(member, new OrderReading(line, hz, level, others));
            }
        }
    }

    private Level.Measured level(int l, DwellFit.Scatter scatter, ResidualSpectrum spectrum) {
        double hz = lines.get(l).frequencyHz(dwell.propellerHz());
        List<Double> others = new ArrayList<>();
        for (int k = 0; k < lines.size(); k++) {
            if (k != l) {
                others.add(lines.get(k).frequencyHz(dwell.propellerHz()));
            }
        }
        ResidualSpectrum.Noise noise = spectrum.around(hz, others);
        double seconds = fit.blocks() * fit.blockS();
        // One-sided density S: each component of an amplitude over T seconds has variance S/T.
        double noiseVariance = noise.unitSquaredPerHz() / seconds;
        double observed = fit.amplitude(channel, l);
        Spread spread = spread(observed, scatter, noiseVariance, noise.dof());
        boolean standsOut = Distributions.fTail(
                        observed * observed / (2 * Math.max(noiseVariance, spread.variance)), 2, noise.dof())
                < FALSE_ALARM / lines.size();
        double blockVariance = noise.unitSquaredPerHz() / fit.blockS();
        boolean outOfStep = outOfStep(l, observed, scatter, blockVariance, noise.dof());
        boolean detected =
                speed.confirmed() && (standsOut || outOfStep && standsInBlocks(scatter, blockVariance, noise.dof()));
        if (detected && outOfStep) {
            return blockRms(observed, scatter, blockVariance);
        }
        double sigma = Math.sqrt(spread.variance);
        Rice.Interval interval = Rice.interval95(observed, sigma, spread.dof);
        return new Level.Measured(
                Rice.corrected(observed, sigma),
                sigma,
                interval.low(),
                Math.max(interval.high(), LEAST_UPPER * sigma),
                phaseDeg(l),
                detected,
                Level.Estimator.COHERENT);
    }

    private record Spread(double variance, double dof) {}

    /**
     * Variance of one component of the amplitude: blocks' scatter and noise beside the line pooled where
     * they agree, the scatter alone where it is larger than the noise explains.
     */
    private Spread spread(double observed, DwellFit.Scatter scatter, double noiseVariance, double noiseDof) {
        double dof = fit.blocks() - 1.0;
        double own = scatter.alongVariance();
        // Near the noise the direction of the amplitude means nothing and both components tell of it.
        if (observed * observed < 16 * noiseVariance) {
            own = 0.5 * (scatter.alongVariance() + scatter.acrossVariance());
            dof *= 2;
        }
        if (noiseVariance <= 0 || Distributions.fTail(own / noiseVariance, dof, noiseDof) < MORE_SCATTER) {
            return new Spread(own, dof);
        }
        double trusted = Math.min(noiseDof, 4 * dof);
        return new Spread((dof * own + trusted * noiseVariance) / (dof + trusted), dof + trusted);
    }

    /** Whether a good part of the line doesn't keep step with the track over the dwell. */
    private boolean outOfStep(int l, double observed, DwellFit.Scatter scatter, double blockVariance, double noiseDof) {
        double hz = lines.get(l).frequencyHz(dwell.propellerHz());
        boolean alone = true;
        for (int k = 0; k < lines.size(); k++) {
            alone &= k == l
                    || Math.abs(lines.get(k).frequencyHz(dwell.propellerHz()) - hz) * fit.blockS()
                            > FittedLine.RESOLVED;
        }
        double stray = scatter.blockScatter() - 2 * blockVariance;
        double dof = 2 * (fit.blocks() - 1.0);
        return alone
                && stray > 0
                && observed * observed < IN_STEP * (observed * observed + stray)
                && Distributions.fTail(scatter.blockScatter() / (2 * blockVariance), dof, noiseDof)
                        < OUT_OF_STEP_CHANCE;
    }

    /** Whether the blocks' own amplitudes stand far above the noise beside the line. */
    private boolean standsInBlocks(DwellFit.Scatter scatter, double blockVariance, double noiseDof) {
        int blocks = scatter.blockSquares().size();
        double mean =
                scatter.blockSquares().stream().mapToDouble(x -> x).average().orElseThrow();
        return Distributions.fTail(mean / (2 * blockVariance) / STANDS_OVER, 2.0 * blocks, noiseDof) < BLOCKS_CHANCE;
    }

    private Level.Measured blockRms(double observed, DwellFit.Scatter scatter, double blockVariance) {
        int m = scatter.blockSquares().size();
        double mean =
                scatter.blockSquares().stream().mapToDouble(x -> x).average().orElseThrow();
        double squares = 0;
        for (double square : scatter.blockSquares()) {
            squares += (square - mean) * (square - mean);
        }
        double power = Math.max(mean - 2 * blockVariance, observed * observed * 0.5);
        double amplitude = Math.sqrt(power);
        double error = Math.sqrt(squares / (m - 1.0) / m) / (2 * amplitude);
        double reach = Distributions.reach95(m - 1.0) * error;
        return new Level.Measured(
                amplitude,
                error,
                Math.max(0, amplitude - reach),
                amplitude + reach,
                OptionalDouble.empty(),
                true,
                Level.Estimator.BLOCK_RMS);
    }

    private OptionalDouble phaseDeg(int l) {
        double order = lines.get(l).order();
        boolean comesBackEachTurn = Math.abs(order - Math.rint(order)) < OrderTable.COINCIDENT * order;
        if (speed.origin() != SpeedResult.Origin.MARK || !comesBackEachTurn) {
            return OptionalDouble.empty();
        }
        double degrees = -Math.toDegrees(Math.atan2(fit.sine(channel, l), fit.cosine(channel, l)));
        return OptionalDouble.of((degrees % 360 + 360) % 360);
    }
}
