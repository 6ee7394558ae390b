package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;

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
}
