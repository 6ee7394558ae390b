package evenblade.capture;

import evenblade.problem.BadInput;
import evenblade.problem.Nearest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;

/** The microphones and line inputs of this machine. */
public final class SoundDevices {
    private static final List<Integer> USUAL_RATES_HZ = List.of(
            8_000, 11_025, 12_000, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 88_200, 96_000, 176_400, 192_000);
    private static final int MOST_CHANNELS = 8;

    private SoundDevices() {}

    /** All inputs, in the machine's order, which puts its own choice first. */
    public static List<InputDevice> list() {
        return found().stream().map(Found::device).toList();
    }

    /**
     * Opens an input without starting it.
     *
     * @param name of the device or a part of it; the first device where empty
     * @throws BadInput where there is none, it is in use or forbidden, or doesn't offer what is wished
     */
    public static LiveSource open(Optional<String> name, FormatWish wish) {
        List<Found> all = found();
        if (all.isEmpty()) {
            throw BadInput.in("input")
                    .found(
                            "this machine shows no microphone or line input",
                            "one that is plugged in, switched on and open to this user");
        }
        Found chosen = name.map(wanted -> named(wanted, all)).orElse(all.get(0));
        LineUnavailableException last = null;
        for (InputFormat format : wish.on(chosen.device())) {
            try {
                return SoundInput.open(chosen.device().name(), chosen.mixer(), format);
            } catch (LineUnavailableException e) {
                last = e;
            } catch (SecurityException e) {
                throw BadInput.in("device '" + chosen.device().name() + "'")
                        .found("this user may not record from it", "permission to use the microphone");
            }
        }
        String why = last == null || last.getMessage() == null ? "no reason given" : last.getMessage();
        throw BadInput.in("device '" + chosen.device().name() + "'")
                .found(
                        "it can't be opened (" + why + ")",
                        "an input that no other program holds and that this user may record from");
    }

    private static Found named(String wanted, List<Found> all) {
        List<String> names = all.stream().map(f -> f.device().name()).toList();
        for (Found each : all) {
            if (each.device().name().equalsIgnoreCase(wanted)) {
                return each;
            }
        }
        List<Found> part = all.stream()
                .filter(f -> f.device()
                        .name()
                        .toLowerCase(java.util.Locale.ROOT)
                        .contains(wanted.toLowerCase(java.util.Locale.ROOT)))
                .toList();
        if (part.size() == 1) {
            return part.get(0);
        }
        String nearest = Nearest.alike(wanted, names)
                .map(known -> "; did you mean '" + known + "'?")
                .orElse("");
        throw BadInput.in("--device")
                .found(
                        (part.isEmpty() ? "no input '" : "several inputs '") + wanted + "'",
                        "one of '" + String.join("', '", names) + "'" + nearest);
    }

    private record Found(InputDevice device, Mixer mixer) {}

    private static List<Found> found() {
        List<Found> found = new ArrayList<>();
        for (Mixer.Info info : AudioSystem.getMixerInfo()) {
            Mixer mixer = AudioSystem.getMixer(info);
            for (Line.Info line : mixer.getTargetLineInfo()) {
                if (line instanceof DataLine.Info data && line.getLineClass() == TargetDataLine.class) {
                    device(info, data).ifPresent(device -> found.add(new Found(device, mixer)));
                }
            }
        }
        return found;
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
