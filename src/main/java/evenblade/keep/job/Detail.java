package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.judge.tracking.FaceRunOut;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.PitchReadings;
import evenblade.judge.tracking.ReadingsText;
import evenblade.judge.tracking.TrackingSession;
import evenblade.machine.installation.HubCounting;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What belongs to one kind of entry. */
public sealed interface Detail {
    default Kind kind() {
        return Kind.of(this);
    }

    /**
     * A ground run.
     *
     * @param file the raw recording
     * @param settings how it is to be analysed
     * @param conditions what it was like, and with which sensor
     * @param arrivals when each line came in, beside lines that were recorded here
     * @param told what the program told when it was recorded
     */
    record Run(
            StoredFile file,
            RunSettings settings,
            Conditions conditions,
            Optional<StoredFile> arrivals,
            List<Told> told)
            implements Detail {
        public Run {
            told = List.copyOf(told);
        }

        /** A run that was not recorded here. */
        public Run(StoredFile file, RunSettings settings, Conditions conditions) {
            this(file, settings, conditions, Optional.empty(), List.of());
        }
    }

    /**
     * What a run says of itself, put right by a later entry. The run's own entry stays as it is.
     *
     * @param event id of the run
     * @param settings what is put right of how it is analysed; the rest is unsaid
     * @param conditions what is put right of what it was like; the rest is unsaid
     * @param told what the program told about the take afterwards
     */
    record Amendment(String event, RunSettings settings, Conditions conditions, List<Told> told) implements Detail {
        public Amendment {
            told = List.copyOf(told);
        }

        /** The run as it reads with this. */
        Run of(Run run) {
            List<Told> both = new ArrayList<>(run.told());
            both.addAll(told);
            return new Run(
                    run.file(), settings.over(run.settings()), conditions.over(run.conditions()), run.arrivals(), both);
        }
    }

    /**
     * The installation from now on, for every run of the job: what was entered before was wrong or is no longer so.
     *
     * @param asWritten as its file has it: texts, numbers, lists and maps, in order
     */
    record NewInstallation(Map<String, Object> asWritten) implements Detail {
        public NewInstallation {
            asWritten = Collections.unmodifiableMap(new LinkedHashMap<>(asWritten));
        }
    }

    /** Something was changed; the entry's text says what. */
    record Correction() implements Detail {}

    /** A remark; the entry's text. */
    record Note() implements Detail {}

    /**
     * Tip marks against a block that doesn't move, as entered.
     *
     * @param layout which blade sat on which hub position
     * @param readings by hub position, in the form that {@link evenblade.judge.tracking.ReadingsText} reads
     * @param sigma standard deviation of one reading with its unit, where stated
     */
    record Tracking(Layout layout, String readings, Optional<String> sigma) implements Detail {
        /** Refuses what can't be read. */
        public Tracking {
            session(layout, readings, sigma, Instant.EPOCH);
        }

        /** The session for its analysis; the usual reading error where none was stated. */
        public TrackingSession session(Instant at) {
            return session(layout, readings, sigma, at);
        }

        private static TrackingSession session(Layout layout, String readings, Optional<String> sigma, Instant at) {
            return new TrackingSession(
                    at,
                    layout,
                    ReadingsText.lengths(readings, layout.positions()),
                    sigma.map(text -> Length.parsePositive(text, BadInput.in("sigma")))
                            .orElse(TrackingSession.USUAL_SIGMA));
        }
    }

    /**
     * Blade angles at one station, as entered.
     *
     * @param layout which blade sat on which hub position
     * @param readings by hub position, in the form that {@link evenblade.judge.tracking.ReadingsText} reads
     * @param zero what the protractor showed on the reference, with its unit; 0 where not stated
     * @param reference what the zero was taken on
     * @param station distance from the shaft's centre with its unit, where stated
     * @param sigma standard deviation of one reading with its unit, where stated
     */
    record Pitch(
            Layout layout,
            String readings,
            Optional<String> zero,
            PitchReadings.Reference reference,
            Optional<String> station,
            Optional<String> sigma)
            implements Detail {
        /** Refuses what can't be read. */
        public Pitch {
            angles(layout, readings, zero, reference, station, sigma, Instant.EPOCH);
        }

        /** The readings for their analysis; the usual reading error where none was stated. */
        public PitchReadings angles(Instant at) {
            return angles(layout, readings, zero, reference, station, sigma, at);
        }

        private static PitchReadings angles(
                Layout layout,
                String readings,
                Optional<String> zero,
                PitchReadings.Reference reference,
                Optional<String> station,
                Optional<String> sigma,
                Instant at) {
            return new PitchReadings(
                    at,
                    layout,
                    ReadingsText.angles(readings, layout.positions()),
                    zero.map(text -> Angle.parse(text, BadInput.in("zero"))).orElse(new Angle(0)),
                    reference,
                    station.map(text -> Length.parsePositive(text, BadInput.in("station"))),
                    sigma.map(text -> Angle.parsePositive(text, BadInput.in("sigma")))
                            .orElse(PitchReadings.USUAL_SIGMA));
        }
    }

    /**
     * Face run-out of the flange, as entered.
     *
     * @param total full indicator reading with its unit
     * @param dialRadius distance of the dial's tip from the shaft's centre, with its unit
     * @param high where on the hub the dial read highest, as an angle from hub position 1, where noted
     */
    record RunOut(String total, String dialRadius, Optional<String> high) implements Detail {
        /** Refuses what can't be read. */
        public RunOut {
            reading(total, dialRadius, high, Instant.EPOCH);
        }

        /** The reading for its analysis. */
        public FaceRunOut reading(Instant at) {
            return reading(total, dialRadius, high, at);
        }

        private static FaceRunOut reading(String total, String dialRadius, Optional<String> high, Instant at) {
            return new FaceRunOut(
                    at,
                    Length.parse(total, BadInput.in("total run-out")),
                    Length.parsePositive(dialRadius, BadInput.in("dial radius")),
                    high.map(text -> Angle.parse(text, BadInput.in("high place"))));
        }
    }

    /**
     * A weight put on or taken off, or how angles on the hub are counted. With none of them the entry's text says what
     * was done.
     *
     * @param on what was put on
     * @param off id or label of the entry that put on what was taken off
     * @param counted the sense in which angles on this hub are counted
     */
    record Balance(Optional<HubWeight> on, Optional<String> off, Optional<HubCounting> counted) implements Detail {
        /** Words alone. */
        public static final Balance WORDS = new Balance(Optional.empty(), Optional.empty(), Optional.empty());

        /** Whether only the entry's text says what was done. */
        public boolean wordsOnly() {
            return on.isEmpty() && off.isEmpty() && counted.isEmpty();
        }
    }

    /**
     * A photo or paper.
     *
     * @param file the file
     * @param type what the file is, by its content
     */
    record Attachment(StoredFile file, FileNature type) implements Detail {}

    /**
     * An earlier entry no longer counts. It stays in the record.
     *
     * @param event its id
     */
    record StruckOut(String event) implements Detail {}

    /**
     * What the program told about a take when it was made, kept with the run.
     *
     * @param code of the warning, in kebab-case
     * @param text as it was told then
     */
    record Told(String code, String text) {}

    /**
     * A file that was copied into the job folder.
     *
     * @param path below the job folder, parted by {@code /}
     * @param originalName its name where it came from
     * @param stamp its content when it was added
     */
    record StoredFile(String path, String originalName, FileStamp stamp) {}
}
