package evenblade.input.capture;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.Nearest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.Port;
import javax.sound.sampled.TargetDataLine;

/** The microphones and line inputs of this machine. */
public final class SoundDevices {
    private static final List<Integer> USUAL_RATES_HZ = List.of(
            8_000, 11_025, 12_000, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 88_200, 96_000, 176_400, 192_000);
    private static final int MOST_CHANNELS = 8; // more than any job has sensors

    private SoundDevices() {}

    /** All inputs, in the machine's order, which puts its own choice first. */
    public static List<InputDevice> list() {
        return seen().inputs().stream().map(Found::device).toList();
    }

    /**
     * Opens an input without starting it.
     *
     * @param name of the device or a part of it; the first device where empty
     * @throws BadInput where there is none, it is in use or forbidden, or doesn't offer what is wished
     */
    public static LiveSource open(Optional<String> name, FormatWish wish) {
        return open(seen(), name, wish);
    }

    static LiveSource open(Seen seen, Optional<String> name, FormatWish wish) {
        if (seen.inputs().isEmpty()) {
            throw BadInput.in("input")
                    .found(
                            "this machine shows no microphone or line input" + seen.alsoSeen(),
                            "one that is plugged in, switched on, not held by another program and open to this user");
        }
        Found chosen =
                name.map(wanted -> named(wanted, seen)).orElse(seen.inputs().get(0));
        BadInput.Place place = BadInput.in("device '" + chosen.device().name() + "'");
        String why = "";
        for (InputFormat format : wish.on(chosen.device())) {
            try {
                return chosen.opener().open(format);
            } catch (LineUnavailableException e) {
                why = reason(e);
            } catch (SecurityException e) {
                throw place.found("this user may not record from it", "permission to use the microphone");
            }
        }
        throw place.found(
                "it can't be opened now" + why,
                "an input that no other program holds and that this user may record from; close other programs that"
                        + " listen, or name another input");
    }

    /** What the system says, unless it is only that the format isn't supported, which it says of a busy device too. */
    private static String reason(LineUnavailableException e) {
        String said = e.getMessage() == null ? "" : e.getMessage();
        return said.isEmpty() || said.startsWith("line with format") ? "" : " (" + said + ")";
    }

    private static Found named(String wanted, Seen seen) {
        List<Found> all = seen.inputs();
        List<String> names = all.stream().map(f -> f.device().name()).toList();
        for (Found each : all) {
            if (each.device().name().equalsIgnoreCase(wanted)) {
                return each;
            }
        }
        List<Found> part =
                all.stream().filter(f -> holds(f.device().name(), wanted)).toList();
        if (part.size() == 1) {
            return part.get(0);
        }
        for (String other : seen.unusable()) {
            if (part.isEmpty() && holds(other, wanted)) {
                throw BadInput.in("sound input")
                        .found(
                                "'" + other + "' gives no sound now: another program holds it, this user may not"
                                        + " record from it, or it only plays",
                                "one of '" + String.join("', '", names) + "'");
            }
        }
        String nearest = Nearest.alike(wanted, names)
                .map(known -> "; did you mean '" + known + "'?")
                .orElse("");
        throw BadInput.in("sound input")
                .found(
                        (part.isEmpty() ? "no input '" : "several inputs '") + wanted + "'",
                        "one of '" + String.join("', '", names) + "'" + nearest);
    }

    private static boolean holds(String name, String part) {
        return name.toLowerCase(Locale.ROOT).contains(part.toLowerCase(Locale.ROOT));
    }

    /** Opens an input in a format, without starting it. */
    @FunctionalInterface
    interface Opener {
        LiveSource open(InputFormat format) throws LineUnavailableException;
    }

    /** An input and how to open it. */
    record Found(InputDevice device, Opener opener) {}

    /**
     * What the machine shows.
     *
     * @param inputs that can be used
     * @param unusable names of what can't be used as an input now
     */
    record Seen(List<Found> inputs, List<String> unusable) {
        private String alsoSeen() {
            return unusable.isEmpty()
                    ? ""
                    : " that can be used now (seen, but giving no sound: '" + String.join("', '", unusable) + "')";
        }
    }

    private static Seen seen() {
        List<Found> found = new ArrayList<>();
        List<String> unusable = new ArrayList<>();
        for (Mixer.Info info : AudioSystem.getMixerInfo()) {
            Mixer mixer = AudioSystem.getMixer(info);
            int before = found.size();
            for (Line.Info line : mixer.getTargetLineInfo()) {
                if (line instanceof DataLine.Info data && line.getLineClass() == TargetDataLine.class) {
                    device(info, data)
                            .ifPresent(device -> found.add(
                                    new Found(device, format -> SoundInput.open(device.name(), mixer, format))));
                }
            }
            if (found.size() == before && carriesSound(mixer)) {
                unusable.add(plain(info.getName()));
            }
        }
        return new Seen(List.copyOf(found), List.copyOf(unusable));
    }

    /** Not one of the volume controls that the platform lists beside the devices. */
    private static boolean carriesSound(Mixer mixer) {
        return Stream.of(mixer.getSourceLineInfo(), mixer.getTargetLineInfo())
                .flatMap(Stream::of)
                .noneMatch(line -> Port.class.isAssignableFrom(line.getLineClass()));
    }

    private static Optional<InputDevice> device(Mixer.Info info, DataLine.Info line) {
        TreeSet<Integer> rates = new TreeSet<>();
        TreeSet<Integer> channels = new TreeSet<>();
        TreeSet<Integer> bits = new TreeSet<>();
        for (AudioFormat format : line.getFormats()) {
            int size = format.getSampleSizeInBits();
            boolean packed = format.getFrameSize() == format.getChannels() * size / 8 || size == 24;
            boolean signed = AudioFormat.Encoding.PCM_SIGNED.equals(format.getEncoding());
            if (!signed || format.isBigEndian() || !packed || size != 16 && size != 24 && size != 32) {
                continue;
            }
            bits.add(size);
            if (format.getChannels() == AudioSystem.NOT_SPECIFIED) {
                channels.addAll(List.of(1, 2));
            } else if (format.getChannels() <= MOST_CHANNELS) {
                channels.add(format.getChannels());
            }
            if (format.getSampleRate() == AudioSystem.NOT_SPECIFIED) {
                rates.addAll(USUAL_RATES_HZ);
            } else {
                rates.add(Math.round(format.getSampleRate()));
            }
        }
        if (bits.isEmpty() || channels.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new InputDevice(
                plain(info.getName()),
                plain(info.getDescription()),
                List.copyOf(rates),
                List.copyOf(channels),
                List.copyOf(bits)));
    }

    private static String plain(String text) {
        return text == null ? "" : text.replaceAll("\\s+", " ").strip();
    }
}
