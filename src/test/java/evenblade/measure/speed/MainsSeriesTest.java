package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class MainsSeriesTest {
    /** Ours: what a tone's place is good to. */
    private static final double REACH_HZ = 0.06;

    /** 50.04 Hz and its multiples are what one grid makes; 150.6 Hz is 50.2 three times, which these don't show. */
    @Test
    void onlyLinesOnMultiplesOfOneGridFrequencyAreHum() {
        assertThat(MainsSeries.among(new double[] {50.04, 100.08, 150.6, 200.16}, REACH_HZ))
                .containsExactly(50.04, 100.08, 200.16);
    }

    /** A machine's 240.3 Hz lies within a grid's reach of four times 60 Hz, and no other line says that there is one. */
    @Test
    void aSingleLineFarUpIsNoHum() {
        assertThat(MainsSeries.among(new double[] {240.3}, REACH_HZ)).isEmpty();
        assertThat(MainsSeries.among(new double[] {100.02}, REACH_HZ)).containsExactly(100.02);
    }

    @Test
    void linesThatFitNoGridAreNone() {
        assertThat(MainsSeries.among(new double[] {48.1, 97.3, 131}, REACH_HZ)).isEmpty();
    }

    private static double[] hum(double[] standing, double[] along) {
        return MainsSeries.in(HandMadeLines.of(20, standing), HandMadeLines.of(20, along))
                .hz();
    }

    /** 50.02 Hz twice and three times, a fifth of a resolution (0.13 Hz) being let pass. */
    @Test
    void whereASeriesStandsAllMultiplesOfItsFrequencyAreHum() {
        double[] lines = {100.04, 4, 150.06, 3, 71, 4};
        double[] hum = hum(lines, lines);
        assertThat(hum).hasSize(20);
        for (int k = 1; k <= 20; k++) {
            assertThat(hum[k - 1] / k).isCloseTo(50.02, within(0.05));
        }
        assertThat(hum(new double[] {100.7, 4, 150.3, 3, 71, 4}, lines)).isEmpty();
    }

    @Test
    void ofASingleLineThatLineIsHum() {
        double[] low = {100.04, 4, 71, 4};
        assertThat(hum(low, low)).hasSize(1);
        assertThat(hum(low, low)[0]).isCloseTo(100.04, within(0.03));
        double[] high = {240.04, 4, 71, 4};
        assertThat(hum(high, high)).isEmpty();
    }

    /** The grid doesn't follow the throttle: what gains more than a twentieth by being followed is the machine's. */
    @Test
    void linesThatAreClearerAlongTheSpeedAreNoHum() {
        double[] standing = {100.04, 4, 150.06, 3};
        assertThat(hum(standing, new double[] {100.04, 4.1, 150.06, 3.1})).hasSize(20);
        assertThat(hum(standing, new double[] {100.04, 4.4, 150.06, 3.4})).isEmpty();
        assertThat(hum(standing, new double[] {100.04, 5, 150.06, 2.1})).hasSize(20);
    }
}
