package evenblade.face.desktop;

import evenblade.base.fact.Warning;
import evenblade.face.app.PreviewRecording.Preview;
import evenblade.face.app.PreviewRecording.SeenChannel;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.FigureFormat;
import java.util.Locale;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** What the reader makes of a recording, before it is taken in. */
final class SeenRecording extends JPanel {
    private final WrappedLabel text = new WrappedLabel("");

    SeenRecording() {
        super(new MigLayout("insets 8", "[grow,fill]"));
        setName("seen");
        text.setName("seen text");
        setBorder(BorderFactory.createTitledBorder("What the file says"));
        add(text, "wmin 50");
        nothing();
    }

    void nothing() {
        say("Choose a recording or drop it on this window. What is assumed about it will stand here.", false);
    }

    void wrong(String why) {
        say("✕  " + why, true);
    }

    void show(Preview seen) {
        StringBuilder lines = new StringBuilder(String.format(
                Locale.ROOT,
                "%s, %s samples a second%s. Can be measured up to %s Hz.",
                seen.kind().toUpperCase(Locale.ROOT),
                FigureFormat.plain(seen.sampleRateHz()),
                seen.durationS().isPresent()
                        ? ", " + FigureFormat.fixed(seen.durationS().getAsDouble(), 1) + " s long"
                        : "",
                FigureFormat.plain(seen.usableUpToHz())));
        if (seen.lossy()) {
            lines.append("\nThis kind of file throws away part of the signal: good for a look, not for comparing.");
        }
        for (SeenChannel channel : seen.channels()) {
            lines.append("\nChannel ")
                    .append(channel.number())
                    .append(": ")
                    .append(channel.name())
                    .append(", in ");
            lines.append(
                    switch (channel.unit()) {
                        case FULL_SCALE -> "parts of full scale (no calibration)";
                        case UNSTATED -> "the file's own numbers (no unit)";
                        default -> channel.unit().display();
                    });
        }
        for (Warning warning : seen.assumed()) {
            lines.append("\n! ").append(Words.warning(warning));
        }
        say(lines.toString(), false);
    }

    private void say(String words, boolean wrong) {
        text.setForeground(Look.ink(wrong ? Ink.LIMIT : Ink.TEXT));
        text.setText(words);
        revalidate();
    }
}
