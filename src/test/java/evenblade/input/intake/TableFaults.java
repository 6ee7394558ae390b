package evenblade.input.intake;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntPredicate;

/**
 * Breaks a sound table in every way that loggers, phones, cables and clocks are known to (common practice, no source):
 * the file as it would then lie on disk. The table's first column is the time, in the unit that is given.
 */
public final class TableFaults {
    private final List<String> head;
    private final List<String> rows;
    private final double perSecond;
    private final int decimals;
    private final Random random;

    private TableFaults(List<String> head, List<String> rows, double perSecond, int decimals, long seed) {
        this.head = head;
        this.rows = rows;
        this.perSecond = perSecond;
        this.decimals = decimals;
        this.random = new Random(seed);
    }

    /**
     * A way to break a table.
     *
     * @param mustBeRead whether a reader that refuses the table refuses needlessly
     */
    public record Broken(byte[] file, boolean mustBeRead) {}

    /**
     * Ways to break a table.
     *
     * @param text of the table; lines before the first that starts with a digit are headings
     * @param perSecond units of its time in a second
     * @param decimals of its stamps
     */
    public static TableFaults of(String text, double perSecond, int decimals, long seed) {
        List<String> head = new ArrayList<>();
        List<String> rows = new ArrayList<>();
        text.lines().forEach(line -> {
            boolean row = !line.isEmpty() && Character.isDigit(line.charAt(0));
            (row ? rows : head).add(line);
        });
        return new TableFaults(head, rows, perSecond, decimals, seed);
    }

    /** All of them by name. */
    public Map<String, Broken> all() {
        Map<String, Broken> all = new LinkedHashMap<>();
        for (double step : new double[] {-3600, -60, -5, -1, -0.1, -0.01, 0.1, 1, 5, 60, 3600, 86_400, 31_557_600}) {
            for (double at : new double[] {0.001, 0.1, 0.37, 0.5, 0.8, 0.999}) {
                all.put("clock steps by " + step + " s at " + at, read(stepped(step, at)));
            }
        }
        for (double at : new double[] {0.02, 0.3, 0.5, 0.71}) {
            all.put("clock begins anew at " + at, read(restarted(at, 0, false)));
            all.put("board reboots at " + at, read(restarted(at, 3, true)));
        }
        all.put("board reboots four times", read(rebootedOften()));
        wraps(all);
        digits(all);
        garbage(all);
        rowsLostAndDoubled(all);
        columns(all);
        return all;
    }

    private void wraps(Map<String, Broken> all) {
        all.put("counter of 16 bits of ms", read(wrapped(1e-3, 65536, 40)));
        all.put("counter of 32 bits of ms", read(wrapped(1e-3, 4294967296.0, 4294967296e-3 - 11)));
        all.put("counter of 16 bits of us", read(wrapped(1e-6, 65536, 0.01)));
        all.put("counter of 32 bits of us", read(wrapped(1e-6, 4294967296.0, 4294967296e-6 - 17)));
    }

    private void digits(Map<String, Broken> all) {
        for (int i = 0; i < 12; i++) {
            all.put("one wrong digit in a stamp, " + i, read(file(head, flipped(rows, 1, true))));
        }
        all.put("0.3 % of stamps with a wrong digit", read(file(head, flipped(rows, rows.size() * 3 / 1000, true))));
        all.put("0.3 % of rows with a wrong digit", read(file(head, flipped(rows, rows.size() * 3 / 1000, false))));
    }

    private void garbage(Map<String, Broken> all) {
        for (int bytes : new int[] {1, 7, 512, 4096, 200_000}) {
            all.put(bytes + " zero bytes at the start", read(joined(new byte[bytes], file(head, rows))));
        }
        for (int bytes : new int[] {5, 60, 900}) {
            byte[] noise = noise(bytes);
            all.put(bytes + " bytes of noise at the start", read(joined(noise, file(head, rows))));
            all.put(
                    bytes + " bytes of noise and a line end at the start",
                    read(joined(joined(noise, "\n".getBytes(StandardCharsets.US_ASCII)), file(head, rows))));
        }
        all.put(
                "half a row at the start",
                read(file(List.of(), withFirst(rows.get(0).substring(3)))));
        all.put("a row with half a stamp at the start", read(file(head, withFirst("2" + rows.get(0)))));
        all.put("1 % of rows of noise", read(someRows(0.01, row -> noise(row.length()))));
        all.put("1 % of rows of zero bytes", read(someRows(0.01, row -> new byte[row.length()])));
        all.put(
                "1 % of rows of question marks",
                read(someRows(0.01, row -> "?".repeat(20).getBytes(StandardCharsets.US_ASCII))));
        all.put(
                "1 % of rows cut",
                read(someRows(0.01, row -> bytes(row.substring(0, 1 + random.nextInt(row.length() - 1))))));
        all.put("a quote in 1 % of rows", read(someRows(0.01, row -> bytes("\"" + row))));
        all.put("5 % of rows of noise", new Broken(someRows(0.05, row -> noise(row.length())), false));
        all.put(
                "zero bytes in the middle",
                read(joined(
                        joined(file(head, rows.subList(0, rows.size() / 2)), new byte[4096]),
                        file(List.of(), rows.subList(rows.size() / 2, rows.size())))));
        byte[] whole = file(head, rows);
        for (int cut : new int[] {2, 5, 9, 14, 20}) {
            all.put("last row cut by " + cut, read(java.util.Arrays.copyOf(whole, whole.length - cut)));
        }
    }

    private void rowsLostAndDoubled(Map<String, Broken> all) {
        for (int burst : new int[] {4, 10, 32, 100}) {
            all.put("rows in bursts of " + burst, read(bursts(burst, 20e-6)));
            all.put("rows in bursts of " + burst + " with one stamp", read(bursts(burst, 0)));
        }
        all.put("1 % of rows lost", read(without(row -> random.nextInt(100) == 0)));
        all.put("rows of 0.3 s lost", read(without(between(0.4, 0.3))));
        for (double lostS : new double[] {0.75, 1.6, 1.8}) {
            for (double at : new double[] {0.3, 0.6}) {
                all.put("rows of " + lostS + " s lost at " + at, read(without(between(at, lostS))));
            }
        }
        all.put("rows of 3 s lost", read(without(between(0.4, 3))));
        all.put(
                "rows of 0.3 s lost five times",
                read(without(row -> row % (rows.size() / 6) < rows.size() / 100 && row > rows.size() / 9)));
        List<String> doubled = new ArrayList<>();
        rows.forEach(row -> {
            doubled.add(row);
            if (random.nextInt(100) == 0) {
                doubled.add(row);
            }
        });
        all.put("1 % of rows doubled", read(file(head, doubled)));
        List<String> again = new ArrayList<>(rows);
        again.addAll(rows.size() / 2, rows.subList(rows.size() / 2 - 150, rows.size() / 2));
        all.put("150 rows sent again", read(file(head, again)));
        List<String> swapped = new ArrayList<>(rows);
        for (int i = 20; i + 12 < rows.size(); i += 400) {
            java.util.Collections.swap(swapped, i, i + 1 + i % 9);
        }
        all.put("rows out of order", read(file(head, swapped)));
        all.put(
                "second half before the first",
                read(file(head, concat(rows.subList(rows.size() / 2, rows.size()), rows.subList(0, rows.size() / 2)))));
    }

    private void columns(Map<String, Broken> all) {
        for (double forS : new double[] {0.5, 2}) {
            all.put(
                    "time stands still for " + forS + " s",
                    read(restamped((t, i) -> inside(i, 0.4, forS) ? at(0.4) : t)));
            all.put(
                    "time stands still for " + forS + " s and goes on from there",
                    read(restamped((t, i) -> inside(i, 0.4, forS) ? at(0.4) : t > at(0.4) ? t - forS : t)));
        }
        all.put("time stands still from 0.7 on", read(restamped((t, i) -> i > 0.7 * rows.size() ? at(0.7) : t)));
        all.put("time stands still throughout", new Broken(restamped((t, i) -> 3), false));
        all.put("a value stands still from 0.6 on", new Broken(stuck(0.6), false));
        all.put("a value stands still throughout", new Broken(stuck(0), false));
        for (String huge : List.of("1e308", "-1e308", "9.9e307", "1e154")) {
            List<String> changed = new ArrayList<>(rows);
            changed.set(777, changed.get(777).replaceFirst(",[^,]*", "," + huge));
            all.put("a value of " + huge, new Broken(file(head, changed), false));
        }
        all.put("stamps of 1e308", new Broken(restamped((t, i) -> 1e308), false));
    }

    private interface Restamp {
        double seconds(double was, int row);
    }

    private static Broken read(byte[] file) {
        return new Broken(file, true);
    }

    private double seconds(String row) {
        return Double.parseDouble(row.substring(0, row.indexOf(','))) / perSecond;
    }

    private double at(double share) {
        return seconds(rows.get((int) (share * (rows.size() - 1))));
    }

    private boolean inside(int row, double share, double forS) {
        double t = seconds(rows.get(row)) - at(share);
        return t >= 0 && t < forS;
    }

    private IntPredicate between(double share, double forS) {
        return row -> inside(row, share, forS);
    }

    private String stamped(String row, double seconds) {
        return String.format(Locale.ROOT, "%." + decimals + "f", seconds * perSecond) + row.substring(row.indexOf(','));
    }

    private byte[] restamped(Restamp restamp) {
        List<String> changed = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            changed.add(stamped(rows.get(i), restamp.seconds(seconds(rows.get(i)), i)));
        }
        return file(head, changed);
    }

    private byte[] stepped(double byS, double share) {
        int from = (int) (share * rows.size());
        double startS = byS < 0 ? 4000 : 0;
        return restamped((t, i) -> startS + t + (i >= from ? byS : 0));
    }

    private byte[] restarted(double share, double lostS, boolean banner) {
        int from = (int) (share * rows.size());
        double zero = seconds(rows.get(from));
        List<String> changed = new ArrayList<>(rows.subList(0, from));
        if (banner) {
            changed.add("\u0000\u0000boot: 0x13 rst, clock 80 MHz");
            changed.addAll(head);
        }
        for (String row : rows.subList(from, rows.size())) {
            double t = seconds(row) - zero;
            if (t >= lostS) {
                changed.add(stamped(row, t - lostS + 0.31));
            }
        }
        return file(head, changed);
    }

    private byte[] rebootedOften() {
        double all = seconds(rows.get(rows.size() - 1));
        List<String> changed = new ArrayList<>();
        for (String row : rows) {
            double t = seconds(row);
            double turn = all / 4.4;
            double own = t % turn;
            if (own > 0.4) {
                changed.add(stamped(row, own));
            }
        }
        return file(head, changed);
    }

    private byte[] wrapped(double unit, double length, double startS) {
        return restampedWhole(t -> Math.floor((t + startS) / unit) % length, unit);
    }

    private byte[] restampedWhole(DoubleUnaryOperator counter, double unit) {
        List<String> changed = new ArrayList<>();
        for (String row : rows) {
            changed.add(String.format(Locale.ROOT, "%.0f", counter.applyAsDouble(seconds(row)))
                    + row.substring(row.indexOf(',')));
        }
        List<String> heading = new ArrayList<>(head);
        int last = heading.size() - 1;
        heading.set(
                last,
                (unit == 1e-3 ? "time (ms)" : "time (us)")
                        + heading.get(last).substring(heading.get(last).indexOf(',')));
        return file(heading, changed);
    }

    private List<String> flipped(List<String> in, int count, boolean stampOnly) {
        List<String> changed = new ArrayList<>(in);
        for (int n = 0; n < count; n++) {
            int at = 1 + random.nextInt(in.size() - 1);
            char[] row = in.get(at).toCharArray();
            int end = stampOnly ? in.get(at).indexOf(',') : row.length;
            int place;
            do {
                place = random.nextInt(end);
            } while (!Character.isDigit(row[place]));
            row[place] = (char) ('0' + (row[place] - '0' + 1 + random.nextInt(9)) % 10);
            changed.set(at, new String(row));
        }
        return changed;
    }

    private interface RowBytes {
        byte[] of(String row);
    }

    private byte[] someRows(double share, RowBytes instead) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(file(head, List.of()));
        for (String row : rows) {
            // A little fewer than the share, so that chance doesn't lead over it.
            out.writeBytes(random.nextDouble() < 0.8 * share ? instead.of(row) : bytes(row));
            out.write('\n');
        }
        return out.toByteArray();
    }

    private byte[] bursts(int size, double betweenS) {
        List<String> changed = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            int last = Math.min(rows.size() - 1, i / size * size + size - 1);
            double arrivalS = seconds(rows.get(last)) + 1e-3 + betweenS * (i % size);
            changed.add(String.format(Locale.ROOT, "%." + (decimals + 2) + "f", arrivalS * perSecond)
                    + rows.get(i).substring(rows.get(i).indexOf(',')));
        }
        return file(head, changed);
    }

    private byte[] without(IntPredicate lost) {
        List<String> kept = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            if (!lost.test(i)) {
                kept.add(rows.get(i));
            }
        }
        return file(head, kept);
    }

    private byte[] stuck(double share) {
        int from = (int) (share * rows.size());
        String value = rows.get(from).split(",")[1];
        List<String> changed = new ArrayList<>(rows);
        changed.replaceAll(row -> row);
        for (int i = from; i < changed.size(); i++) {
            changed.set(i, changed.get(i).replaceFirst(",[^,]*", "," + value));
        }
        return file(head, changed);
    }

    private List<String> withFirst(String row) {
        return concat(List.of(row), rows);
    }

    private static List<String> concat(List<String> first, List<String> second) {
        List<String> all = new ArrayList<>(first);
        all.addAll(second);
        return all;
    }

    private byte[] noise(int bytes) {
        byte[] noise = new byte[bytes];
        random.nextBytes(noise);
        for (int i = 0; i < bytes; i++) {
            // A line end would make two rows of one.
            noise[i] = noise[i] == '\n' || noise[i] == '\r' ? (byte) '~' : noise[i];
        }
        return noise;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] joined(byte[] first, byte[] second) {
        byte[] all = java.util.Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, all, first.length, second.length);
        return all;
    }

    private static byte[] file(List<String> head, List<String> rows) {
        StringBuilder text = new StringBuilder();
        head.forEach(line -> text.append(line).append('\n'));
        rows.forEach(row -> text.append(row).append('\n'));
        return bytes(text.toString());
    }
}
