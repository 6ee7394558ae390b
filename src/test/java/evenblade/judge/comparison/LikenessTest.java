package evenblade.judge.comparison;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What was noted otherwise about two runs is said beside their comparison, each thing by its name. */
class LikenessTest {
    private static RunConditions noted(String wind, String temperature, String fuel, String device) {
        return new RunConditions(
                Optional.of("accelerometer A"),
                Optional.of("gearbox top"),
                Optional.of("across"),
                Optional.of("fixed"),
                Optional.ofNullable(device),
                Optional.empty(),
                Optional.ofNullable(wind),
                Optional.ofNullable(temperature),
                Optional.ofNullable(fuel),
                false);
    }

    private static List<Warning> warnings(RunConditions one, RunConditions other) {
        Likeness likeness = Likeness.of(Invented.run("one", one), Invented.run("other", other));
        assertThat(likeness.reasons()).isEmpty();
        return likeness.warnings();
    }

    private static Warning differ(ComparisonFact what, String one, String other) {
        return Warning.of(
                WarningCode.CONDITIONS_DIFFER,
                evenblade.base.fact.Subject.Whole.COMPARISON,
                Fact.of(what),
                new Quoted(one),
                new Quoted(other));
    }

    @Test
    void windTemperatureFuelAndRecorderAreEachNamed() {
        RunConditions plain = noted("calm", "15 C", "full", "laptop");
        assertThat(warnings(plain, plain)).isEmpty();
        assertThat(warnings(plain, noted("8 kt", "15 C", "full", "laptop")))
                .containsExactly(differ(ComparisonFact.WIND, "calm", "8 kt"));
        assertThat(warnings(plain, noted("calm", "2 C", "full", "laptop")))
                .containsExactly(differ(ComparisonFact.TEMPERATURE, "15 C", "2 C"));
        assertThat(warnings(plain, noted("calm", "15 C", "half", "laptop")))
                .containsExactly(differ(ComparisonFact.FUEL, "full", "half"));
        assertThat(warnings(plain, noted("calm", "15 C", "full", "phone")))
                .containsExactly(differ(ComparisonFact.RECORDER, "laptop", "phone"));
    }

    @Test
    void whatWasNotNotedIsNoDifference() {
        assertThat(warnings(noted("calm", null, null, null), noted(null, "2 C", "full", "phone")))
                .isEmpty();
    }

    @Test
    void aSensorPlaceOrDirectionThatWasNotNotedIsSaid() {
        assertThat(warnings(RunConditions.UNKNOWN, noted(null, null, null, null)))
                .extracting(Warning::code)
                .containsExactly(WarningCode.CONDITIONS_NOT_NOTED);
    }
}
