package evenblade.keep.job;

import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonObject;
import evenblade.base.units.ValueScale;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.ColumnReading;
import evenblade.input.recording.TableReading.DecimalSign;
import evenblade.input.recording.TableReading.Separator;
import evenblade.input.recording.TableReading.TimeUnit;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Function;

/** How the table of a run is to be read, as JSON. */
final class TableFormat {
    private TableFormat() {}

    /** Empty where all was left to the reader. */
    static Optional<JsonFields> written(TableReading table) {
        if (table.unsaid()) {
            return Optional.empty();
        }
        return Optional.of(new JsonFields()
                .put("separator", table.separator().map(Separator::word))
                .put("decimalSign", table.decimalSign().map(DecimalSign::word))
                .put("timeColumn", table.timeColumn())
                .put("timeUnit", table.timeUnit().map(TimeUnit::word))
                .put(
                        "columns",
                        table.columns().stream()
                                .map(each -> new JsonFields()
                                        .put("column", each.column())
                                        .put("name", each.name())
                                        .put("oneIs", each.scale().map(ValueScale::text)))
                                .toList()));
    }

    static TableReading read(JsonObject json) {
        json.requireOnly("separator", "decimalSign", "timeColumn", "timeUnit", "columns");
        return new TableReading(
                word(json, "separator", Separator.values(), Separator::word),
                word(json, "decimalSign", DecimalSign.values(), DecimalSign::word),
                json.optionalText("timeColumn"),
                word(json, "timeUnit", TimeUnit.values(), TimeUnit::word),
                json.objects("columns").stream().map(TableFormat::column).toList());
    }

    private static ColumnReading column(JsonObject json) {
        json.requireOnly("column", "name", "oneIs");
        return new ColumnReading(
                json.text("column"),
                json.optionalText("name"),
                json.optionalText("oneIs").map(text -> ValueScale.parse(text, json.place("oneIs"))));
    }

    private static <T> Optional<T> word(JsonObject json, String key, T[] all, Function<T, String> word) {
        return json.optionalWord(key, Arrays.stream(all).map(word).toList()).flatMap(said -> Arrays.stream(all)
                .filter(each -> word.apply(each).equals(said))
                .findFirst());
    }
}
