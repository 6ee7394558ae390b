package evenblade.measure.speed;

/**
 * The propeller's speed over a short stretch that has just passed, to steer by. It says which speed explains the latest
 * short spectra best; whether that is this machine at all, only a longer look can tell.
 *
 * @param fromS start of the last frame, seconds into the recording
 * @param toS its end
 * @param propellerHz mean speed over the last frame
 * @param plusMinusHz half its 95 % interval: what the place of lines in so short a spectrum is good to, and by how much
 *     the speed changes from frame to frame
 * @param evidence how much the weaker of the last two frames shows of the lines, by the measure of the speed search:
 *     little while the speed moves, since moving lines blur; 1 where a mark tells the speed
 * @param rivalShare evidence of the best other speed, as a share of this one's
 */
public record SpeedNow(
        double fromS, double toS, double propellerHz, double plusMinusHz, double evidence, double rivalShare) {
    /** Length of the stretch to look at, seconds: three frames that overlap by three quarters. */
    public static final double STRETCH_S = 0.9;

    /** Long enough to tell propeller 1x from half an engine revolution, 4 Hz apart at an idle of 1600 rpm. */
    static final double FRAME_S = 0.6;
}
