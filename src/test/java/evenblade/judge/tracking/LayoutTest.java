package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Length;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LayoutTest {
    @Test
    void a_layout_is_read_in_any_order_of_positions() {
        assertThat(Layout.parse("2=B, 1=A ,3=C")).isEqualTo(Layout.of("A", "B", "C"));
        assertThat(Layout.parse("1=A,2=B").text()).isEqualTo("1=A, 2=B");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1=A,2=A,3=C | blade A on two hub positions",
                "1=A,3=C | no blade on hub position 2",
                "1=A,1=B | hub position 1 twice",
                "0=A,1=B | hub position 0",
                "1=A | 1 hub position",
                "1=A,2= | a blade without a name",
                "A,B,C | 'A'",
                "1=A,,2=B | ''",
                "1=A=B,2=C | '1=A=B'"
            })
    void a_faulty_layout_is_refused_with_what_was_found(String text, String found) {
        assertThatThrownBy(() -> Layout.parse(text))
                .isInstanceOf(BadInput.class)
                .hasMessageStartingWith("layout: ")
                .hasMessageContaining(found);
    }

    @Test
    void blades_moved_are_counted_by_position() {
        assertThat(Layout.of("A", "B", "C").movedFrom(Layout.of("A", "B", "C"))).isZero();
        assertThat(Layout.of("B", "A", "C").movedFrom(Layout.of("A", "B", "C"))).isEqualTo(2);
    }

    @Test
    void a_session_needs_a_reading_for_every_position_and_the_blades_of_the_propeller() {
        Layout three = Layout.of("A", "B", "C");
        Length mark = Length.ofMillimetres(1);
        Length sigma = Length.ofMillimetres(0.4);
        assertThatThrownBy(() -> TrackingSession.of(SwapTest.START, three, List.of(mark, mark), sigma))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("2 hub position(s)");
        assertThatThrownBy(() -> new TrackingSession(
                        SwapTest.START, three, List.of(List.of(mark), List.of(), List.of(mark)), sigma))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("no reading for hub position 2");
        assertThatThrownBy(() ->
                        TrackingSession.of(SwapTest.START, three, List.of(mark, mark, mark), Length.ofMillimetres(0)))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("reading error above 0");
    }
}
