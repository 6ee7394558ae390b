package evenblade.rig;

/**
 * One channel: what it feels, how it answers, its noise, and the full scale of its recorder.
 *
 * @param kind microphone, accelerometer or mark
 * @param axis what it feels (not used by a mark)
 * @param unit unit of the recorded values: m/s2 or FS
 * @param highPassHz corner of a first-order high-pass, H = jf/(jf + corner); 0: none
 * @param gain recorded value per true value
 * @param fullScale largest value that fits into the file; beyond it the value is clipped
 * @param offset constant added (DC), in the unit
 * @param mark how the mark channel's pulses look
 */
public record Sensor(
        String name,
        Kind kind,
        Axis axis,
        String unit,
        double highPassHz,
        double gain,
        Floor floor,
        double fullScale,
        double offset,
        Mark mark) {

    /** Kinds of channel. */
    public enum Kind {
        MICROPHONE,
        ACCELEROMETER,
        MARK
    }

    /**
     * One pulse per turn of a shaft; its front edge passes half height where turns is a whole number.
     *
     * @param share length of the pulse as share of a turn
     * @param missing share of pulses that fail
     * @param doubled share of pulses followed by a false one
     */
    public record Mark(Shaft shaft, double share, boolean falling, double missing, double doubled) {
        static final Mark CLEAN = new Mark(Shaft.PROPELLER, 0.04, false, 0, 0);
    }

    public static Sensor microphone(String name, double highPassHz) {
        return new Sensor(
                name,
                Kind.MICROPHONE,
                Axis.SOUND,
                "FS",
                highPassHz,
                1,
                new Floor(0.001, 0.004, 0.006),
                1,
                0,
                Mark.CLEAN);
    }

    /** Accelerometer in an audio interface: its coupling takes away what lies below about 2 Hz; ±100 m/s². */
    public static Sensor accelerometer(String name, Axis axis) {
        return new Sensor(name, Kind.ACCELEROMETER, axis, "m/s2", 2, 1, new Floor(0.05, 0.2, 0.2), 100, 0, Mark.CLEAN);
    }

    /** Phone: down to 0 Hz with gravity as offset where it points up; ±4 g. */
    public static Sensor phone(String name, Axis axis) {
        return new Sensor(
                name,
                Kind.ACCELEROMETER,
                axis,
                "m/s2",
                0,
                1,
                new Floor(0.05, 0.15, 0.2),
                4 * 9.80665,
                axis == Axis.UP ? 9.80665 : 0,
                Mark.CLEAN);
    }

    public static Sensor mark(String name, Shaft shaft) {
        return new Sensor(
                name, Kind.MARK, Axis.SOUND, "FS", 0, 0.6, Floor.white(0.01), 1, 0, new Mark(shaft, 0.04, false, 0, 0));
    }

    public Sensor with(Floor other) {
        return new Sensor(name, kind, axis, unit, highPassHz, gain, other, fullScale, offset, mark);
    }

    public Sensor with(Mark other) {
        return new Sensor(name, kind, axis, unit, highPassHz, gain, floor, fullScale, offset, other);
    }

    public Sensor withGain(double other) {
        return new Sensor(name, kind, axis, unit, highPassHz, other, floor, fullScale, offset, mark);
    }

    public Sensor withFullScale(double other) {
        return new Sensor(name, kind, axis, unit, highPassHz, gain, floor, other, offset, mark);
    }

    public Sensor withOffset(double other) {
        return new Sensor(name, kind, axis, unit, highPassHz, gain, floor, fullScale, other, mark);
    }

    /** Gain and phase for a line at a frequency. */
    Phasor response(double frequencyHz) {
        if (highPassHz == 0) {
            return new Phasor(gain, 0);
        }
        return new Phasor(0, gain * frequencyHz).over(new Phasor(highPassHz, frequencyHz));
    }
}
