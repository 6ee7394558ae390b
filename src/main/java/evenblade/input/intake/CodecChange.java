package evenblade.input.intake;

import java.util.List;
import java.util.Optional;

/**
 * How much a lossy codec was measured to change the lines of a propeller.
 *
 * <p>Own measurement of 2026-11-28 with ffmpeg 5.1: its own AAC encoder, libmp3lame, libvorbis, libopus; one round trip
 * of invented sound for each of eight propeller speeds of 12 to 65 Hz; propeller 1× a fifth of blade pass. The script
 * and its figures lie in {@code src/test/resources/reference/codecs}. Other encoders, and phones that alter the sound
 * before they store it, may do more.
 *
 * @param codec as in the kind of a file
 * @param kilobits setting, per second
 * @param onceLow least change of propeller 1× over the eight speeds, as a share; below zero where it was cut
 * @param onceHigh largest
 * @param bladePassLow the same of blade pass
 * @param bladePassHigh largest
 */
public record CodecChange(
        String codec, int kilobits, double onceLow, double onceHigh, double bladePassLow, double bladePassHigh) {
    /** Every setting that was measured. */
    public static final List<CodecChange> MEASURED = List.of(
            new CodecChange("aac", 32, -0.034, 0.045, -0.021, -0.002),
            new CodecChange("aac", 64, -0.023, -0.003, -0.010, -0.002),
            new CodecChange("aac", 128, -0.007, -0.001, -0.002, -0.001),
            new CodecChange("mp3", 32, -0.071, -0.046, -0.053, -0.047),
            new CodecChange("mp3", 64, -0.058, -0.046, -0.052, -0.049),
            new CodecChange("mp3", 128, -0.051, -0.050, -0.050, -0.050),
            new CodecChange("vorbis", 48, -0.206, 0.029, -0.025, -0.005),
            new CodecChange("vorbis", 64, -0.203, -0.024, -0.017, -0.004),
            new CodecChange("vorbis", 128, -0.035, 0.003, 0.002, 0.006),
            new CodecChange("opus", 16, -0.220, 0.254, -0.055, -0.004),
            new CodecChange("opus", 32, -0.062, 0.050, -0.020, 0.003),
            new CodecChange("opus", 64, -0.037, 0.006, -0.007, 0.006));

    /**
     * What was measured for the nearest setting of a codec; the lowest, where the file doesn't show its own.
     *
     * @param kind as a file's source gives it, such as {@code aac-64k}
     * @return empty for a codec that wasn't measured
     */
    public static Optional<CodecChange> of(String kind) {
        String[] parts = kind.split("-", 2);
        int kilobits = parts.length > 1 && parts[1].matches("[0-9]{1,4}k")
                ? Integer.parseInt(parts[1].substring(0, parts[1].length() - 1))
                : 0;
        Optional<CodecChange> nearest = Optional.empty();
        for (CodecChange each : MEASURED) {
            boolean nearer = nearest.isEmpty()
                    || Math.abs(each.kilobits - kilobits) < Math.abs(nearest.get().kilobits - kilobits);
            if (each.codec.equals(parts[0]) && nearer) {
                nearest = Optional.of(each);
            }
        }
        return nearest;
    }
}
