package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.Nearest;
import evenblade.base.units.ValueScale;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.ColumnReading;
import evenblade.input.recording.TableReading.DecimalSign;
import evenblade.input.recording.TableReading.Separator;
import evenblade.input.recording.TableReading.TimeUnit;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The words that say how a table (CSV) is to be read, where the reader would assume something else. */
final class TableOptions {
    private TableOptions() {}

    static void addTo(CommandSpec spec) {
        spec.addOption(Options.value(
                "--separator",
                "WORD",
                String.class,
                "Between the cells of a table: comma, semicolon, tab, bar, spaces."));
        spec.addOption(Options.value("--decimal-sign", "WORD", String.class, "In its numbers: point or comma."));
        spec.addOption(Options.value(
                "--time-column", "COLUMN", String.class, "Its column of times, by heading or by number from 1."));
        spec.addOption(Options.value("--time-unit", "UNIT", String.class, "What its times count: s, ms, us or ns."));
        spec.addOption(Options.repeated(
                "--column-scale",
                "COLUMN=VALUE",
                String.class,
                "What a 1 in a column stands for, such as \"2=0.01 m/s2\"; may be repeated."));
        spec.addOption(Options.repeated(
                "--column-name",
                "COLUMN=NAME",
                String.class,
                "What the channel of a column is called, such as \"2=across\"; may be repeated."));
    }

    static TableReading of(ParseResult words) {
        Map<String, String> scales = pairs(words, "--column-scale");
        Map<String, String> names = pairs(words, "--column-name");
        Map<String, String> all = new LinkedHashMap<>(scales);
        all.putAll(names);
        List<ColumnReading> columns = all.keySet().stream()
                .map(column -> new ColumnReading(
                        column,
                        Optional.ofNullable(names.get(column)),
                        Optional.ofNullable(scales.get(column))
                                .map(text -> ValueScale.parse(text, BadInput.in("--column-scale")))))
                .toList();
        return new TableReading(
                word(words, "--separator", Separator.values(), Separator::word),
                word(words, "--decimal-sign", DecimalSign.values(), DecimalSign::word),
                Options.text(words, "--time-column"),
                word(words, "--time-unit", TimeUnit.values(), TimeUnit::word),
                columns);
    }

    private static Map<String, String> pairs(ParseResult words, String option) {
        Map<String, String> pairs = new LinkedHashMap<>();
        for (String each : Options.<String>all(words, option)) {
            int sign = each.lastIndexOf('=');
            if (sign < 1 || each.substring(sign + 1).isBlank()) {
                throw BadInput.in(option).found("\"" + each + "\"", "a column, = and a value, such as \"2=...\"");
            }
            pairs.put(each.substring(0, sign).strip(), each.substring(sign + 1).strip());
        }
        return pairs;
    }

    private static <T> Optional<T> word(ParseResult words, String option, T[] all, Function<T, String> word) {
        return Options.text(words, option).map(said -> Arrays.stream(all)
                .filter(each -> word.apply(each).equals(said.strip()))
                .findFirst()
                .orElseThrow(() -> {
                    List<String> known = Arrays.stream(all).map(word).toList();
                    String nearest = Nearest.alike(said, known)
                            .map(near -> "; did you mean '" + near + "'?")
                            .orElse("");
                    return BadInput.in(option)
                            .found("\"" + said + "\"", "one of " + String.join(", ", known) + nearest);
                }));
    }
}
