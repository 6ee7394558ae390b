package evenblade.face.desktop;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** What things are called on screen. */
final class Words {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);

    private static final Phrases PHRASES = Phrases.of(Face.WINDOW);

    private Words() {}

    static String kind(Kind kind) {
        return switch (kind) {
            case RUN -> "Ground run";
            case CORRECTION -> "Changed";
            case TRACKING -> "Tip marks";
            case PITCH -> "Blade angles";
            case RUN_OUT -> "Face run-out";
            case BALANCE -> "Balance weight";
            case NOTE -> "Note";
            case ATTACHMENT -> "Photo or paper";
            case STRUCK_OUT -> "Taken back";
        };
    }

    /** A sentence without the names of the command line's options. */
    static String onScreen(String sentence) {
        return sentence.replaceAll(" \\(--[a-z-]+\\)", "");
    }

    static String warning(Warning warning) {
        return PHRASES.text(warning);
    }

    static String fact(Fact fact) {
        return PHRASES.text(fact);
    }

    static String time(OffsetDateTime at) {
        return MINUTE.format(at);
    }

    /** An entry in a few words. */
    static String name(Event event) {
        return event.label().orElse(kind(event.kind())) + " (" + event.id() + ")";
    }

    static String installation(Installation installation) {
        Engine engine = installation.engine();
        String cylinders = engine.cylinders() == 0 ? "" : ", " + engine.cylinders() + " cylinders";
        return String.format(
                Locale.ROOT,
                "%s%s%s, ratio %.4g, %d blades",
                installation.name().map(n -> n + " · ").orElse(""),
                engine.cycle().word(),
                cylinders,
                installation.reduction().ratio(),
                installation.propeller().blades());
    }
}
