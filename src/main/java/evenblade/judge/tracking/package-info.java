/**
 * Blade against hub position in static readings; layouts to try and to keep.
 *
 * <p>A tip mark is y = m + h + t + ε: the session's own zero, the hub position's share, the blade's share, and the
 * error of the pencil line. {@link evenblade.judge.tracking.SwapFit} estimates what the layouts tried so far can tell,
 * {@link evenblade.judge.tracking.TrackVerdict} puts it into words, {@link evenblade.judge.tracking.TrackingAnalysis.NextLayout} and
 * {@link evenblade.judge.tracking.BestLayout} say what to do next. {@link evenblade.judge.tracking.TrackingAnalysis} is the whole
 * answer. Hub positions are counted from 1 in the sense in which angles on the hub are counted; position p sits at
 * 360°·(p − 1)/B.
 */
package evenblade.judge.tracking;
