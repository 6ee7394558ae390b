package evenblade.tell.report;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.Length;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Source;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.comparison.RunConditions;
import evenblade.judge.tracking.Layout;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Detail.StoredFile;
import evenblade.keep.job.Event;
import evenblade.keep.job.FileNature;
import evenblade.keep.job.FileStamp;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.RunSettings;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Limit;
import evenblade.machine.installation.Reduction;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.measure.speed.SpeedTrack;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** An invented job of two runs with one change between them, ready for a report. */
final class InventedReport {
    static final String JOB = "Invented <script>alert(1)</script> & \"Prüfläufe\" ½ Ω";
    static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-05-04T09:00:00+02:00");
    static final String HASH = "ab".repeat(32);

    private InventedReport() {}

    static Installation installation() {
        return new Installation(
                Optional.of("Invented two-seater 'Distelfink'"),
                new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.of(1600), OptionalDouble.of(5800)),
                Reduction.ofTeeth(Reduction.Kind.GEAR, new Reduction.Teeth(21, 51)),
                new Installation.Propeller(3, Optional.of(Length.ofMetres(1.7)), Optional.empty()),
                List.of(new Limit(
                        Limit.Subject.TRACK,
                        Limit.Statistic.SPREAD,
                        Length.ofInches(0.125),
                        "invented maker's sheet")));
    }

    static JobRecord record(boolean invented) {
        return record(invented, 0);
    }

    /** With more changes, and with the tips marked once more where there are any. */
    static JobRecord record(boolean invented, int moreChanges) {
        List<Event> events = new ArrayList<>();
        events.add(event(1, "as found", "", run("before.wav")));
        events.add(event(
                2,
                "",
                "Marks with a pencil.",
                new Detail.Tracking(Layout.parse("1=A,2=B,3=C"), "0 in,1/16 in,3/16 in", Optional.empty())));
        events.add(event(3, "", "Blade C <shimmed> into track.", new Detail.Correction()));
        events.add(event(4, "", "Wrong note", new Detail.Note()));
        events.add(event(5, "", "not this engine", new Detail.StruckOut("e4")));
        events.add(event(6, "shimmed", "", run("after.wav")));
        events.add(event(
                7,
                "",
                "",
                new Detail.Attachment(new StoredFile("attachments/hub-1.jpg", "hub.jpg", stamp()), FileNature.JPEG)));
        for (int i = 0; i < moreChanges; i++) {
            events.add(event(
                    8 + i,
                    "",
                    "Bolt " + (i + 1)
                            + " of the engine mount tightened to the maker's figure and marked with paint, then"
                            + " its rubber looked at for cracks.",
                    new Detail.Correction()));
        }
        if (moreChanges > 0) {
            events.add(event(
                    8 + moreChanges,
                    "",
                    "",
                    new Detail.Tracking(Layout.parse("1=A,2=B,3=C"), "0 in,1/64 in,1/64 in", Optional.empty())));
        }
        return new JobRecord(JOB, invented, installation(), Map.of(), events);
    }

    private static Event event(int number, String label, String text, Detail detail) {
        return new Event(
                "e" + number,
                MORNING.plusHours(number),
                MORNING.plusHours(number),
                label.isEmpty() ? Optional.empty() : Optional.of(label),
                text,
                detail);
    }

    private static Detail.Run run(String file) {
        return new Detail.Run(
                new StoredFile("recordings/" + file, file, stamp()),
                RunSettings.NONE,
                Conditions.NONE.with(Conditions.Condition.WIND, "3 m/s").with(Conditions.Condition.PLACE, "gearbox"));
    }

    private static FileStamp stamp() {
        return new FileStamp(HASH, 1234, Instant.EPOCH);
    }

    /** Propeller 1× of a given size with its error; everything else detected at one tenth. */
    static RunOrders orders(double once, double error) {
        Dwell dwell = new Dwell(0, 30, 4800 * 21 / 51.0 / 60, 0.001, 32.5, 33.5);
        List<OrderReading> readings = installation().orders().lines().stream()
                .map(line -> {
                    double amplitude = line.propellerOrder() == 1 ? once : 0.1;
                    return new OrderReading(
                            line,
                            line.propellerOrder() * dwell.propellerHz(),
                            new Level.Measured(
                                    amplitude,
                                    error,
                                    amplitude - 1.96 * error,
                                    amplitude + 1.96 * error,
                                    OptionalDouble.empty(),
                                    true,
                                    Level.Estimator.COHERENT),
                            List.of());
                })
                .toList();
        ChannelOrders channel = new ChannelOrders(
                "across",
                SignalUnit.METRE_PER_SECOND_SQUARED,
                List.of(new DwellOrders(dwell, readings, List.of(), Optional.empty())));
        SpeedResult speed = new SpeedResult(
                SpeedResult.Origin.SIGNAL,
                true,
                Optional.empty(),
                steady(dwell),
                Optional.of(dwell),
                List.of(dwell),
                0,
                List.of());
        return new RunOrders(
                new Source(Path.of("before.wav"), FileHash.of(HASH), "wav", false, 4000, 30, List.of("across")),
                installation(),
                speed,
                List.of(channel),
                List.of(new ChannelQuality("across", 0, 1, 3, 0, 1)),
                Optional.empty(),
                List.of(Warning.of(WarningCode.LOSSY_FILE, Subject.Whole.RECORDING)));
    }

    private static SpeedTrack steady(Dwell dwell) {
        return new SpeedTrack() {
            @Override
            public double fromS() {
                return 0;
            }

            @Override
            public double toS() {
                return dwell.toS();
            }

            @Override
            public double revolutionsAt(double timeS) {
                return timeS * dwell.propellerHz();
            }

            @Override
            public double propellerHzAt(double timeS) {
                return dwell.propellerHz();
            }
        };
    }

    static ReportedRun reported(Event event, RunOrders orders) {
        String name = event.label().orElseThrow();
        return new ReportedRun(
                event,
                name,
                Optional.of(MeasuredRun.of(name, RunConditions.UNKNOWN, orders)),
                Optional.of(orders),
                "",
                List.of());
    }
}
