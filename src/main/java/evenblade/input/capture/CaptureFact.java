package evenblade.input.capture;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Quoted;

/** What is known of an ending. */
public enum CaptureFact implements Code {
    NO_DETAIL,
    DETAIL,
    GAVE_WAY,
    NOISE_STEPPED,
    SILENT_FOR,
    DISK_BEHIND;

    /** What the system said, or what kind of trouble it had. */
    static Value said(Exception trouble) {
        String message = trouble.getMessage();
        return new Quoted(message == null ? trouble.getClass().getSimpleName() : message);
    }

    static Value none() {
        return Fact.of(NO_DETAIL);
    }
}
