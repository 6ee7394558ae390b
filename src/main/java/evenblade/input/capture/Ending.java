package evenblade.input.capture;

/** Why a recording ended. */
public enum Ending {
    /** As long as was asked. */
    LENGTH_REACHED("the length asked for is reached"),
    /** Somebody stopped it. */
    STOPPED("stopped"),
    /** The sender closed the input. */
    INPUT_ENDED("the input has ended"),
    /** The device gives nothing any more. */
    DEVICE_GONE("the input stopped giving sound"),
    /** The disk is nearly full. */
    DISK_NEARLY_FULL("the disk is nearly full"),
    /** Writing failed. */
    DISK_FAILED("the file could not be written any further");

    private final String words;

    Ending(String words) {
        this.words = words;
    }

    /** For people, without a full stop. */
    public String words() {
        return words;
    }

    /** Whether it came without being asked for. */
    public boolean unwanted() {
        return this == DEVICE_GONE || this == DISK_NEARLY_FULL || this == DISK_FAILED;
    }
}
