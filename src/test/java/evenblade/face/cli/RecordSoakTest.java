package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.capture.CountedSound;
import evenblade.input.capture.OwnSoundServer;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Half an hour through a real sound server while every processor of the machine is kept busy. Its length can be set:
 * {@code -Dsoak.minutes=5}. The figures are left in {@code target/record-soak.txt}.
 */
@Tag("long")
class RecordSoakTest {
    private static final int MINUTES = Integer.getInteger("soak.minutes", 30);
    private static final double MOST_CPU_SHARE = 0.15;
    /** The program has warmed up and its memory has found its size. */
    private static final int WARM_AFTER_MINUTES = Math.min(5, MINUTES / 2);

    private static final double MOST_GROWTH_MB = 30;
    private static final double ENGINE_RPM = 60 * CountedSound.RATIO * CountedSound.PROPELLER_HZ;
    private static final Pattern FIGURES =
            Pattern.compile("(\\d+) ±(\\d+) rpm 1x ([\\d.]+) ±(\\d+)% blade ([\\d.]+) ±(\\d+)%");

    @TempDir
    Path folder;

    private record Look(double atS, double cpuS, double residentMb) {}

    private static Look look(long began, ProcessHandle of) throws IOException {
        String status = Files.readString(Path.of("/proc", String.valueOf(of.pid()), "status"));
        String resident =
                status.lines().filter(l -> l.startsWith("VmRSS")).findFirst().orElse("0");
        return new Look(
                (System.nanoTime() - began) / 1e9,
                of.info().totalCpuDuration().orElseThrow().toMillis() / 1e3,
                Integer.parseInt(resident.replaceAll("\\D", "")) / 1e3);
    }

    @Test
    void halfAnHourOnABusyMachineLosesNotOneSample() throws Exception {
        Path file = folder.resolve("soak.wav");
        List<Process> started = new ArrayList<>();
        List<Look> looks = new ArrayList<>();
        CommandLineRun run;
        Watch watch = new Watch();
        watch.start();
        try (OwnSoundServer server = OwnSoundServer.start(Files.createDirectory(folder.resolve("server")))) {
            try {
                for (int i = 0; i < Runtime.getRuntime().availableProcessors(); i++) {
                    started.add(new ProcessBuilder("nice", "-n", "5", "sh", "-c", "while :; do :; done").start());
                }
                Process player = server.player();
                started.add(player);
                Thread feed = new Thread(new CountedSound(player.getOutputStream()), "player");
                feed.setDaemon(true);
                feed.start();
                TimeUnit.SECONDS.sleep(3);
                long began = System.nanoTime();
                Process child = ChildProgram.start(
                        server.environment(),
                        folder,
                        ChildProgram.command(
                                List.of(),
                                "record",
                                file.toString(),
                                "--seconds",
                                String.valueOf(60 * MINUTES),
                                "--rate",
                                "48000",
                                "--channels",
                                "2",
                                "--bits",
                                "16",
                                "--installation",
                                "samples/geared-three-blade/installation.json"));
                started.add(child);
                for (int minute = 1; minute < MINUTES; minute++) {
                    boolean ended =
                            child.waitFor((long) (60e9 * minute) - (System.nanoTime() - began), TimeUnit.NANOSECONDS);
                    if (ended) {
                        throw new AssertionError("ended early: " + ChildProgram.ended(child, folder));
                    }
                    looks.add(look(began, child.toHandle()));
                }
                assertThat(child.waitFor(5, TimeUnit.MINUTES)).isTrue();
                run = ChildProgram.ended(child, folder);
            } finally {
                started.forEach(Process::destroyForcibly);
            }
        }

        assertThat(run.status()).as(run.err()).isZero();
        Counted counted = counted(file);
        Look last = looks.get(looks.size() - 1);
        double share = last.cpuS() / last.atS();
        double growth = last.residentMb() - looks.get(WARM_AFTER_MINUTES - 1).residentMb();
        List<MatchResult> figures = FIGURES.matcher(run.out()).results().toList();
        long wrong = figures.stream().filter(RecordSoakTest::wrong).count();
        String ending = String.format(
                Locale.ROOT,
                "%d looks at all live figures, %d of them wrong%n%s",
                figures.size(),
                wrong,
                run.out().substring(run.out().indexOf("The length asked for")));
        tell(counted, share, looks, watch.worstS(), ending);
        assertThat(counted.frames).isEqualTo(60L * MINUTES * 48_000);
        assertThat(counted.breaks)
                .as(() -> "places where the count breaks; this test itself stood still for up to " + watch.worstS()
                        + " s: " + ending)
                .isZero();
        assertThat(ending).contains("no sample missing by the clock");
        assertThat(share).as("share of one processor").isLessThan(MOST_CPU_SHARE);
        // The program says how it stands every ten seconds; half a minute passes before the first window is sure.
        assertThat(figures).hasSizeGreaterThan(6 * MINUTES - 6);
        assertThat(wrong).as(run.out()).isZero();
        assertThat(growth).as("MB more than once warm").isLessThan(MOST_GROWTH_MB);
    }

    /** Whether a figure is off by more than twice its 95 % interval, or the rpm by its own, with what rounding takes. */
    private static boolean wrong(MatchResult line) {
        double rpm = Double.parseDouble(line.group(1));
        return Math.abs(rpm - ENGINE_RPM) > Double.parseDouble(line.group(2)) + 1
                || wrong(line.group(3), line.group(4), CountedSound.ONCE)
                || wrong(line.group(5), line.group(6), CountedSound.BLADE_PASS);
    }

    /** Percent are whole, so half of one may have been rounded off. */
    private static boolean wrong(String value, String percent, double truth) {
        double seen = Double.parseDouble(value);
        return Math.abs(seen - truth) > 2 * (Double.parseDouble(percent) + 0.5) / 100 * seen;
    }

    /** Notices when the whole machine stands still, which is another thing than a busy machine. */
    private static final class Watch extends Thread {
        private volatile double worstS;

        Watch() {
            super("watch");
            setDaemon(true);
        }

        @Override
        public void run() {
            for (long last = System.nanoTime(); true; ) {
                try {
                    sleep(100);
                } catch (InterruptedException e) {
                    return;
                }
                long now = System.nanoTime();
                worstS = Math.max(worstS, (now - last) / 1e9 - 0.1);
                last = now;
            }
        }

        double worstS() {
            return worstS;
        }
    }

    private static final class Counted {
        private long frames;
        private long breaks;
        private boolean begun;
        private int last;

        void take(float[] block, int count) {
            for (int i = 0; i < count; i++) {
                int now = CountedSound.count(block[2 * i + 1]);
                begun |= now != 0;
                breaks += begun && frames + i > 0 && now != (last + 1 & 0xFFFF) ? 1 : 0;
                last = now;
            }
            frames += count;
        }
    }

    private static Counted counted(Path file) {
        Counted counted = new Counted();
        ((Intake.Streamed) RecordingReader.open(file, IntakeOptions.NONE))
                .sound()
                .deliverTo(counted::take);
        return counted;
    }

    private static void tell(Counted counted, double share, List<Look> looks, double stoodStillS, String ending)
            throws IOException {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%d frames, %d breaks in the count, %.1f %% of one processor (%.1f s in %.0f s), load %s%n",
                counted.frames,
                counted.breaks,
                100 * share,
                looks.get(looks.size() - 1).cpuS(),
                looks.get(looks.size() - 1).atS(),
                Files.readString(Path.of("/proc/loadavg")).strip()));
        text.append(String.format(Locale.ROOT, "a thread that only sleeps was late by %.1f s at most%n", stoodStillS));
        text.append(ending);
        for (Look look : looks) {
            text.append(String.format(
                    Locale.ROOT, "%.0f s: %.1f s of processor, %.0f MB%n", look.atS(), look.cpuS(), look.residentMb()));
        }
        Files.writeString(Path.of("target", "record-soak.txt"), text);
    }
}
