/** An immutable recording: stamps, channels, calibration, measured quality. */
package evenblade.input.recording;
