package evenblade.house;

import java.io.PrintStream;
import java.util.Optional;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;

/** Says on the console which test was skipped, and why: a test that doesn't run must not pass for one that does. */
public final class SkippedAloud implements TestExecutionListener {
    private final PrintStream console;

    /** As the test launcher makes it. */
    public SkippedAloud() {
        this(System.out);
    }

    SkippedAloud(PrintStream console) {
        this.console = console;
    }

    @Override
    public void executionSkipped(TestIdentifier test, String reason) {
        say(test, reason);
    }

    @Override
    public void executionFinished(TestIdentifier test, TestExecutionResult result) {
        if (result.getStatus() == TestExecutionResult.Status.ABORTED) {
            say(
                    test,
                    result.getThrowable()
                            .flatMap(why -> Optional.ofNullable(why.getMessage()))
                            .orElse("no reason given"));
        }
    }

    private void say(TestIdentifier test, String reason) {
        console.println("SKIPPED " + test.getLegacyReportingName() + " [" + test.getUniqueId() + "]: " + reason);
    }
}
