package evenblade.input.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.problem.BadInput;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class FormatWishTest {
    private static final InputDevice CARD =
            new InputDevice("invented card", "", List.of(44_100, 48_000), List.of(2), List.of(16, 24));

    @Test
    void whatIsLeftOpenIsChosen() {
        assertThat(FormatWish.ANY.on(CARD).stream().map(InputFormat::text))
                .containsExactly("48000 Hz, 2 channels, 24 bit", "48000 Hz, 2 channels, 16 bit");
    }

    @Test
    void aRateThatIsNotOfferedIsRefusedWithTheNearest() {
        assertThatThrownBy(
                        () -> new FormatWish(OptionalInt.of(44_000), OptionalInt.empty(), OptionalInt.empty()).on(CARD))
                .isInstanceOf(BadInput.class)
                .hasMessage("--rate: 44000 Hz is not offered by 'invented card', expected one of 44100, 48000;"
                        + " the nearest is 44100");
    }

    @Test
    void aChannelCountThatIsNotOfferedIsRefused() {
        assertThatThrownBy(() -> new FormatWish(OptionalInt.empty(), OptionalInt.of(1), OptionalInt.empty()).on(CARD))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("the nearest is 2");
    }
}
