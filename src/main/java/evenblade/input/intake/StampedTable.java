package evenblade.input.intake;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.base.units.SignalUnit;
import evenblade.base.units.ValueScale;
import evenblade.input.recording.Channel;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.QualityMeter;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.ColumnReading;
import evenblade.input.recording.TableReading.DecimalSign;
import evenblade.input.recording.TableReading.Separator;
import evenblade.input.recording.TableReading.TimeUnit;
import evenblade.input.recording.TimeBase;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToLongFunction;
import java.util.stream.IntStream;

/** Reads a table of time stamps and values into a recording. */
final class StampedTable {
    private final Path file;
    private final TableShape shape;
    private final List<ColumnHeading> headings;
    private final List<Warning> warnings = new ArrayList<>();

    private final SaidColumns columnsSaid;
    private final TableReading said;
    private final Optional<Path> arrivals;

    private StampedTable(Path file, TableShape shape, IntakeOptions options) {
        this.file = file;
        this.shape = shape;
        this.said = options.table();
        this.arrivals = options.arrivalsOf(file);
        this.columnsSaid = SaidColumns.of(file, shape, said);
        this.headings = columnsSaid.headings();
    }

    /**
     * Reads the table.
     *
     * @param head its first bytes
     */
    static Intake.Whole read(Path file, byte[] head, IntakeOptions options) throws IOException {
        TextEncoding encoding = TextEncoding.of(head);
        int mark = encoding.markBytes();
        String text = new String(head, mark, head.length - mark, encoding.charset());
        long size = Files.size(file);
        TableShape shape = TableShape.of(file, text, head.length >= size, options.table());
        TableSize.require(file, size, text.length() * (double) size / head.length, text, shape);
        StampedTable table = new StampedTable(file, shape, options);
        if (options.fullScale().isPresent()) {
            table.warn(WarningCode.FULL_SCALE_UNUSED);
        }
        return table.read(encoding);
    }

    private void warn(WarningCode code, Value... values) {
        warnings.add(Warning.of(code, Subject.Whole.RECORDING, values));
    }

    private Intake.Whole read(TextEncoding encoding) throws IOException {
        List<Integer> wanted = wantedColumns();
        try (DigestInputStream bytes =
                new DigestInputStream(new BufferedInputStream(Files.newInputStream(file)), HashedFile.sha256())) {
            // Read and not skipped, so that the mark is in the hash.
            bytes.readNBytes(encoding.markBytes());
            InputStreamReader text = new InputStreamReader(bytes, encoding.charset());
            TableRows.Read read = TableRows.all(file, text, shape, wanted);
            bytes.transferTo(OutputStream.nullOutputStream());
            read.skipped().ifPresent(warnings::add);
            FileHash sha256 = FileHash.of(
                    HexFormat.of().formatHex(bytes.getMessageDigest().digest()));
            return recording(wanted, read, sha256);
        }
    }

    /** Columns of numbers or stamps; the rest is left out, and said so. */
    private List<Integer> wantedColumns() {
        List<Integer> wanted = new ArrayList<>();
        List<Value> left = new ArrayList<>();
        for (int i = 0; i < shape.columns(); i++) {
            CellText.Type type = shape.types().get(i);
            boolean numbers = type == CellText.Type.NUMBER && headings.get(i).role() != ColumnHeading.Role.FOREIGN;
            if (numbers || type.stamp()) {
                wanted.add(i);
            } else if (type != CellText.Type.EMPTY || i < shape.headings().size()) {
                left.add(named(i));
            }
        }
        if (!left.isEmpty()) {
            warn(WarningCode.COLUMN_LEFT_OUT, new Listed(left));
        }
        boolean values = wanted.stream()
                .anyMatch(column -> headings.get(column).role() != ColumnHeading.Role.TIME
                        && headings.get(column).role() != ColumnHeading.Role.INDEX
                        && !shape.types().get(column).stamp());
        if (!values) {
            throw noVibration(wanted);
        }
        return wanted;
    }

    /** Says what the columns are instead of vibration. */
    private BadInput noVibration(List<Integer> wanted) {
        List<String> others = IntStream.range(0, shape.columns())
                .filter(column ->
                        !wanted.contains(column) || headings.get(column).role() == ColumnHeading.Role.INDEX)
                .filter(column -> !headings.get(column).name().isBlank())
                .mapToObj(column -> "'" + headings.get(column).name() + "'")
                .toList();
        return BadInput.in(file)
                .line(shape.firstRow())
                .found(
                        others.isEmpty() ? "only times, no values" : "no vibration in " + String.join(", ", others),
                        "at least one column of acceleration, velocity or sensor voltage beside the time");
    }

    private Intake.Whole recording(List<Integer> columns, TableRows.Read read, FileHash sha256) {
        BadInput.Place place = BadInput.in(file);
        List<double[]> numbers = read.columns();
        if (numbers.get(0).length < 2) {
            throw place.line(shape.firstRow())
                    .found(numbers.get(0).length + " row of numbers", "at least 1 s of signal");
        }
        TimeColumn.Said timeSaid =
                new TimeColumn.Said(columnsSaid.time(), said.timeUnit().map(TimeUnit::seconds));
        TimeColumn time = TimeColumn.find(headings, shape.types(), columns, numbers, timeSaid)
                .orElseThrow(() -> place.line(shape.firstRow())
                        .found(
                                "no column of time stamps among " + columns.size() + " of numbers",
                                "a column of rising times in s, ms, µs or ns, or of dates with time"));
        warnings.addAll(time.warnings());
        List<Integer> valueColumns = new ArrayList<>();
        List<double[]> values = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            if (holdsValues(columns.get(i), numbers.get(i))) {
                valueColumns.add(columns.get(i));
                values.add(numbers.get(i));
            }
        }
        int timeAt = valueColumns.indexOf(time.column());
        if (timeAt >= 0) {
            valueColumns.remove(timeAt);
            values.remove(timeAt);
        }
        if (values.isEmpty()) {
            throw place.line(shape.firstRow())
                    .found("only times, no values", "at least one column of values beside the time");
        }
        double unit = time.unit();
        double[] raw = Arrays.stream(numbers.get(columns.indexOf(time.column())))
                .map(stamp -> stamp * unit)
                .toArray();
        boolean clock = shape.types().get(time.column()) == CellText.Type.CLOCK;
        TableTimes times = TableTimes.of(raw, values, clock, place, row -> (int) read.lines()[row], arrivals);
        leaveOutStanding(valueColumns, values, times, row -> (long) read.lines()[row]);
        Recording recording = assemble(valueColumns, values, times, sha256);
        return new Intake.Whole(recording, asRead(time, valueColumns, recording), SaidColumns.written(shape));
    }

    /** Leaves out columns that stood still while others shook, as long as another is left. */
    private void leaveOutStanding(
            List<Integer> columns, List<double[]> values, TableTimes times, IntToLongFunction lineOf) {
        List<double[]> inTime = values.stream()
                .map(each -> Arrays.stream(times.rows())
                        .mapToDouble(row -> each[row])
                        .toArray())
                .toList();
        for (int i = columns.size() - 1; i >= 0 && columns.size() > 1; i--) {
            Optional<StandingColumn> standing = StandingColumn.in(inTime, i, times.rateHz());
            boolean said = columnsSaid.values().contains(columns.get(i));
            if (standing.isPresent() && !said) {
                warn(
                        WarningCode.COLUMN_STANDS_STILL,
                        named(columns.get(i)),
                        Measure.TIME.of(standing.get().rows() / times.rateHz()),
                        new Count(lineOf.applyAsLong(times.rows()[standing.get().row()])));
                columns.remove(i);
                values.remove(i);
            }
        }
    }

    private TableReading asRead(TimeColumn time, List<Integer> valueColumns, Recording recording) {
        boolean clock = shape.types().get(time.column()).stamp();
        return new TableReading(
                Separator.of(shape.separator()),
                Optional.of(shape.decimalComma() ? DecimalSign.COMMA : DecimalSign.POINT),
                Optional.of(number(time.column())),
                clock ? Optional.empty() : TimeUnit.of(time.unit()),
                IntStream.range(0, valueColumns.size())
                        .mapToObj(i -> columnAsRead(
                                valueColumns.get(i), recording.channels().get(i)))
                        .toList());
    }

    private ColumnReading columnAsRead(int column, Channel channel) {
        double factor = headings.get(column).factor();
        return new ColumnReading(
                number(column),
                Optional.of(channel.name()),
                channel.unit() == SignalUnit.UNSTATED
                        ? Optional.empty()
                        : Optional.of(new ValueScale(factor, channel.unit())));
    }

    private static String number(int column) {
        return String.valueOf(column + 1);
    }

    private boolean holdsValues(int column, double[] numbers) {
        ColumnHeading.Role role = headings.get(column).role();
        boolean rowCount = role == ColumnHeading.Role.UNKNOWN
                && headings.get(column).name().isBlank()
                && TimeColumn.counts(numbers);
        if (columnsSaid.values().contains(column)) {
            return true;
        }
        return role != ColumnHeading.Role.TIME
                && role != ColumnHeading.Role.INDEX
                && !rowCount
                && !shape.types().get(column).stamp();
    }

    private Recording assemble(List<Integer> columns, List<double[]> values, TableTimes stamps, FileHash sha256) {
        BadInput.Place place = BadInput.in(file);
        warnings.addAll(stamps.warnings());
        TimeBase time = new TimeBase.Stamped(Series.of(stamps.seconds()), stamps.rateHz());
        SignalChecks.requireLength(place, time.durationS());
        List<Channel> channels = new ArrayList<>();
        List<ChannelQuality> quality = new ArrayList<>();
        List<QualityMeter> meters = new ArrayList<>();
        List<Warning> signalWarnings = new ArrayList<>();
        List<String> names = ChannelNames.of(columns, headings);
        for (int i = 0; i < columns.size(); i++) {
            ColumnHeading heading = headings.get(columns.get(i));
            double[] raw = values.get(i);
            double[] sorted = Arrays.stream(stamps.rows())
                    .mapToDouble(row -> raw[row] * heading.factor())
                    .toArray();
            SignalUnit unit = heading.unit().orElse(SignalUnit.UNSTATED);
            Channel channel =
                    new Channel(names.get(i), unit, Series.of(sorted), heading.role() != ColumnHeading.Role.TOTAL);
            QualityMeter meter = TableQuality.meter(channel.name(), sorted, stamps.rateHz());
            ChannelQuality measured = meter.quality(1, sorted[0]);
            channels.add(channel);
            meters.add(meter);
            quality.add(measured);
            signalWarnings.addAll(SignalChecks.warnings(measured, meter.constant(), unit, stamps.rateHz()));
        }
        SignalChecks.requireChange(place, meters);
        tellUnits(columns, channels);
        warnings.addAll(signalWarnings);
        Source source = new Source(
                file,
                sha256,
                "csv",
                false,
                stamps.rateHz(),
                time.durationS(),
                channels.stream().map(Channel::name).toList());
        return new Recording(
                source, time, channels, quality, Optional.of(stamps.quality()), warnings, stamps.stretches());
    }

    private void tellUnits(List<Integer> columns, List<Channel> channels) {
        List<Value> unstated = new ArrayList<>();
        List<String> totals = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            ColumnHeading heading = headings.get(columns.get(i));
            if (channels.get(i).unit() == SignalUnit.UNSTATED) {
                Quoted name = new Quoted(channels.get(i).name());
                unstated.add(heading.unitText()
                        .map(unit -> Fact.of(IntakeFact.NAME_WITH_UNIT, name, new Quoted(unit)))
                        .orElseGet(() -> Fact.of(IntakeFact.NAME, name)));
            }
            if (!channels.get(i).axis()) {
                totals.add(channels.get(i).name());
            }
        }
        if (!unstated.isEmpty()) {
            warn(WarningCode.UNIT_UNSTATED, new Listed(unstated));
        }
        if (!totals.isEmpty()) {
            warn(WarningCode.NOT_AN_AXIS, Listed.quoted(totals));
        }
    }

    private Fact named(int column) {
        String name = headings.get(column).name();
        return name.isBlank()
                ? Fact.of(IntakeFact.COLUMN_NUMBER, new Count(column + 1))
                : Fact.of(IntakeFact.NAME, new Quoted(name));
    }
}
