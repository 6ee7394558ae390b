package evenblade.keep.job;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.Detail.Balance;
import evenblade.machine.installation.HubCounting;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What an entry means for the runs and the tip marks after it. */
class EventTest {
    private static final OffsetDateTime AT = OffsetDateTime.parse("2026-05-04T10:30:00Z");

    private static Event entry(Detail detail) {
        return new Event("e1", AT, AT, Optional.empty(), "", detail);
    }

    @Test
    void aCorrectionChangesMachineAndTrack() {
        assertThat(entry(new Detail.Correction()).changesMachine()).isTrue();
        assertThat(entry(new Detail.Correction()).changesTrack()).isTrue();
    }

    @Test
    void aWeightPutOnOrTakenOffChangesTheMachineAndNoTip() {
        Event on = entry(
                new Balance(Optional.of(new HubWeight("10 g", "60 mm", "0 deg")), Optional.empty(), Optional.empty()));
        Event off = entry(new Balance(Optional.empty(), Optional.of("trial"), Optional.empty()));
        assertThat(on.changesMachine()).isTrue();
        assertThat(on.changesTrack()).isFalse();
        assertThat(off.changesMachine()).isTrue();
        assertThat(off.changesTrack()).isFalse();
    }

    /** Nobody can tell what words alone stand for. */
    @Test
    void balancingInWordsAloneMayHaveChangedBoth() {
        assertThat(entry(Balance.WORDS).changesMachine()).isTrue();
        assertThat(entry(Balance.WORDS).changesTrack()).isTrue();
    }

    @Test
    void sayingHowAnglesAreCountedChangesNothing() {
        Event counted = entry(new Balance(Optional.empty(), Optional.empty(), Optional.of(HubCounting.WITH_ROTATION)));
        assertThat(counted.changesMachine()).isFalse();
        assertThat(counted.changesTrack()).isFalse();
    }
}
