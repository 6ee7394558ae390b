package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.platform.engine.discovery.DiscoverySelectors.selectClass;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.platform.launcher.Launcher;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.core.LauncherConfig;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;

class SkippedAloudTest {
    /** Found by no build: its name doesn't end as a test's. */
    static class WithoutADevice {
        @Test
        void needsADevice() {
            Assumptions.abort("no invented device here");
        }
    }

    @Test
    void aSkippedTestSaysWhyOnTheConsole() {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        LauncherDiscoveryRequest request = LauncherDiscoveryRequestBuilder.request()
                .selectors(selectClass(WithoutADevice.class))
                .build();
        Launcher launcher = LauncherFactory.create(LauncherConfig.builder()
                .enableTestExecutionListenerAutoRegistration(false)
                .build());
        launcher.execute(request, new SkippedAloud(new PrintStream(said, true, StandardCharsets.UTF_8)));
        assertThat(said.toString(StandardCharsets.UTF_8))
                .contains("SKIPPED needsADevice()")
                .contains("no invented device here");
    }

    @Test
    void theBuildUsesIt() throws Exception {
        assertThat(Files.readString(Path.of(
                        "src/test/resources/META-INF/services/org.junit.platform.launcher.TestExecutionListener")))
                .isEqualToIgnoringNewLines(SkippedAloud.class.getName());
    }

    /** What a test starts as another program must be in the list of packages, else it is skipped where it counts. */
    @Test
    void theBareMachineGetsWhatTheSerialTestsNeed() throws Exception {
        assertThat(Files.readString(Path.of(".ci/run"))).contains("\n    socat ");
    }
}
