package evenblade.measure.orders;

import evenblade.base.fact.Code;

/** What is said of orders, beside warnings. */
public enum OrderFact implements Code {
    RATIO_UPSIDE_DOWN,
    RATIO_OTHER,
    NONE,
    ONLY
}
