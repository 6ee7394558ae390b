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
    /** 2× over 1× along the shaft, worth a word for pitch. */
    static final double TWICE_OVER_ONCE = 0.05;
    /** Track spread without an entered limit, mm: 1/8 in, common practice, no source. */
    static final double TRACK_MM = 3.175;
    /** Track spread that is ideal to acceptable, mm: 1/16 in, common practice, no source. */
    static final double FINE_TRACK_MM = 1.5875;
    /** Pitch spread without an entered limit, degrees. */
    static final double PITCH_DEG = 0.5;
    /** Pitch spread that two readings of 0.1° each hardly make by chance (two standard errors of a difference), degrees. */
    static final double FINE_PITCH_DEG = 0.3;
    /**
     * Share by which a blade pushes otherwise that gives somebody something to find: {@link #FINE_PITCH_DEG} of the some
     * 10° that a blade works at on the ground. Less is wind and the small differences that any propeller has.
     */
    static final double PUSH_SHARE = 0.03;
    /** Angle by which a blade comes late, degrees, that can be seen: 5 mm at the tip of a blade of one metre. */
    static final double LATE_DEG = 0.3;
    /** Run-out carried to the tip that a pencil line of 0.5 mm can't hide, mm: half of {@link #TIP_RUN_OUT_MM}. */
    static final double FINE_RUN_OUT_MM = 0.8;
    /** Run-out carried to the tip, mm: what would use up all of 1/16 in. */
    static final double TIP_RUN_OUT_MM = 1.5875;
    /**
     * Half order over firing that cylinders alike don't make, worth a word: sound cylinders differ by some 2 % (from
     * memory), and a cylinder weaker by a share d makes about 1.5·d/cylinders (gas torque falls with the order): 1 to 2 %.
     */
    static final double HALF_OVER_FIRING = 0.03;
    /** Three times what sound cylinders make: only from here on may a cylinder be blamed with confidence. */
    static final double WEAK_OVER_FIRING = 0.05;
    /** Crank 1× over firing worth a look. */
    static final double CRANK_OVER_FIRING = 0.06;
    /**
     * No line below this is blamed, peak mm/s: a tenth of the 5.08 mm/s (0.2 in/s) that a propeller maker's public manual
     * leaves as the largest reading after balancing. Below it there is nothing to cure, whatever the share of firing.
     */
    static final double BLAMED_MM_S = 0.5;
    /**
     * Propeller 1× of which mass may be blamed with confidence, peak mm/s: twice {@link #ONCE_MM_S}. Ours, from a
     * trial: of 20 sound machines of the test rig (small unbalance, half a millimetre of track) one reached 3.8.
     */
    static final double TOO_MUCH_MM_S = 2 * ONCE_MM_S;
    /**
     * Likeness to firing (cosine of sizes in three directions) from which on a crank line is shaped like gas torque: 10°.
     * Ours, from a trial: on seeds 1 to 9 of the test rig weak cylinders had 0.99 and more, loose mounts 0.97 at most.
     */
    static final double LIKE_FIRING = 0.985;
    /** Likeness below which it isn't: 22°, which lines measured to some per cent don't reach (same trial). */
    static final double UNLIKE_FIRING = 0.93;
    /** A crank order that stands out of its neighbours by this factor has a cause of its own: weak cylinders raise all alike. */
    static final double OWN_CAUSE = 2.5;
    /** Crank 1× of a motor without firing, peak mm/s. */
    static final double CRANK_MM_S = 1.0;
    /** A fall of 1× towards a higher speed, as a share. */
    static final double FALL = 0.15;
    /** Lines beside gear mesh over the mesh itself. */
    static final double SIDE_OVER_MESH = 0.1;
    /** For each side, where there are lines on both sides alike. */
    static final double BOTH_SIDES_OVER_MESH = 0.07;
    /** Share of clipped samples worth a word. */
    static final double CLIPPED = 1e-4;

    private Thresholds() {}
}
