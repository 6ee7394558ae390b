package evenblade.keep.job;

import java.util.Arrays;
import java.util.Optional;

/** What an entry is about. */
public enum Kind {
    RUN("run"),
    CORRECTION("correction"),
    TRACKING("tracking"),
    PITCH("pitch"),
    RUN_OUT("run-out"),
    BALANCE("balance"),
    /** A later entry that puts right what an earlier run says of itself. */
    AMENDMENT("amendment"),
    /** Another engine, drive or propeller, or the same put right. */
    INSTALLATION("installation"),
    NOTE("note"),
    ATTACHMENT("attachment"),
    STRUCK_OUT("struck-out");

    private final String word;

    Kind(String word) {
        this.word = word;
    }

    /** As written in the record. */
    public String word() {
        return word;
    }

    static Optional<Kind> of(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }
}
