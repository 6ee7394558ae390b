package evenblade.keep.job;

import java.util.Map;

/** Brings a record from one version to the next; pure. */
@FunctionalInterface
interface Migration {
    /**
     * This record as the next version writes it.
     *
     * @param older the whole document: texts, numbers, flags, lists and maps; not to be changed
     */
    Map<String, Object> toNext(Map<String, Object> older);
}
