package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.base.units.ValueScale;
import evenblade.face.app.PreviewRecording.SeenTable;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.ColumnReading;
import evenblade.input.recording.TableReading.DecimalSign;
import evenblade.input.recording.TableReading.Separator;
import evenblade.input.recording.TableReading.TimeUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** How a table is read: what the reader found out, and what is put right by hand. */
final class TableFields extends JPanel {
    private final transient Runnable changed;
    private final transient Consumer<JTextField> keep;
    private final transient Consumer<Choice<?>> keepChoice;
    private final Choice<Separator> separator = new Choice<>("separator", Separator::word);
    private final Choice<DecimalSign> decimalSign = new Choice<>("decimal sign", DecimalSign::word);
    private final Choice<Integer> timeColumn = new Choice<>("time column", this::heading);
    private final Choice<TimeUnit> timeUnit = new Choice<>("time unit", TableFields::words);
    private final JPanel columns = new JPanel(new MigLayout("insets 0, wrap 3", "[][grow 55,fill][grow 45,fill]"));
    private final transient Map<Integer, ColumnRow> rows = new LinkedHashMap<>();
    private transient List<String> headings = List.of();
    private boolean choicesKept;

    /**
     * The fields, not to be seen before a table is shown.
     *
     * @param changed told whenever something else is said
     * @param keep fills a field with what was typed before, and keeps what is typed
     * @param keepChoice the same for a choice
     */
    TableFields(Runnable changed, Consumer<JTextField> keep, Consumer<Choice<?>> keepChoice) {
        super(new MigLayout("insets 8, hidemode 3, wrap 4", "[][grow,fill,sg]16[][grow,fill,sg]"));
        this.changed = changed;
        this.keep = keep;
        this.keepChoice = keepChoice;
        setName("table");
        setBorder(BorderFactory.createTitledBorder("How the table is read; put right what is wrong"));
        separator.offer(List.of(Separator.values()));
        decimalSign.offer(List.of(DecimalSign.values()));
        timeUnit.offer(List.of(TimeUnit.values()));
        row("Between cells", separator);
        row("Decimal sign", decimalSign);
        row("Time stands in", timeColumn);
        row("Time counts", timeUnit);
        add(columns, "span 4, growx");
        setVisible(false);
    }

    private void row(String label, Choice<?> choice) {
        add(Look.label(label, choice));
        add(choice, "wmin 90");
        choice.addActionListener(e -> changed.run());
    }

    /** A column of values: what its channel is called and what a 1 in it stands for. */
    private record ColumnRow(JTextField channel, JTextField scale) {
        Optional<ColumnReading> said(int column) {
            Optional<String> name = EntryForm.typed(channel);
            Optional<ValueScale> oneIs =
                    EntryForm.typed(scale).map(text -> ValueScale.parse(text, BadInput.in(scale.getName())));
            return name.isEmpty() && oneIs.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new ColumnReading(String.valueOf(column), name, oneIs));
        }
    }

    /** Another file: nothing is said of it yet. */
    void another() {
        separator.unsay();
        decimalSign.unsay();
        timeColumn.unsay();
        timeUnit.unsay();
        rows.values().forEach(row -> {
            row.channel().setText("");
            row.scale().setText("");
        });
        rows.clear();
        columns.removeAll();
        headings = List.of();
        setVisible(false);
    }

    /**
     * What is said by hand.
     *
     * @throws BadInput where a scale can't be used
     */
    TableReading said() {
        return new TableReading(
                separator.said(),
                decimalSign.said(),
                timeColumn.said().map(String::valueOf),
                timeUnit.said(),
                rows.entrySet().stream()
                        .flatMap(row -> row.getValue().said(row.getKey()).stream())
                        .toList());
    }

    /** Says what was said of a table of the same shape. */
    void say(TableReading said) {
        said.separator().map(Separator::word).ifPresent(separator::say);
        said.decimalSign().map(DecimalSign::word).ifPresent(decimalSign::say);
        said.timeUnit().map(TableFields::words).ifPresent(timeUnit::say);
        said.timeColumn().flatMap(this::numbered).map(this::heading).ifPresent(timeColumn::say);
        for (ColumnReading each : said.columns()) {
            numbered(each.column()).map(rows::get).ifPresent(row -> {
                each.name().ifPresent(row.channel()::setText);
                each.scale().map(ValueScale::text).ifPresent(row.scale()::setText);
            });
        }
    }

    /** The number of a column that is named by number or by heading. */
    private Optional<Integer> numbered(String column) {
        if (column.matches("\\d{1,4}")) {
            return Optional.of(Integer.valueOf(column));
        }
        return IntStream.rangeClosed(1, headings.size())
                .filter(number -> headings.get(number - 1).equals(column)
                        || headings.get(number - 1).startsWith(column + " ("))
                .boxed()
                .findFirst();
    }

    /** Shows a table as it was read. */
    void show(SeenTable seen) {
        TableReading read = seen.asRead();
        boolean otherColumns = !headings.equals(seen.headings());
        headings = seen.headings();
        int time = Integer.parseInt(read.timeColumn().orElseThrow());
        separator.found(read.separator());
        decimalSign.found(read.decimalSign());
        timeUnit.found(read.timeUnit());
        if (otherColumns) {
            timeColumn.offer(IntStream.rangeClosed(1, headings.size()).boxed().toList());
        }
        timeColumn.found(Optional.of(time));
        Map<Integer, ColumnReading> values =
                read.columns().stream().collect(Collectors.toMap(each -> Integer.valueOf(each.column()), each -> each));
        if (otherColumns || rows.containsKey(time) || rows.size() != headings.size() - 1) {
            layColumns(time);
        }
        rows.forEach((column, row) -> hint(row, Optional.ofNullable(values.get(column))));
        setVisible(true);
        revalidate();
        keepChoices();
    }

    /** The file couldn't be read as it is said: leaves everything to be put right. */
    void showUnread() {
        setVisible(true);
        keepChoices();
    }

    /** Not before a table is there: until then nothing is offered, and what was said before would be forgotten. */
    private void keepChoices() {
        if (!choicesKept) {
            choicesKept = true;
            List.of(separator, decimalSign, timeUnit, timeColumn).forEach(keepChoice);
        }
    }

    private void layColumns(int time) {
        Map<Integer, ColumnRow> before = new LinkedHashMap<>(rows);
        rows.clear();
        columns.removeAll();
        columns.add(new JLabel("Column"));
        columns.add(new JLabel("Channel is called (across, along, up)"));
        columns.add(new JLabel("1 in the file is"));
        for (int column = 1; column <= headings.size(); column++) {
            if (column != time) {
                int number = column;
                ColumnRow row = Optional.ofNullable(before.get(column)).orElseGet(() -> row(number));
                JLabel label = new JLabel(heading(column));
                label.setLabelFor(row.channel());
                columns.add(label, "wmin 60, wmax 220lp");
                columns.add(row.channel(), "wmin 80");
                columns.add(row.scale(), "wmin 80");
                rows.put(column, row);
            }
        }
    }

    private ColumnRow row(int column) {
        ColumnRow row = new ColumnRow(new JTextField(12), new JTextField(10));
        row.channel().setName("channel of column " + column);
        row.scale().setName("scale of column " + column);
        for (JTextField field : List.of(row.channel(), row.scale())) {
            keep.accept(field);
            if (!field.getText().isEmpty()) {
                changed.run();
            }
            field.getDocument().addDocumentListener(new Drafts.Typed(changed));
        }
        return row;
    }

    private static void hint(ColumnRow row, Optional<ColumnReading> read) {
        String name = read.flatMap(ColumnReading::name).orElse("left out");
        String scale = read.isEmpty()
                ? "a unit takes it in"
                : read.flatMap(ColumnReading::scale).map(ValueScale::text).orElse("like 0.01 m/s2 or g");
        row.channel().putClientProperty("JTextField.placeholderText", name);
        row.scale().putClientProperty("JTextField.placeholderText", scale);
        row.channel().repaint();
        row.scale().repaint();
    }

    private String heading(int column) {
        String text = column <= headings.size() ? headings.get(column - 1) : "";
        return text.isBlank() ? "column " + column : column + "  " + text;
    }

    private static String words(TimeUnit unit) {
        return switch (unit) {
            case SECONDS -> "seconds";
            case MILLISECONDS -> "milliseconds";
            case MICROSECONDS -> "microseconds";
            case NANOSECONDS -> "nanoseconds";
        };
    }
}
