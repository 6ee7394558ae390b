package evenblade.face.app;

import evenblade.base.fact.Code;

/** What is said of analysed runs, beside warnings. */
public enum AnalysisFact implements Code {
    RUN,
    RUN_WITH_ID,
    RECORDING_CHANGED,
    RECORDING_TAKEN_AS_IT_IS,
    IN_SOME_DWELLS
}
