package evenblade.input.capture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * A sound server of a test's own, which it may kill: an output that goes nowhere, whose monitor is the only
 * input. Programs that are to hear it run in a process with its {@link #environment}.
 */
public final class OwnSoundServer implements AutoCloseable {
    private static final String SINK = "invented";

    private final Map<String, String> environment;
    private final Process server;

    private OwnSoundServer(Map<String, String> environment, Process server) {
        this.environment = environment;
        this.server = server;
    }

    /** Starts it; the test is skipped with a word where there is none on the machine. */
    public static OwnSoundServer start(Path folder) throws IOException, InterruptedException {
        String socket = "unix:" + folder.resolve("socket");
        Map<String, String> environment = Map.of(
                "XDG_RUNTIME_DIR",
                        Files.createDirectories(folder.resolve("runtime")).toString(),
                "PULSE_RUNTIME_PATH", folder.resolve("runtime").toString(),
                "PULSE_STATE_PATH",
                        Files.createDirectories(folder.resolve("state")).toString(),
                "PULSE_SERVER", socket,
                "ALSA_CONFIG_PATH",
                        Files.writeString(
                                        folder.resolve("alsa.conf"),
                                        """
                                pcm.hw { @args [ CARD ] @args.CARD { type string default "0" } type hw card $CARD }
                                ctl.hw { @args [ CARD ] @args.CARD { type string default "0" } type hw card $CARD }
                                pcm.default { type pulse }
                                ctl.default { type pulse }
                                """)
                                .toString());
        Path script = Files.writeString(
                folder.resolve("server.pa"),
                """
                load-module module-native-protocol-unix auth-anonymous=1 socket=%s
                load-module module-null-sink sink_name=%s rate=48000 channels=2
                set-default-sink %s
                set-default-source %s.monitor
                """
                        .formatted(folder.resolve("socket"), SINK, SINK, SINK));
        ProcessBuilder builder = new ProcessBuilder(
                        "pulseaudio",
                        "-n",
                        "-F",
                        script.toString(),
                        "--daemonize=no",
                        "--use-pid-file=no",
                        "--exit-idle-time=-1",
                        "--disable-shm=yes",
                        "--realtime=no",
                        "--high-priority=no")
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("server.log").toFile());
        builder.environment().putAll(environment);
        builder.environment().remove("PULSE_SERVER");
        Process server;
        try {
            server = builder.start();
        } catch (IOException e) {
            Assumptions.abort("no sound server to be started here");
            throw e;
        }
        OwnSoundServer started = new OwnSoundServer(environment, server);
        for (int i = 0; i < 100 && !started.answers(); i++) {
            TimeUnit.MILLISECONDS.sleep(100);
        }
        return started;
    }

    private boolean answers() throws IOException, InterruptedException {
        Process asked = program(List.of("pactl", "info")).start();
        return asked.waitFor(5, TimeUnit.SECONDS) && asked.exitValue() == 0;
    }

    /** For programs that are to hear this server. */
    public Map<String, String> environment() {
        return environment;
    }

    /** Plays 48 kHz, two channels, 16 bit, from the process's standard input. */
    public Process player() throws IOException {
        return program(List.of(
                        "pacat",
                        "--playback",
                        "--raw",
                        "--format=s16le",
                        "--rate=48000",
                        "--channels=2",
                        "--latency-msec=2000",
                        "--device=" + SINK))
                .start();
    }

    private ProcessBuilder program(List<String> command) {
        ProcessBuilder builder = new ProcessBuilder(new ArrayList<>(command))
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD);
        builder.environment().putAll(environment);
        return builder;
    }

    /** Kills it, as a device that is pulled out. */
    public void kill() {
        server.destroyForcibly();
    }

    @Override
    public void close() {
        server.destroyForcibly().onExit().orTimeout(5, TimeUnit.SECONDS).join();
    }
}
