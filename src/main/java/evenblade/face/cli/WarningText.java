package evenblade.face.cli;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.base.json.JsonFields;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.util.List;

/** Warnings and other facts as the command line shows them. */
final class WarningText {
    static final Phrases PHRASES = Phrases.of(Face.COMMAND_LINE);

    private WarningText() {}

    static String of(Warning warning) {
        return PHRASES.text(warning);
    }

    static String of(Fact fact) {
        return PHRASES.text(fact);
    }

    /** Each on lines of its own, marked so that the eye finds it. */
    static List<String> marked(List<Warning> warnings) {
        return warnings.stream()
                .flatMap(warning -> LineWrapper.lines("! ", "  ", of(warning)).stream())
                .toList();
    }

    static List<JsonFields> json(List<Warning> warnings) {
        return warnings.stream()
                .map(warning -> json(warning.code(), warning.fact()))
                .toList();
    }

    /** For programs the code, for people the message. */
    static JsonFields json(Code code, Fact fact) {
        return new JsonFields().put("code", code.word()).put("message", of(fact));
    }
}
