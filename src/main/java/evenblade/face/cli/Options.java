package evenblade.face.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** Describes the words of a command and reads them back; a word that may be left out comes as optional. */
final class Options {
    private Options() {}

    /** {@code --name}, said or not. */
    static OptionSpec flag(String name, String description) {
        return OptionSpec.builder(name)
                .type(boolean.class)
                .description(description)
                .build();
    }

    /** {@code --name LABEL}, at most once. */
    static OptionSpec value(String name, String label, Class<?> type, String description) {
        return one(name, label, type, description).build();
    }

    /** {@code --name LABEL}, needed. */
    static OptionSpec needed(String name, String label, Class<?> type, String description) {
        return one(name, label, type, description).required(true).build();
    }

    /** {@code --name LABEL}, any number of times. */
    static OptionSpec repeated(String name, String label, Class<?> type, String description) {
        return OptionSpec.builder(name)
                .paramLabel(label)
                .type(ArrayList.class)
                .auxiliaryTypes(type)
                .description(description)
                .build();
    }

    /** The installation file, needed. */
    static OptionSpec installation() {
        return needed("--installation", "FILE", Path.class, "The installation file.");
    }

    static OptionSpec json() {
        return flag("--json", "Print one JSON document.");
    }

    static OptionSpec help() {
        return OptionSpec.builder("-h", "--help")
                .usageHelp(true)
                .description("Show this help and end.")
                .build();
    }

    /** A word without a name, needed, at a place counted from 0. */
    static PositionalParamSpec word(int place, String label, Class<?> type, String description) {
        return PositionalParamSpec.builder()
                .index(String.valueOf(place))
                .paramLabel(label)
                .type(type)
                .required(true)
                .description(description)
                .build();
    }

    /** One or more words without a name, from a place counted from 0 to the end. */
    static PositionalParamSpec words(int from, String label, Class<?> type, String description) {
        return PositionalParamSpec.builder()
                .index(from + "..*")
                .arity("1..*")
                .paramLabel(label)
                .type(ArrayList.class)
                .auxiliaryTypes(type)
                .required(true)
                .description(description)
                .build();
    }

    static boolean said(ParseResult words, String name) {
        return words.hasMatchedOption(name);
    }

    static Optional<String> text(ParseResult words, String name) {
        return Optional.ofNullable(words.matchedOptionValue(name, (String) null));
    }

    static OptionalDouble number(ParseResult words, String name) {
        Double value = words.matchedOptionValue(name, (Double) null);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    static OptionalInt whole(ParseResult words, String name) {
        Integer value = words.matchedOptionValue(name, (Integer) null);
        return value == null ? OptionalInt.empty() : OptionalInt.of(value);
    }

    static Optional<Path> path(ParseResult words, String name) {
        return Optional.ofNullable(words.matchedOptionValue(name, (Path) null));
    }

    static <T> List<T> all(ParseResult words, String name) {
        return List.copyOf(words.matchedOptionValue(name, List.<T>of()));
    }

    private static OptionSpec.Builder one(String name, String label, Class<?> type, String description) {
        return OptionSpec.builder(name).paramLabel(label).type(type).description(description);
    }
}
