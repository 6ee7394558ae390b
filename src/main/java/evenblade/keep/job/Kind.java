package evenblade.keep.job;

import evenblade.base.fact.Worded;
import java.util.Arrays;
import java.util.Optional;

/** What an entry is about. */
public enum Kind implements Worded {
    RUN(Detail.Run.class),
    CORRECTION(Detail.Correction.class),
    TRACKING(Detail.Tracking.class),
    PITCH(Detail.Pitch.class),
    RUN_OUT(Detail.RunOut.class),
    BALANCE(Detail.Balance.class),
    /** A later entry that puts right what an earlier run says of itself. */
    AMENDMENT(Detail.Amendment.class),
    /** Another engine, drive or propeller, or the same put right. */
    INSTALLATION(Detail.NewInstallation.class),
    NOTE(Detail.Note.class),
    ATTACHMENT(Detail.Attachment.class),
    STRUCK_OUT(Detail.StruckOut.class);

    private final Class<? extends Detail> detail;

    Kind(Class<? extends Detail> detail) {
        this.detail = detail;
    }

    static Kind of(Detail detail) {
        return Arrays.stream(values())
                .filter(kind -> kind.detail.isInstance(detail))
                .findFirst()
                .orElseThrow();
    }

    static Optional<Kind> of(String word) {
        return Worded.named(Kind.class, word);
    }
}
