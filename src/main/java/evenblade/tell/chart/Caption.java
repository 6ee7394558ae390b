package evenblade.tell.chart;

import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.tell.document.FigureFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The line under a picture's title that says what it was drawn from: file, channel, rpm, and whether
 * the speed is confirmed; written one after the other.
 *
 * @param parts at least one, none empty
 */
public record Caption(List<String> parts) {
    public Caption {
        parts = List.copyOf(parts);
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("a picture without a caption can't be told from another");
        }
    }

    public static Caption of(String... parts) {
        return new Caption(List.of(parts));
    }

    /**
     * The caption of a picture of one run.
     *
     * @param run the run
     * @param channel the channel shown; empty where the picture shows none
     * @param dwell the dwell shown; empty for the whole run
     */
    public static Caption ofRun(RunOrders run, Optional<ChannelOrders> channel, Optional<Dwell> dwell) {
        List<String> parts = new ArrayList<>();
        parts.add(String.valueOf(run.source().file().getFileName()));
        channel.ifPresent(c -> parts.add(channel(c.channel())));
        dwell.ifPresent(d -> parts.add(stretch(d)));
        double ratio = run.ratio();
        dwell.or(() -> run.speed().main())
                .ifPresent(shown -> parts.add(rpm(ratio * shown.propellerRpm(), shown.propellerRpm())));
        parts.add(speedWords(run.speed()));
        return new Caption(parts);
    }

    /** A channel by its name, whether or not the name says that it is one. */
    public static String channel(String name) {
        return name.toLowerCase(Locale.ROOT).startsWith("channel") ? name : "channel " + name;
    }

    private static String stretch(Dwell dwell) {
        return FigureFormat.fixed(dwell.fromS(), 1) + " to " + FigureFormat.fixed(dwell.toS(), 1) + " s";
    }

    /** Engine and propeller speed as every caption gives them. */
    public static String rpm(double engineRpm, double propellerRpm) {
        return rpm(engineRpm) + ", propeller " + FigureFormat.rpm(propellerRpm) + " rpm";
    }

    /** Engine speed alone. */
    public static String rpm(double engineRpm) {
        return "engine " + FigureFormat.rpm(engineRpm) + " rpm";
    }

    /** How the speed is known, or that it isn't. */
    public static String speedWords(SpeedResult speed) {
        if (!speed.confirmed()) {
            return "speed NOT confirmed";
        }
        return switch (speed.origin()) {
            case SIGNAL -> "speed confirmed by the signal";
            case MARK -> "speed from the mark";
            case ENTERED -> "entered speed, confirmed";
        };
    }

    /** The parts broken into lines that are no wider than the room there is. */
    List<String> lines(double widthPx, TextStyle style, ChartTheme theme) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String part : parts) {
            String longer = line.isEmpty() ? part : line + "  ·  " + part;
            if (!line.isEmpty() && Pen.width(longer, style, theme) > widthPx) {
                lines.add(line);
                line = shortened(part, widthPx, style, theme);
            } else {
                line = line.isEmpty() ? shortened(part, widthPx, style, theme) : longer;
            }
        }
        lines.add(line);
        return lines;
    }

    /** The text with its middle left out, so that it fits: the end of a file name often tells most. */
    static String shortened(String text, double widthPx, TextStyle style, ChartTheme theme) {
        int kept = text.length();
        String shown = text;
        while (kept > 2 && Pen.width(shown, style, theme) > widthPx) {
            kept--;
            int head = (kept + 1) / 2;
            shown = text.substring(0, head) + "…" + text.substring(text.length() - (kept - head));
        }
        return shown;
    }
}
