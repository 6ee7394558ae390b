package evenblade.keep.job;

import evenblade.base.fact.Code;

/** What is said of entries and files of a job, beside warnings. */
public enum JobFact implements Code {
    ENTRY,
    LABELLED_ENTRY,
    CHANGED,
    BYTES_DIFFER,
    HASH_DIFFERS
}
