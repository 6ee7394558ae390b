package evenblade.input.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.problem.BadInput;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import javax.sound.sampled.LineUnavailableException;
import org.junit.jupiter.api.Test;

/** What the platform throws is injected here; the same with real devices is tried in {@code RecordRefusalsTest}. */
class SoundDevicesTest {
    private static final InputDevice CARD =
            new InputDevice("invented card", "", List.of(48_000), List.of(2), List.of(16, 24, 32));

    private static SoundDevices.Seen card(SoundDevices.Opener opener) {
        return new SoundDevices.Seen(List.of(new SoundDevices.Found(CARD, opener)), List.of());
    }

    private static LiveSource open(SoundDevices.Seen seen, String... name) {
        return SoundDevices.open(seen, List.of(name).stream().findFirst(), FormatWish.ANY);
    }

    @Test
    void aDeviceThatAnotherProgramHoldsIsRefusedInEverySizeOfSampleAndTheCureIsSaid() {
        List<String> tried = new ArrayList<>();

        assertThatThrownBy(() -> open(card(format -> {
                    tried.add(format.text());
                    throw new LineUnavailableException("line with format " + format.text() + " not supported.");
                })))
                .isInstanceOf(BadInput.class)
                .hasMessage("device 'invented card': it can't be opened now, expected an input that no other program"
                        + " holds and that this user may record from; close other programs that listen, or name"
                        + " another input");
        assertThat(tried).hasSize(3);
    }

    @Test
    void whatTheSystemSaysIsPassedOn() {
        assertThatThrownBy(() -> open(card(format -> {
                    throw new LineUnavailableException("Device or resource busy");
                })))
                .hasMessageStartingWith(
                        "device 'invented card': it can't be opened now (Device or resource busy), expected");
    }

    @Test
    void aSizeOfSampleThatIsRefusedIsFollowedByTheNext() {
        ScriptedInput input = new ScriptedInput(ScriptedInput.mono16(), (read, most) -> -1);

        LiveSource opened = open(card(format -> {
            if (format.coding().bits() == 24) {
                throw new LineUnavailableException();
            }
            return input;
        }));

        assertThat(opened).isSameAs(input);
    }

    @Test
    void aUserWhoMayNotRecordIsToldSo() {
        assertThatThrownBy(() -> open(card(format -> {
                    throw new SecurityException("no");
                })))
                .isInstanceOf(BadInput.class)
                .hasMessage("device 'invented card': this user may not record from it, expected permission to use the"
                        + " microphone");
    }

    @Test
    void aMachineWithoutAnInputIsTold() {
        assertThatThrownBy(() -> open(new SoundDevices.Seen(List.of(), List.of())))
                .isInstanceOf(BadInput.class)
                .hasMessage("input: this machine shows no microphone or line input, expected one that is plugged in,"
                        + " switched on, not held by another program and open to this user");
    }

    @Test
    void aDeviceThatIsSeenButGivesNoSoundNowIsNamed() {
        assertThatThrownBy(() -> open(new SoundDevices.Seen(List.of(), List.of("invented box"))))
                .hasMessageContaining("no microphone or line input that can be used now (seen, but giving no sound:"
                        + " 'invented box')");
        SoundDevices.Seen both = new SoundDevices.Seen(
                List.of(new SoundDevices.Found(CARD, format -> {
                    throw new LineUnavailableException();
                })),
                List.of("invented box"));
        assertThatThrownBy(() -> open(both, "BOX"))
                .isInstanceOf(BadInput.class)
                .hasMessage(
                        "sound input: 'invented box' gives no sound now: another program holds it, this user may not"
                                + " record from it, or it only plays, expected one of 'invented card'");
    }

    @Test
    void aMisspeltNameIsAnsweredWithTheNearest() {
        assertThatThrownBy(() -> SoundDevices.open(
                        card(format -> {
                            throw new LineUnavailableException();
                        }),
                        Optional.of("invented cart"),
                        FormatWish.ANY))
                .hasMessage("sound input: no input 'invented cart', expected one of 'invented card'; did you mean"
                        + " 'invented card'?");
    }

    @Test
    void aRateThatIsNotOfferedIsRefusedBeforeTheDeviceIsTouched() {
        assertThatThrownBy(() -> SoundDevices.open(
                        card(format -> {
                            throw new AssertionError("touched");
                        }),
                        Optional.empty(),
                        new FormatWish(OptionalInt.of(47_000), OptionalInt.empty(), OptionalInt.empty())))
                .isInstanceOf(BadInput.class)
                .hasMessageEndingWith("the nearest is 48000");
    }
}
