package evenblade.keep.job;

import java.util.Arrays;
import java.util.Optional;

/** What an entry is about. */
public enum Kind {
    RUN("run", Detail.Run.class),
    CORRECTION("correction", Detail.Correction.class),
    TRACKING("tracking", Detail.Tracking.class),
    PITCH("pitch", Detail.Pitch.class),
    RUN_OUT("run-out", Detail.RunOut.class),
    BALANCE("balance", Detail.Balance.class),
    /** A later entry that puts right what an earlier run says of itself. */
    AMENDMENT("amendment", Detail.Amendment.class),
    /** Another engine, drive or propeller, or the same put right. */
    INSTALLATION("installation", Detail.NewInstallation.class),
    NOTE("note", Detail.Note.class),
    ATTACHMENT("attachment", Detail.Attachment.class),
    STRUCK_OUT("struck-out", Detail.StruckOut.class);

    private final String word;
    private final Class<? extends Detail> detail;

    Kind(String word, Class<? extends Detail> detail) {
        this.word = word;
        this.detail = detail;
    }

    /** As written in the record. */
    public String word() {
        return word;
    }

    static Kind of(Detail detail) {
        return Arrays.stream(values())
                .filter(kind -> kind.detail.isInstance(detail))
                .findFirst()
                .orElseThrow();
    }

    static Optional<Kind> of(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }
}
