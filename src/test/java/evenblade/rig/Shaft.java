package evenblade.rig;

/** The shaft whose turning an order counts. */
public enum Shaft {
    PROPELLER,
    CRANK
}
