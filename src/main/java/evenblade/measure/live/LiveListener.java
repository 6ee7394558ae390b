package evenblade.measure.live;

/** Told of what the live analysis finds, on its own threads. */
public interface LiveListener {
    /** Where the speed stands, some times a second. */
    void now(LiveNow now);

    /** What the long window shows, about once a second. */
    void window(LiveReading reading);

    /** The analysis has failed and says nothing any more; whoever records goes on. */
    void stopped();
}
