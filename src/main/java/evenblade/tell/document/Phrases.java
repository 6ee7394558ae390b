package evenblade.tell.document;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Estimated;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Moment;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Value.SignalValue;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.LengthUnit;
import evenblade.base.units.SignalUnit;
import evenblade.judge.findings.Finding;
import evenblade.tell.document.Sentence.Span;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.Collectors;

/**
 * Puts facts into words: each code has one phrase in {@code phrases.properties}, with slots for its values.
 *
 * @param face where the words are shown
 * @param figures how the figures in them are written
 */
public record Phrases(Face face, FigureFormat figures) {
    /** A file may hold a line without end; so many letters of it tell which it is. */
    private static final int MOST_QUOTED = 500;

    private static final int SIGNAL_FIGURES = 4; // as many as twelve bits of a converter tell

    private static final Map<String, Template> ALL = load();
    private static final String MEANING = ".meaning";
    private static final String CURE = ".cure";
    private static final String BECAUSE = ".because";
    private static final String PLAIN = ".plain";

    /** Phrases for a reader of millimetres. */
    public static Phrases of(Face face) {
        return new Phrases(face, new FigureFormat(LengthUnit.MILLIMETRE));
    }

    /** A fact as a sentence. */
    public Sentence sentence(Fact fact) {
        List<Span> spans = new ArrayList<>();
        say(fact, spans);
        return new Sentence(spans);
    }

    public String text(Fact fact) {
        return sentence(fact).text();
    }

    /** A warning as a sentence; where somebody can look it up at once, its code stands behind it. */
    public Sentence sentence(Warning warning) {
        List<Span> spans = new ArrayList<>(sentence(warning.fact()).spans());
        if (face != Face.PAPER) {
            spans.add(new Span.Words(" [" + warning.code().word() + "]"));
        }
        return new Sentence(spans);
    }

    public String text(Warning warning) {
        return sentence(warning).text();
    }

    public List<String> texts(List<Warning> warnings) {
        return warnings.stream().map(this::text).toList();
    }

    /** What a warning means for the figures beside it. */
    public static String meaning(WarningCode code) {
        return own(key(code) + MEANING);
    }

    /** What to do about it. */
    public static String cure(WarningCode code) {
        return own(key(code) + CURE);
    }

    /** A cause in a customer's words, as what goes on after "because": {@code blade B was out of track}. */
    public String because(Finding finding) {
        return plainly(finding, BECAUSE);
    }

    /** A cause in a customer's words, as a thing: {@code blade B out of track}. */
    public String plainly(Finding finding) {
        return plainly(finding, PLAIN);
    }

    /** Where the statement names blades, it has words of its own for them. */
    private String plainly(Finding finding, String form) {
        Fact statement = finding.statement();
        List<Span> spans = new ArrayList<>();
        Optional.ofNullable(ALL.get(key(statement.code()) + form))
                .ifPresentOrElse(
                        own -> say(own, statement.values(), spans),
                        () -> say(template(key(finding.cause()) + form), List.of(), spans));
        return new Sentence(spans).text();
    }

    /** What a code says, with dots where its values stand. */
    public static String form(Code code) {
        return template(key(code)).parts().stream()
                .map(part -> part instanceof Template.Words words
                        ? words.text()
                        : part instanceof Template.Choice choice ? choice.other() : "…")
                .collect(Collectors.joining());
    }

    private static String own(String key) {
        return new Sentence(template(key).parts().stream()
                        .<Span>map(part -> new Span.Words(((Template.Words) part).text()))
                        .toList())
                .text();
    }

    /** The name of a code's phrase: its list and its own name. */
    static String key(Code code) {
        return ((Enum<?>) code).getDeclaringClass().getSimpleName() + "." + code.name();
    }

    static Map<String, Template> all() {
        return ALL;
    }

    private void say(Fact fact, List<Span> spans) {
        String key = key(fact.code());
        Template template = Optional.ofNullable(ALL.get(key + face.suffix())).orElseGet(() -> template(key));
        if (template.indices().size() != fact.values().size()) {
            throw new IllegalArgumentException(
                    key + " has " + template.indices().size() + " slots for " + fact.values());
        }
        say(template, fact.values(), spans);
    }

    private void say(Template template, List<Value> values, List<Span> spans) {
        for (Template.Part part : template.parts()) {
            if (part instanceof Template.Words words) {
                spans.add(new Span.Words(words.text()));
            } else if (part instanceof Template.Slot slot) {
                show(values.get(slot.index()), slot, spans);
            } else if (part instanceof Template.Choice choice) {
                boolean one = one(values.get(choice.index()));
                spans.add(new Span.Words(one ? choice.one() : choice.other()));
            }
        }
    }

    private static boolean one(Value value) {
        return value instanceof Listed listed
                ? listed.items().size() == 1
                : value instanceof Count count && count.number() == 1;
    }

    private void show(Value value, Template.Slot slot, List<Span> spans) {
        if (value instanceof Fact fact) {
            say(fact, spans);
        } else if (value instanceof Listed listed) {
            for (int i = 0; i < listed.items().size(); i++) {
                if (i > 0) {
                    spans.add(new Span.Words(slot.join()));
                }
                show(listed.items().get(i), slot, spans);
            }
        } else if (value instanceof Quoted quoted) {
            String text = quoted.text().length() <= MOST_QUOTED
                    ? quoted.text()
                    : quoted.text().substring(0, MOST_QUOTED) + "…";
            spans.add(new Span.UserText(slot.quoted() ? "'" + text + "'" : text));
        } else {
            spans.add(new Span.Figure(figure(value, slot)));
        }
    }

    private String figure(Value value, Template.Slot slot) {
        if (value instanceof Amount amount) {
            return amount(amount, slot);
        }
        if (value instanceof Estimated estimated) {
            return slot.form().isEmpty()
                    ? figures.text(estimated)
                    : figures.withError(estimated, Integer.parseInt(slot.form().get()), slot.signed());
        }
        if (value instanceof Count count) {
            return Long.toString(count.number());
        }
        if (value instanceof SignalValue signal) {
            int figures =
                    slot.form().map(form -> Integer.parseInt(form.substring(1))).orElse(SIGNAL_FIGURES);
            return FigureFormat.significant(signal.value(), figures)
                    + (signal.unit() == SignalUnit.UNSTATED
                            ? ""
                            : " " + signal.unit().display());
        }
        return ((Moment) value).instant().toString();
    }

    private String amount(Amount amount, Template.Slot slot) {
        if (slot.form().isEmpty()) {
            return figures.text(amount);
        }
        String form = slot.form().get();
        if (form.equals("b")) {
            return figures.both(amount);
        }
        if (form.equals("t")) {
            return FigureFormat.duration(amount.value());
        }
        boolean figuresCounted = form.startsWith("g");
        int digits = Integer.parseInt(figuresCounted ? form.substring(1) : form);
        if (!figuresCounted && !slot.bare() && !slot.signed()) {
            return figures.text(amount, digits);
        }
        double shown = figures.shown(amount);
        String number = figuresCounted ? FigureFormat.significant(shown, digits) : FigureFormat.fixed(shown, digits);
        return (slot.signed() && shown >= 0 ? "+" : "")
                + number
                + (slot.bare() || amount.measure() == Measure.NUMBER ? "" : FigureFormat.unit(amount.measure()));
    }

    private static Template template(String key) {
        return Objects.requireNonNull(ALL.get(key), () -> "no phrase " + key);
    }

    private static Map<String, Template> load() {
        Properties lines = new Properties();
        try (InputStreamReader text = new InputStreamReader(
                Phrases.class.getResourceAsStream("phrases.properties"), StandardCharsets.UTF_8)) {
            lines.load(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return lines.stringPropertyNames().stream()
                .collect(Collectors.toUnmodifiableMap(key -> key, key -> Template.parse(lines.getProperty(key))));
    }
}
