package evenblade.face.app;

import evenblade.input.capture.InputDevice;
import evenblade.input.capture.SoundDevices;
import java.util.List;

/** Answers which microphones and line inputs there are. */
public final class ListDevices {
    private ListDevices() {}

    /** All inputs of this machine; the first is taken where none is named. */
    public static List<InputDevice> answer() {
        return SoundDevices.list();
    }
}
