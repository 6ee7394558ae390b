package evenblade.measure.speed;

import static evenblade.measure.speed.HandMadeLines.waves;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Stretches of runs of eight seconds in noise: frames of 1.5 s every 0.375 s, the first one's middle at 0.75 s. */
class StretchJudgeTest {
    private static final OrderTable GEARED = Machine.ALL.get(0).table();
    private static final OrderTable FAN = Machine.ALL.get(5).table();
    private static final SpeedPrior ANY = SpeedPrior.between(24, 36);

    private static WhitenedSpectrogram frames(DoubleUnaryOperator values) {
        return frames(0.2, values);
    }

    private static WhitenedSpectrogram frames(double noise, DoubleUnaryOperator values) {
        return HandMadeLines.frames(HandMadeLines.noisy(800, 8, noise, values), 350);
    }

    private static StretchJudge judge(WhitenedSpectrogram frames, OrderTable table) {
        return new StretchJudge(frames, table, Comb.of(table), ANY);
    }

    private static PathSearch.Path path(WhitenedSpectrogram frames, DoubleUnaryOperator hz) {
        return new PathSearch.Path(
                IntStream.range(0, frames.frames()).toArray(),
                IntStream.range(0, frames.frames())
                        .mapToDouble(f -> hz.applyAsDouble(frames.centreS(f)))
                        .toArray());
    }

    /** A speed that swings by a share to either side, once in four seconds, and the angle that it makes. */
    private static double swinging(double hz, double share, double t) {
        return hz * (1 + share * Math.sin(Math.PI / 2 * t));
    }

    private static double angle(double hz, double share, double t) {
        return hz * (t - share * Math.cos(Math.PI / 2 * t) / (Math.PI / 2));
    }

    @Test
    void aPartOfAPathIsTheFramesWhoseMiddlesLieInTheStretch() {
        WhitenedSpectrogram frames = frames(t -> 0);
        StretchJudge judge = judge(frames, GEARED);
        PathSearch.Path path = path(frames, t -> 20 + t);
        assertThat(frames.frames()).isEqualTo(18);
        assertThat(judge.part(new DwellFinder.Stretch(2, 4), path).frame()).containsExactly(4, 5, 6, 7, 8);
        assertThat(judge.part(new DwellFinder.Stretch(2, 4), path).hz()[0]).isCloseTo(22.25, within(1e-9));
        // One at least, also between two middles and beyond the last.
        assertThat(judge.part(new DwellFinder.Stretch(1.2, 1.3), path).frame()).containsExactly(2);
        assertThat(judge.part(new DwellFinder.Stretch(7.5, 8), path).frame()).containsExactly(17);
    }

    /** A fan at 25 Hz would have its fourth and eighth order at 100 and 200 Hz. */
    @Test
    void humOnAMachinesOrdersCountsForNobody() {
        WhitenedSpectrogram frames = frames(t -> waves(100 * t, 1, 1, 0, 1, 2, 1, 1, 3, 2));
        StretchJudge.Judged judged = judge(frames, FAN).of(path(frames, t -> swinging(25, 0.001, t)));
        assertThat(judged.judgement().by()).isEmpty();
        assertThat(judged.judgement().doubts()).contains(SpeedDoubt.ONLY_MAINS);
        assertThat(judged.humHz()).hasSize(20);
        assertThat(judged.humSeries()[2]).isCloseTo(150, within(0.1));
    }

    private static StretchJudge.Judged besideHum(double hz, double share) {
        // In so much noise no line counts in full, and the speed is where they all are highest.
        WhitenedSpectrogram frames = frames(
                0.7,
                t -> waves(100 * t, 0.5, 1, 0, 0.5, 2, 1, 0.5, 3, 2)
                        + waves(angle(hz, share, t), 1, 1, 0, 1, 2, 1, 1, 7, 1, 1, 10, 0));
        return judge(frames, FAN).of(path(frames, t -> swinging(hz, share, t)));
    }

    /** What the path moves by 0.2 % of 300 Hz is sharp still; cut out are 0.8 Hz and 0.3 Hz to either side. */
    @Test
    void aLineThatIsFartherFromHumThanALobeIsWideStands() {
        assertThat(besideHum(29.85, 0.001).judgement().by())
                .extracting(OrderLine::propellerOrder)
                .contains(10.0);
        assertThat(besideHum(29.95, 0.001).judgement().by())
                .extracting(OrderLine::propellerOrder)
                .contains(7.0)
                .doesNotContain(10.0);
    }

    /** Seventh order at 197.7 Hz; over 0.6 % of 200 Hz hum is cut out 0.8 Hz and 0.6 Hz to either side. */
    @Test
    void moreIsCutOutWhereThePathSwingsAndNoMoreThanThat() {
        assertThat(besideHum(28.24, 0.003).judgement().by())
                .extracting(OrderLine::propellerOrder)
                .contains(7.0);
        assertThat(besideHum(28.41, 0.003).judgement().by())
                .extracting(OrderLine::propellerOrder)
                .contains(10.0)
                .doesNotContain(7.0);
    }

    /** Over 0.6 % of 300 Hz, 1.8 Hz or 2.7 resolutions, hum harms no more and isn't cut out. */
    @Test
    void humThatThePathBlursHidesNoLine() {
        assertThat(besideHum(29.95, 0.003).judgement().by())
                .extracting(OrderLine::propellerOrder)
                .contains(10.0);
    }

    /** Propeller and halves of the crank, each up to the end of what is looked at. */
    private static double machine(double turns) {
        double sum = 0;
        for (int k = 1; k <= 14; k++) {
            sum += waves(turns, 1, k, k) + (k < 12 ? waves(1.215 * turns, 1, k, 2 * k) : 0);
        }
        return sum;
    }

    @Test
    void aMachinesOwnLinesAreNoOtherMachine() {
        WhitenedSpectrogram alone = frames(t -> machine(24 * t));
        PathSearch.Path path = path(alone, t -> 24);
        assertThat(judge(alone, GEARED).otherMachine(path, true)).contains(false);
        assertThat(judge(alone, GEARED).otherMachine(path, false)).contains(true);
    }

    /** Over 2 % the machine's lines smear by a hundredth of their frequency to either side; the other's lie farther off. */
    @Test
    void anotherMachineIsHeardBesideOneWhoseSpeedSwings() {
        DoubleUnaryOperator own = t -> waves(angle(30, 0.01, t), 1, 1, 0, 1, 3, 1, 1, 6, 2)
                + waves(2.43 * angle(30, 0.01, t), 1, 1, 0, 1, 2, 1);
        DoubleUnaryOperator other =
                t -> waves(41.3 * t, 1, 1, 0, 1, 2, 1, 1, 3, 2, 1, 4, 3, 1, 5, 4, 1, 6, 5, 1, 7, 6, 1, 8, 0);
        WhitenedSpectrogram alone = frames(own);
        WhitenedSpectrogram two = frames(t -> own.applyAsDouble(t) + other.applyAsDouble(t));
        PathSearch.Path path = path(alone, t -> swinging(30, 0.01, t));
        assertThat(judge(alone, GEARED).otherMachine(path, true)).contains(false);
        assertThat(judge(two, GEARED).otherMachine(path, true)).contains(true);
    }

    @Test
    void humIsNoOtherMachine() {
        WhitenedSpectrogram frames = frames(t -> waves(50 * t, 1, 1, 0, 1, 2, 1, 1, 3, 2, 1, 4, 3, 1, 5, 4, 1, 6, 5));
        assertThat(judge(frames, GEARED).otherMachine(path(frames, t -> 30), false))
                .contains(false);
    }

    /** A path at 33 Hz through a run at 30. */
    @Test
    void aStretchThatAnotherSpeedExplainsBetterIsDrawnAnew() {
        WhitenedSpectrogram frames =
                frames(t -> waves(30 * t, 0.6, 1, 0, 1, 3, 1, 0.8, 6, 2, 0.6, 2.43, 1, 0.9, 4.86, 2, 0.5, 9.72, 0));
        PathSearch search = new PathSearch(frames, Comb.of(GEARED), ANY);
        PathSearch.Path put =
                judge(frames, GEARED).putRight(path(frames, t -> 33), List.of(new DwellFinder.Stretch(2, 8)), search);
        assertThat(put.hz()[0]).isEqualTo(33);
        for (int f = 4; f < frames.frames(); f++) {
            assertThat(put.hz()[f]).isCloseTo(30, within(0.05));
        }
    }
}
