package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ProgramTest {
    @Test
    void aloneItSaysThatThereIsNoDesktopAndPrintsTheHelp() {
        CommandLineRun run = CommandLineRun.of();
        assertThat(run.status()).isZero();
        assertThat(run.out()).startsWith("evenblade: no desktop is available here; these are the commands.\n\nUsage: ");
        assertThat(run.err()).isEmpty();
    }

    /** U+FFFD is what Java makes of the bytes of 'größe' under LC_ALL=C. */
    @Test
    void aWordThatLostLettersOnItsWayIsRefusedAndNotKept() {
        CommandLineRun run = CommandLineRun.of("job", "note", "job", "gr\ufffd\ufffd\ufffd\ufffde");
        assertThat(run.status()).isEqualTo(ExitStatus.BAD_INPUT);
        assertThat(run.err()).contains("letters that got lost", "LC_ALL=C.UTF-8");
    }

    @Test
    void helpAndVersionGoToStandardOutput() {
        CommandLineRun help = CommandLineRun.of("--help");
        assertThat(help.status()).isZero();
        assertThat(help.out()).startsWith("Usage: evenblade ");
        assertThat(help.err()).isEmpty();
        assertThat(CommandLineRun.of("--version").out()).startsWith("evenblade ");
    }

    @Test
    void noHelpWarnsOfItsOwnWording() {
        for (List<String> command : CommandIndex.all()) {
            List<String> words = new ArrayList<>(command);
            words.add("--help");
            CommandLineRun help = CommandLineRun.of(words.toArray(String[]::new));
            assertThat(help.status()).as(words.toString()).isZero();
            assertThat(help.out())
                    .as(words.toString())
                    .startsWith("Usage: evenblade")
                    .contains("3 a fault in the")
                    .doesNotContain("WARN");
            assertThat(help.err()).as(words.toString()).isEmpty();
        }
    }

    /** The library that prints the help complains on the process's own streams, past those it was given. */
    @Test
    void noHelpWarnsOnTheStreamsOfTheProcess() {
        PrintStream out = System.out;
        PrintStream err = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        try (PrintStream all = new PrintStream(said, true, StandardCharsets.UTF_8)) {
            System.setOut(all);
            System.setErr(all);
            noHelpWarnsOfItsOwnWording();
        } finally {
            System.setOut(out);
            System.setErr(err);
        }
        assertThat(said.toString(StandardCharsets.UTF_8)).doesNotContain("WARN");
    }

    @Test
    void anUnknownCommandIsWrongUsage() {
        CommandLineRun run = CommandLineRun.of("zzzz");
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).isEqualTo("evenblade: unknown command 'zzzz'\nSee 'evenblade --help'.\n");
    }

    @Test
    void anUnknownOptionIsWrongUsageWithTheNearestOne() {
        CommandLineRun run = CommandLineRun.of("--hepl");
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err())
                .isEqualTo("evenblade: unknown option '--hepl'; did you mean '--help'?\nSee 'evenblade --help'.\n");
    }

    @Test
    void anythingUnexpectedIsCalledABugAndShowsItsTrace() {
        StringWriter errors = new StringWriter();
        int status = Complaints.failed(new IllegalStateException("the sum is off"), new PrintWriter(errors, true));
        assertThat(status).isEqualTo(3);
        assertThat(errors.toString())
                .startsWith("evenblade: this is a bug in the program, not in your files.")
                .contains("java.lang.IllegalStateException: the sum is off")
                .contains("\tat evenblade.face.cli.ProgramTest.");
    }
}
