package evenblade.input.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.problem.BadInput;
import java.util.List;
import org.junit.jupiter.api.Test;

class ChannelChoiceTest {
    private static final List<String> NAMES = List.of("ax", "Ay", "2");
    private static final BadInput.Place PLACE = BadInput.in("run.csv");

    @Test
    void aChannelIsChosenByNameThenWithoutCapitalsThenByNumberFromOne() {
        assertThat(ChannelChoice.indexOf(NAMES, "Ay", PLACE)).isEqualTo(1);
        assertThat(ChannelChoice.indexOf(NAMES, " AX ", PLACE)).isZero();
        assertThat(ChannelChoice.indexOf(NAMES, "3", PLACE)).isEqualTo(2);
        assertThat(ChannelChoice.indexOf(NAMES, "2", PLACE))
                .as("a name goes before a number")
                .isEqualTo(2);
    }

    @Test
    void anUnknownChannelIsRefusedWithThoseThereAreAndTheNearest() {
        assertThatThrownBy(() -> ChannelChoice.indexOf(List.of("left", "right"), "lfet", PLACE))
                .isInstanceOf(BadInput.class)
                .hasMessage("run.csv: no channel 'lfet', expected one of 'left', 'right' or a number; did you mean"
                        + " 'left'?");
        assertThatThrownBy(() -> ChannelChoice.indexOf(NAMES, "7", PLACE))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("channel number 7, expected 1 to 3");
    }
}
