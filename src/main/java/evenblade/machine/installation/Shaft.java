package evenblade.machine.installation;

import evenblade.base.fact.Worded;

/** The shaft an order is counted on. */
public enum Shaft implements Worded {
    PROPELLER,
    CRANK
}
