package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.Optional;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("A part of a picture")
class ZoomTest {
    private static final Zoom WHOLE = new Zoom(new Zoom.Range(0, 60), Optional.of(new Zoom.Range(0, 400)));

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 0.9})
    @DisplayName("grows about the frequency under the pointer")
    void keepsTheFrequency(double share) {
        Zoom near = WHOLE.wheel(0.5, 0.3, share, false, WHOLE);
        Zoom.Range hz = near.upward().orElseThrow();
        assertThat(hz.size()).isEqualTo(200);
        assertThat(hz.from() + share * hz.size()).isCloseTo(share * 400, offset(1e-9));
        assertThat(near.across()).isEqualTo(WHOLE.across());
    }

    @Test
    @DisplayName("grows about the moment with the other axis")
    void keepsTheMoment() {
        Zoom near = WHOLE.wheel(0.5, 0.25, 0.3, true, WHOLE);
        assertThat(near.across()).isEqualTo(new Zoom.Range(7.5, 37.5));
        assertThat(near.upward()).isEqualTo(WHOLE.upward());
    }

    @Test
    @DisplayName("never leaves the whole, and never shrinks to nothing")
    void staysWithinTheWhole() {
        Zoom near = WHOLE.wheel(0.5, 1, 1, false, WHOLE).wheel(4, 0, 0, false, WHOLE);
        assertThat(near).isEqualTo(WHOLE);
        Zoom nearest = WHOLE;
        for (int i = 0; i < 100; i++) {
            nearest = nearest.wheel(0.5, 0.5, 0.5, false, WHOLE);
        }
        assertThat(nearest.upward().orElseThrow().size()).isGreaterThan(0.01);
        assertThat(WHOLE.moved(0.5, false, WHOLE)).isEqualTo(WHOLE);
    }

    @Test
    @DisplayName("is what a box encloses, in whatever direction it was drawn")
    void isWhatABoxEncloses() {
        Zoom box = WHOLE.box(0.5, 0.25, 0.5, 1, WHOLE);
        assertThat(box.across()).isEqualTo(new Zoom.Range(15, 30));
        assertThat(box.upward()).contains(new Zoom.Range(200, 400));
    }

    @Test
    @DisplayName("is kept in another picture as far as that has it")
    void isKeptInAnother() {
        Zoom shorter = Zoom.across(0, 30);
        assertThat(Zoom.across(10, 20).within(shorter)).isEqualTo(Zoom.across(10, 20));
        assertThat(Zoom.across(20, 40).within(shorter).across().to()).isEqualTo(30);
        assertThat(Zoom.across(40, 50).within(shorter)).isEqualTo(shorter);
    }
}
