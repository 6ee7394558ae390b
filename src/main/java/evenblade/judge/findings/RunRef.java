package evenblade.judge.findings;

import evenblade.base.fact.Value.Quoted;

/**
 * A run of a job.
 *
 * @param id of its entry
 * @param name what the user calls it
 */
public record RunRef(String id, String name) {
    Quoted quoted() {
        return new Quoted(name);
    }
}
