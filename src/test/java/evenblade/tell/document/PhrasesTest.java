package evenblade.tell.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Value.SignalValue;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.judge.findings.Cause;
import evenblade.judge.findings.FindingFact;
import evenblade.tell.document.Sentence.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PhrasesTest {
    private static final Phrases PHRASES = Phrases.of(Face.COMMAND_LINE);
    private static final Set<Code> SAID_OF_BLADES =
            Set.of(FindingFact.POINTS_TO_TRACK_OF, FindingFact.POINTS_TO_PITCH_OF);

    /** Every list of codes in the program, read from the compiled classes. */
    private static List<Code> codes() {
        List<Code> codes = new ArrayList<>();
        for (JavaClass each : new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("evenblade")) {
            if (each.isEnum() && each.isAssignableTo(Code.class)) {
                for (Object code : each.reflect().getEnumConstants()) {
                    codes.add((Code) code);
                }
            }
        }
        return codes;
    }

    @Test
    @DisplayName("Every code has a phrase, and no phrase is without its code")
    void phrasesAndCodesAreOfAPiece() {
        Set<String> expected = new TreeSet<>();
        for (Code code : codes()) {
            expected.add(Phrases.key(code));
            if (code instanceof WarningCode) {
                expected.add(Phrases.key(code) + ".meaning");
                expected.add(Phrases.key(code) + ".cure");
            }
            if (code instanceof Cause || SAID_OF_BLADES.contains(code)) {
                expected.add(Phrases.key(code) + ".because");
                expected.add(Phrases.key(code) + ".plain");
            }
        }
        Set<String> written = new TreeSet<>(Phrases.all().keySet());
        for (Face face : Face.values()) {
            written.removeIf(key -> key.endsWith(face.suffix()));
        }
        assertThat(codes()).hasSizeGreaterThan(90);
        assertThat(written).isEqualTo(expected);
    }

    @Test
    @DisplayName("No two lists of codes have one name, for the phrases are named by it")
    void listsOfCodesHaveNamesOfTheirOwn() {
        Set<Class<?>> lists = new java.util.HashSet<>();
        codes().forEach(code -> lists.add(((Enum<?>) code).getDeclaringClass()));
        assertThat(lists).extracting(Class::getSimpleName).doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @EnumSource(WarningCode.class)
    @DisplayName("A warning says what it means and what to do about it, in own words and with a full stop")
    void warningsAreExplained(WarningCode code) {
        assertThat(Phrases.meaning(code)).hasSizeGreaterThan(10).endsWith(".");
        assertThat(Phrases.cure(code)).hasSizeGreaterThan(10).endsWith(".");
    }

    @Test
    @DisplayName("The slots of a phrase are numbered from the first value on, none left out")
    void slotsAreNumberedWithoutAHole() {
        Phrases.all().forEach((key, template) -> assertThat(template.indices())
                .as(key)
                .isEqualTo(new TreeSet<>(
                        java.util.stream.IntStream.range(0, template.indices().size())
                                .boxed()
                                .toList())));
    }

    private static String said(WarningCode code, Value... values) {
        return PHRASES.text(Warning.of(code, Subject.Whole.RECORDING, values));
    }

    @Test
    @DisplayName("Figures are rounded as the phrase says, with their unit or without")
    void figuresAreRoundedAsThePhraseSays() {
        assertThat(said(WarningCode.RPM_DIFFERS, Measure.ENGINE_RPM.of(4012.4), Measure.ENGINE_RPM.of(3998.6)))
                .startsWith("the second run turned 4012 instead of 3999 engine rpm;");
        assertThat(said(WarningCode.AUTOMATIC_GAIN_SUSPECTED, Measure.LEVEL.of(0.04), Measure.LEVEL.of(-3.25)))
                .contains("changes by +0.0 dB", "by −3.3 dB");
        assertThat(said(WarningCode.STAMPS_DOUBLED, new Count(3), new Count(1000)))
                .startsWith("3 of 1000 rows");
        assertThat(said(
                        WarningCode.COARSE_STAMPS,
                        Measure.TIME.of(0.001),
                        Measure.TIME.of(0.0024038),
                        Fact.of(WarningCode.LOSSY_FILE)))
                .startsWith("stamps are whole steps of 1 ms while samples come every 2.4 ms");
        assertThat(said(WarningCode.DC_OFFSET, new Quoted("left"), new SignalValue(0.123456, SignalUnit.FULL_SCALE)))
                .isEqualTo("channel 'left' is not centred on zero: 0.1235 FS off on average [dc-offset]");
        assertThat(said(WarningCode.DC_OFFSET, new Quoted("x"), new SignalValue(2, SignalUnit.UNSTATED)))
                .contains("2.000 off on average");
    }

    @Test
    @DisplayName("A share below a tenth of a per cent shows three decimals")
    void smallSharesShowMoreDecimals() {
        FigureFormat format = PHRASES.figures();
        assertThat(format.text(new Amount(0.0123, Measure.SHARE))).isEqualTo("1.2 %");
        assertThat(format.text(new Amount(0.00099, Measure.SHARE))).isEqualTo("0.099 %");
    }

    @Test
    @DisplayName("One is spoken of as one, several as several, each in its quotation marks")
    void oneAndSeveral() {
        Listed one = new Listed(List.of(new Quoted("place")));
        Listed two = Listed.quoted(List.of("place", "sensor"));
        assertThat(said(WarningCode.CONDITIONS_NOT_NOTED, one)).startsWith("place isn't noted");
        assertThat(said(WarningCode.CONDITIONS_NOT_NOTED, two)).startsWith("place, sensor aren't noted");
    }

    @Test
    @DisplayName("What a user wrote is kept apart from own words, with its quotation marks")
    void userTextIsKeptApart() {
        Sentence sentence =
                PHRASES.sentence(Fact.of(WarningCode.CHANNELS_ALIKE, new Quoted("lost in {0}"), new Quoted("8 mm")));
        assertThat(sentence.text()).startsWith("channels 'lost in {0}' and '8 mm' carry the same");
        assertThat(sentence.spans()).contains(new Span.UserText("'lost in {0}'"), new Span.UserText("'8 mm'"));
    }

    @Test
    @DisplayName("A fact with fewer or more values than its phrase has slots is refused")
    void valuesMustFitThePhrase() {
        assertThatThrownBy(() -> said(WarningCode.GAPS, new Count(2))).hasMessageContaining("WarningCode.GAPS");
        assertThatThrownBy(() -> said(WarningCode.NO_DWELL, new Count(2))).hasMessageContaining("WarningCode.NO_DWELL");
    }

    @Test
    void aLineWithoutEndOfAFileIsQuotedByItsBeginning() {
        Warning skipped = Warning.of(
                WarningCode.ROWS_SKIPPED,
                Subject.Whole.RECORDING,
                new Count(1),
                new Count(3001),
                new Count(2002),
                new Quoted("7".repeat(65_536)));

        assertThat(PHRASES.text(skipped.fact()))
                .hasSizeLessThan(600)
                .contains("line 2002: 777")
                .endsWith("7…");
    }
}
