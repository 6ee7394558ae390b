package evenblade.face.desktop;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.base.units.LengthUnit;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.Collectors;

/** What things are called on screen. */
final class Words {

    static final Phrases PHRASES = Phrases.of(Face.WINDOW);

    private Words() {}

    static String kind(Kind kind) {
        return switch (kind) {
            case RUN -> "Ground run";
            case AMENDMENT -> "Put right";
            case INSTALLATION -> "Installation";
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

    static String warning(Warning warning) {
        return PHRASES.text(warning);
    }

    /** With lengths in the unit that the reader wants first. */
    static Phrases phrases(Settings settings) {
        return new Phrases(Face.WINDOW, new FigureFormat(settings.lengthUnit()));
    }

    /** With its lengths in the unit that the reader wants first. */
    static String fact(Fact fact, LengthUnit unit) {
        return new Phrases(Face.WINDOW, new FigureFormat(unit)).text(fact);
    }

    /** One line to each. */
    static String facts(List<Fact> facts, LengthUnit unit) {
        return facts.stream().map(fact -> fact(fact, unit)).collect(Collectors.joining("\n"));
    }

    static String fact(Fact fact) {
        return PHRASES.text(fact);
    }

    static String time(OffsetDateTime at) {
        return FigureFormat.minute(at);
    }

    /** An entry in a few words. */
    static String name(Event event) {
        return event.label().orElse(kind(event.kind())) + " (" + event.id() + ")";
    }
}
