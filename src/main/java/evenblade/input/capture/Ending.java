package evenblade.input.capture;

import evenblade.base.fact.Code;

/** Why a recording ended. */
public enum Ending implements Code {
    /** As long as was asked. */
    LENGTH_REACHED,
    /** Somebody stopped it. */
    STOPPED,
    /** The sender closed the input. */
    INPUT_ENDED,
    /** The device gives nothing any more. */
    DEVICE_GONE,
    /** The disk is nearly full. */
    DISK_NEARLY_FULL,
    /** Writing failed. */
    DISK_FAILED;

    /** Whether it came without being asked for. */
    public boolean unwanted() {
        return this == DEVICE_GONE || this == DISK_NEARLY_FULL || this == DISK_FAILED;
    }
}
