package evenblade.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Turns lines into samples as one sensor records them, and keeps what each line truly was in each hold. */
final class Synthesis {
    /** Response is tabled over rpm in steps of this share: a resonance of 5 % loss is some 15 steps wide. */
    private static final double RPM_STEP = 0.003;

    private final double[] times;
    private final SpeedTrack track;

    Synthesis(double[] times, SpeedTrack track) {
        this.times = times;
        this.track = track;
    }

    /** Mean of a line's complex value in one hold, and the mean of its size. */
    record Met(LineId id, int hold, Phasor mean, double meanSize) {}

    List<Met> add(double[] x, List<Line> lines, Sensor sensor, Machine machine, Function<LineId, Phasor> factor) {
        double[] propeller = turns(Shaft.PROPELLER);
        double[] crank = turns(Shaft.CRANK);
        List<Met> met = new ArrayList<>();
        double[] re = new double[track.points()];
        double[] im = new double[track.points()];
        Series rpm = track.engineRpm();
        double least = rpm.min(0, track.seconds() + 1);
        double most = rpm.max(0, track.seconds() + 1);
        int cells = Math.max(1, (int) Math.ceil(Math.log(most / least) / RPM_STEP));
        for (Line line : lines) {
            Phasor own = factor.apply(line.id);
            Phasor[] table = new Phasor[cells + 1];
            for (int i = 0; i <= cells; i++) {
                double at = least + (most - least) * i / cells;
                double hz = line.id.order() * at / 60 / (line.id.shaft() == Shaft.PROPELLER ? machine.ratio() : 1);
                table[i] = line.response
                        .at(at, sensor.axis())
                        .times(sensor.response(hz))
                        .times(own);
            }
            for (int i = 0; i < re.length; i++) {
                double place = most > least ? (rpm.get(i) - least) / (most - least) * cells : 0;
                int cell = Math.min(cells - 1, (int) place);
                double part = place - cell;
                double zr = table[cell].re() * (1 - part) + table[cell + 1].re() * part;
                double zi = table[cell].im() * (1 - part) + table[cell + 1].im() * part;
                re[i] = zr * line.envelopeRe[i] - zi * line.envelopeIm[i];
                im[i] = zr * line.envelopeIm[i] + zi * line.envelopeRe[i];
            }
            carry(x, line.id.shaft() == Shaft.PROPELLER ? propeller : crank, line.id.order(), re, im);
            for (int h = 0; h < track.holds().size(); h++) {
                met.add(met(line.id, h, re, im));
            }
        }
        return met;
    }

    private double[] turns(Shaft shaft) {
        double[] turns = new double[times.length];
        for (int i = 0; i < turns.length; i++) {
            turns[i] = track.turns(shaft, times[i]);
        }
        return turns;
    }

    private void carry(double[] x, double[] turns, double order, double[] re, double[] im) {
        for (int i = 0; i < x.length; i++) {
            double place = times[i] / SpeedTrack.STEP_S;
            int cell = Math.min(re.length - 2, (int) place);
            double part = place - cell;
            double angle = turns[i] * order;
            x[i] += (re[cell] + (re[cell + 1] - re[cell]) * part) * Sines.cos(angle)
                    - (im[cell] + (im[cell + 1] - im[cell]) * part) * Sines.sin(angle);
        }
    }

    private Met met(LineId id, int hold, double[] re, double[] im) {
        SpeedTrack.Hold span = track.holds().get(hold);
        int from = (int) Math.ceil(span.fromS() / SpeedTrack.STEP_S);
        int to = Math.min(re.length - 1, (int) (span.toS() / SpeedTrack.STEP_S));
        double sumRe = 0;
        double sumIm = 0;
        double size = 0;
        for (int i = from; i <= to; i++) {
            sumRe += re[i];
            sumIm += im[i];
            size += Math.hypot(re[i], im[i]);
        }
        int n = to - from + 1;
        return new Met(id, hold, new Phasor(sumRe / n, sumIm / n), size / n);
    }

    /** Pulses of a mark: 0 to 1, edges of a tenth of the pulse's length, front edge half up at whole turns. */
    void addMark(double[] x, Sensor sensor, Dice dice) {
        Sensor.Mark mark = sensor.mark();
        double[] turns = turns(mark.shaft());
        double edge = mark.share() / 10;
        long turn = Long.MIN_VALUE;
        boolean missing = false;
        boolean doubled = false;
        for (int i = 0; i < x.length; i++) {
            long now = (long) Math.floor(turns[i] + 0.25);
            if (now != turn) {
                turn = now;
                missing = dice.chance(mark.missing());
                doubled = dice.chance(mark.doubled());
            }
            double since = turns[i] - turn;
            double up = missing ? 0 : pulse(since, mark.share(), edge);
            if (doubled) {
                up = Math.max(up, pulse(since - 3 * mark.share(), mark.share() / 2, edge));
            }
            x[i] += sensor.gain() * (mark.falling() ? -up : up);
        }
    }

    private static double pulse(double since, double share, double edge) {
        double front = Math.max(0, Math.min(1, 0.5 + since / edge));
        double back = Math.max(0, Math.min(1, 0.5 + (share - since) / edge));
        return Math.min(front, back);
    }
}
