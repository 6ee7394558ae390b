package evenblade.face.app;

/** Is told how far a long piece of work has come. */
@FunctionalInterface
public interface Progress {
    /** Nobody listens. */
    Progress SILENT = (share, doing) -> {};

    /**
     * Called from the thread that works; returns at once.
     *
     * @param share of the whole work done, 0 to 1, never falling
     * @param doing what is being done, a few words
     */
    void at(double share, String doing);
}
