package evenblade.judge.findings;

/**
 * Where a number begins to count, in one place. Unless a source stands beside it, a value is this program's own choice
 * and no published limit; the maker's figure, entered as a limit, takes its place.
 */
final class Thresholds {
    /** Propeller 1× worth a look, peak mm/s; a third of the 5.08 mm/s (0.2 in/s) in a propeller maker's manual. */
    static final double ONCE_MM_S = 1.8;
    /** For sound and unknown scales: unevenness index (uneven over even propeller orders) worth a look. */
    static final double UNEVENNESS = 1.0;
    /** 1× along over 1× across the shaft: below speaks for mass, above {@link #ALONG} for track or pitch. */
    static final double ACROSS = 0.75;

    static final double ALONG = 1.25;
    /** 2× over 1× along the shaft, worth a word for pitch. */
    static final double TWICE_OVER_ONCE = 0.05;
    /** Track spread without an entered limit, mm: 1/8 in, common practice, no source. */
    static final double TRACK_MM = 3.175;
    /** Track spread that is ideal to acceptable, mm: 1/16 in, common practice, no source. */
    static final double FINE_TRACK_MM = 1.5875;
    /** Pitch spread without an entered limit, degrees. */
    static final double PITCH_DEG = 0.5;
    /** Run-out carried to the tip, mm: what would use up all of 1/16 in. */
    static final double TIP_RUN_OUT_MM = 1.5875;
    /** Half order over firing that cylinders alike don't make. */
    static final double HALF_OVER_FIRING = 0.03;
    /** Crank 1× over firing worth a look. */
    static final double CRANK_OVER_FIRING = 0.06;
    /** Crank 1× of a motor without firing, peak mm/s. */
    static final double CRANK_MM_S = 1.0;
    /** A fall of 1× towards a higher speed, as a share. */
    static final double FALL = 0.15;
    /** Lines beside gear mesh over the mesh itself. */
    static final double SIDE_OVER_MESH = 0.1;
    /** The same for each side, where there are lines on both sides alike. */
    static final double BOTH_SIDES_OVER_MESH = 0.07;
    /** Share of clipped samples worth a word. */
    static final double CLIPPED = 1e-4;

    private Thresholds() {}
}
