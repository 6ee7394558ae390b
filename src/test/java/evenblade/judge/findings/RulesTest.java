package evenblade.judge.findings;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Fact;
import evenblade.input.recording.ChannelQuality;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.keep.practice.Fault;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Reduction;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.speed.SpeedDoubt;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What each rule says of invented machines with its fault and with every other one. */
class RulesTest {
    private static final long SEED = 6;
    private static final Installation GEARED = InventedEvidence.GEARED;

    /** Which cause each invented fault should point to. */
    static final Map<Fault, Cause> MEANT = new EnumMap<>(Map.ofEntries(
            Map.entry(Fault.NONE, Cause.NOTHING),
            Map.entry(Fault.MASS_IMBALANCE, Cause.MASS),
            Map.entry(Fault.BLADE_OUT_OF_TRACK, Cause.TRACK),
            Map.entry(Fault.BLADE_OUT_OF_PITCH, Cause.PITCH),
            Map.entry(Fault.FLANGE_RUN_OUT, Cause.FLANGE),
            Map.entry(Fault.WEAK_CYLINDER, Cause.WEAK_CYLINDER),
            Map.entry(Fault.CRANK_IMBALANCE, Cause.CRANK),
            Map.entry(Fault.CARBURETTORS_OUT_OF_STEP, Cause.CARBURETTORS),
            Map.entry(Fault.MOUNT_RESONANCE, Cause.RESONANCE),
            Map.entry(Fault.LOOSE_MOUNT, Cause.LOOSE_MOUNT),
            Map.entry(Fault.GEAR, Cause.DRIVE)));

    private static final Map<Fault, RunEvidence> RUNS = new EnumMap<>(Fault.class);

    @BeforeAll
    static void oneRunOfEach() {
        Arrays.stream(Fault.values())
                .parallel()
                .map(f -> Map.entry(f, InventedEvidence.run(f, SEED)))
                .toList()
                .forEach(e -> RUNS.put(e.getKey(), e.getValue()));
    }

    private static List<Finding> found(Fault fault) {
        return Findings.weigh(InventedEvidence.job(List.of(RUNS.get(fault)), InventedEvidence.still(fault, SEED)))
                .list();
    }

    @ParameterizedTest
    @EnumSource
    void theRightFindingComesFirstAndNoOtherIsConfident(Fault fault) {
        List<Finding> findings = found(fault);
        assertThat(findings.get(0).cause()).isEqualTo(MEANT.get(fault));
        assertThat(findings.get(0).sureness().confident()).isTrue();
        assertThat(findings.subList(1, findings.size()))
                .noneMatch(f -> f.sureness().confident());
    }

    @ParameterizedTest
    @EnumSource
    void everyFindingPointsAndRestsOnNumbers(Fault fault) {
        assertThat(found(fault)).allSatisfy(f -> {
            assertThat(said(f.statement())).containsAnyOf("point", "Nothing stands out");
            assertThat(f.speaksFor()).isNotEmpty().anyMatch(p -> said(p.fact()).matches("(?s).*\\d.*"));
            assertThat(f.speaksFor()).allMatch(p -> p.points() >= 0);
            assertThat(f.speaksAgainst()).allMatch(p -> p.points() < 0);
            assertThat(said(f.next())).isNotBlank();
        });
    }

    static Stream<Rule> rules() {
        return Rules.ALL.stream();
    }

    @ParameterizedTest
    @MethodSource("rules")
    void aRuleIsConfidentOnlyOfItsOwnFault(Rule rule) {
        for (Fault fault : Fault.values()) {
            Stage stage = Stage.of(InventedEvidence.job(List.of(RUNS.get(fault)), InventedEvidence.still(fault, SEED)))
                    .get(0);
            boolean confident =
                    rule.weigh(stage).map(a -> a.sureness().confident()).orElse(false);
            assertThat(confident).as("%s of %s", rule.cause(), fault).isEqualTo(rule.cause() == MEANT.get(fault));
        }
    }

    @Test
    void everyCauseButNothingHasItsRule() {
        assertThat(Rules.ALL)
                .extracting(Rule::cause)
                .containsExactlyInAnyOrderElementsOf(Arrays.stream(Cause.values())
                        .filter(c -> c != Cause.NOTHING && c != Cause.UNTOLD)
                        .toList());
    }

    @Test
    void withoutDirectionsMassAndTrackAreNotToldApartAndTheNextStepSaysHow() {
        RunEvidence known = RUNS.get(Fault.MASS_IMBALANCE);
        RunEvidence blind =
                new RunEvidence(known.ref(), known.at(), Optional.empty(), List.of(), known.numbers(), Map.of(), false);
        List<Finding> findings = Findings.weigh(InventedEvidence.job(List.of(blind), StaticEvidence.NONE))
                .list();
        assertThat(findings).noneMatch(f -> f.sureness().confident() && f.cause() != Cause.UNTOLD);
        assertThat(findings.get(0).cause()).isEqualTo(Cause.UNTOLD);
        assertThat(said(findings.get(0).next())).contains("along and across");
        assertThat(findings).anyMatch(f -> f.cause() == Cause.MASS);
    }

    @Test
    void tipMarksAloneLeanToTrackButAreNotConfidentWithoutARun() {
        Finding first = Findings.weigh(
                        InventedEvidence.job(List.of(), InventedEvidence.still(Fault.BLADE_OUT_OF_TRACK, SEED)))
                .list()
                .get(0);
        assertThat(first.cause()).isEqualTo(Cause.TRACK);
        assertThat(first.sureness().confident()).isFalse();
        assertThat(said(first.statement())).contains("blade B");
    }

    @Test
    void aRunWithoutStaticChecksIsNotConfidentOfTrackAndAsksForTipMarks() {
        Finding first = Findings.weigh(
                        InventedEvidence.job(List.of(RUNS.get(Fault.BLADE_OUT_OF_TRACK)), StaticEvidence.NONE))
                .list()
                .get(0);
        assertThat(first.cause()).isEqualTo(Cause.UNTOLD);
        assertThat(first.among()).contains(Cause.TRACK);
        assertThat(said(first.statement())).contains("a blade out of track");
        assertThat(said(first.next())).contains("Mark the tips");
    }

    @Test
    void whatWentAwayAfterACorrectionIsToldAsGoneWithTheCorrection() {
        RunEvidence mended = new RunEvidence(
                new RunRef("e9", "mended"),
                RUNS.get(Fault.WEAK_CYLINDER).at().plusSeconds(3600),
                Optional.empty(),
                List.of("Valves ground in."),
                RUNS.get(Fault.NONE).numbers(),
                RUNS.get(Fault.NONE).directions(),
                false);
        List<Finding> findings = Findings.weigh(
                        InventedEvidence.job(List.of(RUNS.get(Fault.WEAK_CYLINDER), mended), StaticEvidence.NONE))
                .list();
        assertThat(findings.get(0).cause()).isEqualTo(Cause.WEAK_CYLINDER);
        assertThat(findings.get(0).goneSince().map(RunRef::name)).contains("mended");
        assertThat(said(findings.get(0).next())).contains("Valves ground in.");
        assertThat(findings).anyMatch(f -> f.cause() == Cause.NOTHING);
    }

    @Test
    void theSameFaultUnmendedStaysOpen() {
        RunEvidence first = RUNS.get(Fault.WEAK_CYLINDER);
        RunEvidence again = new RunEvidence(
                new RunRef("e7", "after a plug change"),
                first.at().plusSeconds(3600),
                Optional.empty(),
                List.of("Plugs changed."),
                first.numbers(),
                first.directions(),
                false);
        assertThat(Findings.weigh(InventedEvidence.job(List.of(first, again), StaticEvidence.NONE))
                        .list()
                        .get(0)
                        .open())
                .isTrue();
    }

    @Test
    void shakingThatNoRuleExplainsIsNotCalledQuiet() {
        RunEvidence track = RUNS.get(Fault.BLADE_OUT_OF_TRACK);
        // Marks and angles of a healthy machine: they contradict what the run shows along the shaft.
        List<Finding> findings = Findings.weigh(
                        InventedEvidence.job(List.of(track), InventedEvidence.still(Fault.NONE, SEED)))
                .list();
        assertThat(findings).noneMatch(f -> f.cause() == Cause.NOTHING);
        assertThat(findings).noneMatch(f -> f.sureness().confident() && f.cause() != Cause.UNTOLD);
    }

    private static RunEvidence later(RunEvidence run, String name, String change, RunNumbers numbers) {
        return new RunEvidence(
                new RunRef("e8", name),
                run.at().plusSeconds(3600),
                Optional.empty(),
                List.of(change),
                numbers,
                run.directions(),
                run.microphone());
    }

    private static RunNumbers with(RunNumbers n, Optional<Fact> doubt, List<ChannelQuality> quality) {
        return new RunNumbers(n.fileChannels(), n.durationS(), doubt, n.ratio(), n.channels(), quality, n.stamps());
    }

    private static List<Finding> of(RunEvidence... runs) {
        return Findings.weigh(InventedEvidence.job(List.of(runs), StaticEvidence.NONE))
                .list();
    }

    @Test
    void samplesFlatAtTheEndsOfTheRangePointToTheRecordingAndACleanRunDoesNot() {
        RunEvidence good = RUNS.get(Fault.NONE);
        String channel = good.numbers().channels().get(0).channel();
        // 2 % of the samples clipped; 120 equal samples in a row.
        List<ChannelQuality> clipped = List.of(new ChannelQuality(channel, 0.02, 120, 50, 0, 20));
        RunEvidence bad = new RunEvidence(
                new RunRef("e7", "clipped"),
                good.at(),
                Optional.empty(),
                List.of(),
                with(good.numbers(), Optional.empty(), clipped),
                good.directions(),
                false);
        assertThat(of(bad).get(0).cause()).isEqualTo(Cause.RECORDING);
        assertThat(of(bad).get(0).sureness().confident()).isTrue();
        assertThat(said(of(bad).get(0).speaksFor().get(0).fact()))
                .contains("2.00 %")
                .contains("'clipped'");
        assertThat(of(good)).noneMatch(f -> f.cause() == Cause.RECORDING);
        assertThat(of(RUNS.get(Fault.WEAK_CYLINDER))).noneMatch(f -> f.cause() == Cause.RECORDING);
    }

    @Test
    void aSpeedThatIsNotBorneOutPointsToTheRecordingAndAsksForTheSpeedOrAMark() {
        RunEvidence good = RUNS.get(Fault.NONE);
        RunNumbers doubtful = with(
                good.numbers(),
                Optional.of(Fact.of(SpeedDoubt.ONLY_MAINS)),
                good.numbers().quality());
        Finding first = of(new RunEvidence(
                        new RunRef("e7", "doubtful"),
                        good.at(),
                        Optional.empty(),
                        List.of(),
                        doubtful,
                        good.directions(),
                        false))
                .get(0);
        assertThat(first.cause()).isEqualTo(Cause.RECORDING);
        assertThat(first.sureness().confident()).isTrue();
        assertThat(said(first.speaksFor().get(0).fact())).contains("'doubtful'").contains("belongs to the mains hum");
        assertThat(said(first.next())).contains("speed read in the cockpit").contains("mark");
    }

    @Test
    void bladePassOnCrankOnceIsToldAsNotToBeToldApart() {
        // Three blades behind a drive of 3 to 1: blade pass and crank 1× lie on each other.
        Installation three = new Installation(
                Optional.empty(),
                GEARED.engine(),
                Reduction.ofRatio(Reduction.Kind.GEAR, 3),
                GEARED.propeller(),
                GEARED.limits());
        RunEvidence run = InventedEvidence.run(three, Fault.MASS_IMBALANCE, SEED);
        List<Finding> findings = Findings.weigh(
                        new JobEvidence(three, List.of(run), StaticEvidence.NONE, Optional.empty()))
                .list();
        Finding shared = findings.stream()
                .filter(f -> f.cause() == Cause.INSEPARABLE)
                .findFirst()
                .orElseThrow();
        assertThat(shared.sureness().confident()).isTrue();
        assertThat(said(shared.speaksFor().get(0).fact()))
                .contains("blade pass")
                .contains("crank 1×");
        assertThat(of(RUNS.get(Fault.NONE))).noneMatch(f -> f.cause() == Cause.INSEPARABLE);
    }

    @Test
    void aRunWithoutAConfirmedSpeedDoesNotSayThatAnythingWentAway() {
        RunEvidence weak = RUNS.get(Fault.WEAK_CYLINDER);
        RunNumbers quiet = RUNS.get(Fault.NONE).numbers();
        RunEvidence blind = later(
                weak,
                "blind",
                "Plugs changed.",
                with(quiet, Optional.of(Fact.of(SpeedDoubt.ONLY_MAINS)), quiet.quality()));
        assertThat(of(weak, blind))
                .filteredOn(f -> f.cause() == Cause.WEAK_CYLINDER)
                .singleElement()
                .matches(Finding::open);
        assertThat(of(weak, later(weak, "seen", "Plugs changed.", quiet)))
                .filteredOn(f -> f.cause() == Cause.WEAK_CYLINDER)
                .singleElement()
                .matches(f -> !f.open());
    }

    @Test
    void aMeshAsLoudAsBeforeIsNotPutRightWhereTheLinesBesideItAreLost() {
        RunEvidence worn = RUNS.get(Fault.GEAR);
        RunNumbers n = worn.numbers();
        List<ChannelOrders> lost = n.channels().stream()
                .map(c -> new ChannelOrders(
                        c.channel(),
                        c.unit(),
                        c.dwells().stream()
                                .map(d -> new DwellOrders(d.dwell(), d.readings(), List.of(), d.unevenness()))
                                .toList()))
                .toList();
        RunNumbers smeared = new RunNumbers(
                n.fileChannels(), n.durationS(), n.speedDoubt(), n.ratio(), lost, n.quality(), n.stamps());
        assertThat(of(worn, later(worn, "cleaned", "Hub cleaned.", smeared)))
                .filteredOn(f -> f.cause() == Cause.DRIVE)
                .singleElement()
                .matches(Finding::open);
        RunNumbers replaced = InventedEvidence.run(GEARED, Fault.NONE, SEED, InventedEvidence.RATE_WITH_MESH_HZ)
                .numbers();
        assertThat(of(worn, later(worn, "new gears", "Gears replaced.", replaced)))
                .filteredOn(f -> f.cause() == Cause.DRIVE)
                .singleElement()
                .matches(f -> f.goneSince().map(RunRef::name).equals(Optional.of("new gears")));
    }

    @ParameterizedTest
    @EnumSource
    void findingsSpeakOfActionsNotOfCommands(Fault fault) {
        assertThat(found(fault))
                .allSatisfy(f -> assertThat(allSaid(f)).doesNotContain(" --").doesNotContain("(--"));
    }

    @Test
    void nothingMeasuredGivesNoFinding() {
        assertThat(Findings.weigh(InventedEvidence.job(List.of(), StaticEvidence.NONE))
                        .list())
                .isEmpty();
    }

    private static String allSaid(Finding finding) {
        return Stream.of(
                        Stream.of(finding.statement(), finding.next()),
                        finding.speaksFor().stream().map(EvidenceItem::fact),
                        finding.speaksAgainst().stream().map(EvidenceItem::fact))
                .flatMap(facts -> facts)
                .map(RulesTest::said)
                .collect(Collectors.joining("\n"));
    }

    private static String said(Fact fact) {
        return Phrases.of(Face.COMMAND_LINE).text(fact);
    }
}
