package evenblade.tie;

import evenblade.numeric.Phasor;

/** In which sense the hub positions are counted. A blade ahead of another passes the sensor first. */
public enum HubCounting {
    WITH_ROTATION,
    AGAINST_ROTATION;

    /**
     * A pattern round the hub, Σ d·e^{−jθ}, as it turns past a sensor whose line is A·cos(φ + α): counted with the
     * rotation, the blade at θ is ahead by θ and the pattern appears mirrored.
     */
    Phasor turned(Phasor pattern) {
        return this == WITH_ROTATION ? new Phasor(pattern.re(), -pattern.im()) : pattern;
    }
}
