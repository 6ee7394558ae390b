package evenblade.face;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/** An invented telephone's table of a geared machine with three blades. */
public final class PhoneTable {
    /** Engine revolutions per propeller revolution. */
    public static final double RATIO = 2.43;

    private static final int RATE_HZ = 420;
    private static final int SECONDS = 12;

    private PhoneTable() {}

    /**
     * 12 s at one speed: blade pass 1.0 and firing of a two-stroke twin 0.5 m/s², noise 0.05 m/s² RMS.
     *
     * @param once propeller 1×, m/s²
     */
    public static Path write(Path file, double engineRpm, double once, long seed) throws IOException {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder("time (s),z (m/s^2)\n");
        double hz = engineRpm / 60 / RATIO;
        for (int i = 0; i < SECONDS * RATE_HZ; i++) {
            double turn = 2 * Math.PI * hz * i / RATE_HZ;
            double value = once * Math.cos(turn)
                    + Math.cos(3 * turn + 1)
                    + 0.5 * Math.cos(2 * RATIO * turn + 2)
                    + 0.05 * random.nextGaussian();
            text.append(i / (double) RATE_HZ).append(',').append(value).append('\n');
        }
        return Files.writeString(file, text);
    }
}
