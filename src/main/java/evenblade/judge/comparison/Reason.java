package evenblade.judge.comparison;

/**
 * Why two runs can't be compared.
 *
 * @param code for programs
 * @param text for people
 */
public record Reason(Code code, String text) {
    /** The kinds of unlikeness. */
    public enum Code {
        SENSOR_DIFFERS("sensor-differs"),
        PLACE_DIFFERS("place-differs"),
        DIRECTION_DIFFERS("direction-differs"),
        GAIN_DIFFERS("gain-differs"),
        FULL_SCALE_DIFFERS("full-scale-differs"),
        CALIBRATION_DIFFERS("calibration-differs"),
        UNIT_DIFFERS("unit-differs"),
        LOSSY_AGAINST_LOSSLESS("lossy-against-lossless"),
        SPEED_NOT_CONFIRMED("speed-not-confirmed"),
        INSTALLATION_DIFFERS("installation-differs"),
        NO_COMMON_CHANNEL("no-common-channel"),
        NO_DWELL_AT_SAME_RPM("no-dwell-at-same-rpm"),
        BLADE_PASS_NOT_DETECTED("blade-pass-not-detected");

        private final String word;

        Code(String word) {
            this.word = word;
        }

        /** As written in JSON. */
        public String word() {
            return word;
        }
    }
}
