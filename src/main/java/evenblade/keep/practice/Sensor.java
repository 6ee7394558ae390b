package evenblade.keep.practice;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Something that turns an invented run into a file, with what it adds and takes away on the way. */
public interface Sensor {
    /** What it is, in words. */
    String description();

    /** How its files are named: {@code .wav}, {@code .csv}. */
    String extension();

    /**
     * Writes the run as this sensor takes it.
     *
     * @return what is truly in each measured channel of the file
     */
    List<TrueChannel> record(PracticeRun run, Path file) throws IOException;

    /**
     * One measured channel of a file.
     *
     * @param number in the file, from 1, a column of time left out
     * @param name as the file says it, unit left out, or what it holds where the file can't
     * @param unit of the amplitudes
     * @param fullScale value in that unit of the largest storable sample
     * @param beyondRange samples that were held at full scale
     * @param signal lines in that unit, as they are in the file
     */
    record TrueChannel(int number, String name, String unit, double fullScale, long beyondRange, SyntheticRun signal) {}

    /** How many samples a file of this full scale can't hold. */
    static long beyond(double[] samples, double fullScale) {
        long count = 0;
        for (double sample : samples) {
            if (Math.abs(sample) > fullScale) {
                count++;
            }
        }
        return count;
    }
}
