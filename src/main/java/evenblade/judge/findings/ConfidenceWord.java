package evenblade.judge.findings;

import evenblade.base.fact.Code;

/** How sure a finding is, in steps. */
public enum ConfidenceWord implements Code {
    AS_SURE_AS_NUMBERS,
    FAIRLY_SURE,
    LEANS,
    HINT
}
