package evenblade.face.cli;

import java.io.IOException;
import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/**
 * One command: the words it takes and what it does with them. Words are described in code, not in
 * annotations: reading annotations takes longer at start than everything else on the command line.
 */
interface Command {
    /** Adds description, options and parameters; the name and {@code --help} are there already. */
    void describe(CommandSpec spec);

    /**
     * Does it.
     *
     * @param words what was said
     * @param out standard output
     * @return the exit status, {@link ExitStatus#DONE} unless the command has news of another kind
     * @throws evenblade.base.problem.BadInput where an input is at fault
     * @throws IOException where a file can't be read or written
     */
    int run(ParseResult words, PrintWriter out) throws IOException;
}
