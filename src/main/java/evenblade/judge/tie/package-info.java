/**
 * How much of the shaking at propeller 1× goes with track, and with pitch, over the runs of a job.
 *
 * <p>Model: V = c + k·T (+ q·P) + ε, all complex. V is the vibration at propeller 1×, A·e^{jα} for A·cos(φ + α) with φ
 * the propeller's angle; T is the track once a turn ({@link evenblade.judge.tracking.HubPattern}), P the same of the blade
 * angles. c is what would be left at perfect track: mass, or the engine. Runs must be comparable: same dwell speed, same
 * sensor in the same place.
 */
package evenblade.judge.tie;
