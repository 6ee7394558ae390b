package evenblade.judge.findings;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Fact;
import evenblade.base.units.Length;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.StampQuality;
import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.SensorPlace;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.BladeShares;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedDoubt;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Each rule on both sides of the number from which it speaks, from facts written by hand. */
class ThresholdsTest {
    private static final double RATIO = InventedEvidence.GEARED.reduction().ratio();
    /** A dwell at 4800 engine rpm. */
    private static final double PROPELLER_HZ = 4800 / RATIO / 60;

    /** Just above and just below a threshold. */
    private static final double MORE = 1.001;

    private static final double LESS = 0.999;

    private static OrderLine line(Shaft shaft, double order) {
        return InventedEvidence.GEARED.orders().lines().stream()
                .filter(line -> line.of() == shaft && line.order() == order)
                .findFirst()
                .orElseThrow();
    }

    private static OrderLine mesh() {
        return InventedEvidence.GEARED.orders().lines().stream()
                .filter(line -> line.role() == OrderLine.Role.MESH)
                .findFirst()
                .orElseThrow();
    }

    /** A line that stands out, with an interval of ± 1 %. */
    private static OrderReading reading(OrderLine line, double amplitude, double propellerHz) {
        Level level = new Level.Measured(
                amplitude,
                amplitude / 200,
                0.99 * amplitude,
                1.01 * amplitude,
                OptionalDouble.empty(),
                true,
                Level.Estimator.COHERENT);
        return new OrderReading(line, line.propellerOrder() * propellerHz, level, List.of());
    }

    private static DwellOrders dwell(double propellerHz, List<UnexplainedLine> others, OrderReading... readings) {
        return new DwellOrders(
                new Dwell(0, 20, propellerHz, 0.001, propellerHz, propellerHz),
                List.of(readings),
                others,
                Optional.empty());
    }

    private static RunEvidence run(List<ChannelOrders> channels, List<ChannelQuality> quality, Optional<Fact> doubt) {
        List<String> names = channels.stream().map(ChannelOrders::channel).toList();
        return new RunEvidence(
                new RunRef("e1", "by hand"),
                Instant.EPOCH,
                Optional.empty(),
                List.of(),
                new RunNumbers(names, 60, doubt, RATIO, channels, quality, Optional.empty()),
                Map.of("along", Direction.ALONG, "level", Direction.ACROSS, "upright", Direction.UP),
                false);
    }

    private static Stage stage(RunEvidence run) {
        return Stage.of(InventedEvidence.job(List.of(run), StaticEvidence.NONE)).get(0);
    }

    /** One run of a velocity sensor, one channel to each dwell list. */
    private static Stage stage(Map<String, DwellOrders> byChannel) {
        List<ChannelOrders> channels = new ArrayList<>();
        byChannel.forEach((name, dwell) ->
                channels.add(new ChannelOrders(name, SignalUnit.MILLIMETRE_PER_SECOND, List.of(dwell))));
        return stage(run(channels, List.of(), Optional.empty()));
    }

    private static Stage once(double level, double along) {
        OrderLine once = line(Shaft.PROPELLER, 1);
        return stage(Map.of(
                "level", dwell(PROPELLER_HZ, List.of(), reading(once, level, PROPELLER_HZ)),
                "along", dwell(PROPELLER_HZ, List.of(), reading(once, along, PROPELLER_HZ))));
    }

    private static int points(Rule rule, Stage stage, FindingFact code) {
        return rule.weigh(stage).stream()
                .flatMap(said -> said.pieces().stream())
                .filter(piece -> piece.fact().code() == code)
                .mapToInt(EvidenceItem::points)
                .sum();
    }

    @Test
    @DisplayName("Mass is looked at from 1.8 mm/s of propeller 1× on")
    void massFromItsVelocityOn() {
        double limit = Thresholds.ONCE_MM_S;
        assertThat(new MassRule().weigh(once(MORE * limit, 0.1))).isPresent();
        assertThat(new MassRule().weigh(once(LESS * limit, 0.1))).isEmpty();
    }

    /** Pull over couple, for a sensor straight above the middle of the mounts. */
    private static DiscFit above(double level, double along) {
        Stage stage = once(level, along);
        SensorPlace.OnEngine middle = new SensorPlace.OnEngine(Length.ofMetres(0), Length.ofMetres(0.3));
        return DiscFit.of(stage.runs(), Optional.of(middle)).orElseThrow();
    }

    @Test
    @DisplayName("Above the middle of the mounts a couple shakes along only, a pull at the disc level as well")
    void aCoupleHasNoLevelPartAboveTheMiddle() {
        // Free body: a couple turns the engine about its middle, so x = 0 moves along by z·α and level by x·α = 0; a
        // pull F
        // at 0.5 m moves it level by F/m and along by z·0.5·F/(m·0.25²), about 0.15·8 = 1.2 times that.
        assertThat(above(0.2, 4).pullPoints()).isNegative();
        assertThat(above(4, 4.4).pullPoints()).isPositive();
        assertThat(above(4, 4.4).items(1)).singleElement().satisfies(item -> assertThat(item.points())
                .isPositive());
        assertThat(above(4, 4.4).items(-1)).singleElement().satisfies(item -> assertThat(item.points())
                .isNegative());
    }

    @Test
    @DisplayName("One direction alone tells nothing of pull and couple")
    void oneDirectionTellsNothing() {
        OrderLine once = line(Shaft.PROPELLER, 1);
        Stage stage = stage(Map.of("level", dwell(PROPELLER_HZ, List.of(), reading(once, 4, PROPELLER_HZ))));
        assertThat(stage.disc()).isEmpty();
    }

    private static Stage engine(double crankOrder, double overFiring) {
        return engine(crankOrder, overFiring, 100);
    }

    /** Firing of so many mm/s. */
    private static Stage engine(double crankOrder, double overFiring, double firing) {
        return stage(Map.of(
                "level",
                dwell(
                        PROPELLER_HZ,
                        List.of(),
                        reading(line(Shaft.CRANK, 2), firing, PROPELLER_HZ),
                        reading(line(Shaft.CRANK, crankOrder), firing * overFiring, PROPELLER_HZ))));
    }

    @Test
    @DisplayName("A weak cylinder is spoken of from 3 % of firing at crank ½× on")
    void weakCylinderFromItsShareOn() {
        assertThat(new WeakCylinderRule().weigh(engine(0.5, MORE * Thresholds.HALF_OVER_FIRING)))
                .isPresent();
        assertThat(new WeakCylinderRule().weigh(engine(0.5, LESS * Thresholds.HALF_OVER_FIRING)))
                .isEmpty();
    }

    @Test
    @DisplayName("Crank mass is spoken of from 6 % of firing at crank 1× on, carburettors from 5 %")
    void crankFromItsShareOn() {
        assertThat(new CrankRule().weigh(engine(1, MORE * Thresholds.CRANK_OVER_FIRING)))
                .isPresent();
        assertThat(new CrankRule().weigh(engine(1, LESS * Thresholds.CRANK_OVER_FIRING)))
                .isEmpty();
        assertThat(new CarburettorRule().weigh(engine(1, MORE * Thresholds.WEAK_OVER_FIRING)))
                .isPresent();
        assertThat(new CarburettorRule().weigh(engine(1, LESS * Thresholds.WEAK_OVER_FIRING)))
                .isEmpty();
    }

    /** Four blades, the third otherwise by this much, known so well that chance is no answer. */
    private static Stage thirdBlade(double share, double lateDeg) {
        List<BladeShares.Share> shares = new ArrayList<>();
        for (int b = 0; b < 4; b++) {
            double part = b == 2 ? 1 : -1 / 3.0; // deviations from the mean of all add up to nothing
            shares.add(new BladeShares.Share(
                    b / 4.0,
                    new BladeShares.Deviation(part * share, 0.0005),
                    new BladeShares.Deviation(part * lateDeg, 0.005)));
        }
        DwellOrders plain = dwell(PROPELLER_HZ, List.of());
        BladeShares blades = new BladeShares(shares, 24);
        return stage(Map.of(
                "along",
                new DwellOrders(
                        plain.dwell(),
                        plain.readings(),
                        plain.unexplained(),
                        plain.unevenness(),
                        plain.swell(),
                        Optional.of(blades))));
    }

    @Test
    @DisplayName("A blade is spoken of from 3 % of push or 0.3° on, however surely it differs by less")
    void aBladeFromWhatCanBeFoundOnIt() {
        assertThat(new BladeRule().weigh(thirdBlade(MORE * Thresholds.PUSH_SHARE, 0)))
                .isPresent();
        assertThat(new BladeRule().weigh(thirdBlade(-LESS * Thresholds.PUSH_SHARE, 0)))
                .isEmpty();
        assertThat(new BladeRule().weigh(thirdBlade(0, MORE * Thresholds.LATE_DEG)))
                .isPresent();
        assertThat(new BladeRule().weigh(thirdBlade(0, -LESS * Thresholds.LATE_DEG)))
                .isEmpty();
        // A push that is too small to look for doesn't hide an angle that isn't.
        assertThat(new BladeRule().weigh(thirdBlade(LESS * Thresholds.PUSH_SHARE, MORE * Thresholds.LATE_DEG)))
                .isPresent();
    }

    /**
     * Firing of 10 mm/s, and the half orders from ½ to 3½ with 8 % of it each, all at 4800 engine rpm.
     *
     * @param firing sizes along, level and upright, as shares
     * @param halves likewise
     */
    private static Stage shaped(double[] firing, double[] halves) {
        List<String> names = List.of("along", "level", "upright");
        Map<String, DwellOrders> channels = new LinkedHashMap<>();
        for (int c = 0; c < 3; c++) {
            List<OrderReading> readings = new ArrayList<>();
            readings.add(reading(line(Shaft.CRANK, 2), 10 * firing[c], PROPELLER_HZ));
            for (double order : new double[] {0.5, 1.5, 2.5, 3.5}) {
                readings.add(reading(line(Shaft.CRANK, order), 0.8 * halves[c], PROPELLER_HZ));
            }
            channels.put(names.get(c), dwell(PROPELLER_HZ, List.of(), readings.toArray(OrderReading[]::new)));
        }
        return stage(channels);
    }

    private static double sureness(Rule rule, Stage stage) {
        return rule.weigh(stage).map(said -> said.sureness().share()).orElse(0.0);
    }

    @Test
    @DisplayName(
            "Half orders that shake a little otherwise than firing put a loose mount before a weak cylinder, and neither is sure")
    void halvesThatAreNotQuiteLikeFiringPutTheMountFirst() {
        double[] across = {0.1, 1, 0.3};
        // The cosine between (0.1, 1, 0.3) and (0.1, 0.8, 0.55) is 0.96; ten times the angle of (0.1, 1, 0.33) is more.
        Stage unlike = shaped(across, new double[] {0.1, 0.8, 0.55});
        assertThat(sureness(new LooseMountRule(), unlike))
                .isLessThan(Confidence.CONFIDENT)
                .isGreaterThan(sureness(new WeakCylinderRule(), unlike));
        Stage like = shaped(across, new double[] {0.1, 1, 0.33});
        assertThat(new LooseMountRule().weigh(like)).isEmpty();
        assertThat(sureness(new WeakCylinderRule(), like)).isGreaterThan(Confidence.CONFIDENT);
    }

    @Test
    @DisplayName(
            "Where firing lifts the sensor more than it swings it a weak cylinder is never sure: a mount that knocks has that shape too")
    void whereFiringLiftsAWeakCylinderIsNotSure() {
        double[] upright = {0.1, 0.3, 1};
        Stage lifted = shaped(upright, upright);
        assertThat(sureness(new WeakCylinderRule(), lifted)).isLessThan(Confidence.CONFIDENT);
        assertThat(points(new WeakCylinderRule(), lifted, FindingFact.FIRING_LIFTS))
                .isNegative();
    }

    @Test
    @DisplayName("A reading within its limit makes nothing sure, and is in doubt where a resonance lifts 1×")
    void aReadingWithinItsLimitMakesNothingSure() {
        PropellerOnceFeatures rises = new PropellerOnceFeatures(once(4, 0.1));
        assertThat(rises.surest(false)).isEqualTo(1);
        assertThat(rises.surest(true)).isLessThan(Confidence.CONFIDENT);
        assertThat(new PropellerOnceFeatures(fall(0.5)).surest(true)).isEqualTo(Confidence.MOST_IN_DOUBT);
    }

    @Test
    @DisplayName("Of causes that aren't sure the one that is likely to shake most comes first")
    void whatShakesMostComesFirstWhereNothingIsSure() {
        double[] upright = {0.1, 0.3, 1};
        Stage halves = shaped(upright, upright);
        Map<String, DwellOrders> channels = new LinkedHashMap<>();
        halves.runs().get(0).numbers().channels().forEach(channel -> {
            List<OrderReading> readings =
                    new ArrayList<>(channel.dwells().get(0).readings());
            readings.add(reading(line(Shaft.PROPELLER, 1), channel.channel().equals("level") ? 20 : 5, PROPELLER_HZ));
            channels.put(channel.channel(), dwell(PROPELLER_HZ, List.of(), readings.toArray(OrderReading[]::new)));
        });
        List<Finding> found = Findings.weigh(
                        InventedEvidence.job(stage(channels).runs(), StaticEvidence.NONE))
                .list();
        // "Weak cylinder or loose mount" is surer than any cause of 1× alone, and carries 0.8 of 20 mm/s.
        assertThat(found.get(0).among()).contains(Cause.MASS, Cause.TRACK);
        assertThat(found).anyMatch(f -> f.among().contains(Cause.WEAK_CYLINDER));
    }

    @Test
    @DisplayName("No line below 0.5 mm/s is blamed, however large a share of firing it is")
    void nothingIsBlamedBelowTheFloor() {
        double half = 0.5;
        double firing = Thresholds.BLAMED_MM_S / half;
        assertThat(new CrankRule().weigh(engine(1, MORE * half, firing))).isPresent();
        assertThat(new CrankRule().weigh(engine(1, LESS * half, firing))).isEmpty();
        assertThat(new WeakCylinderRule().weigh(engine(0.5, MORE * half, firing)))
                .isPresent();
        assertThat(new WeakCylinderRule().weigh(engine(0.5, LESS * half, firing)))
                .isEmpty();
    }

    /** Propeller 1× of 4 mm/s at 32.9 Hz, and crank ½× 0.214 propeller orders above it: 7.06 Hz apart (17/14 − 1 = 0.2143). */
    private static Stage throb(double weaker, double propellerHz) {
        return stage(Map.of(
                "level",
                dwell(
                        propellerHz,
                        List.of(),
                        reading(line(Shaft.PROPELLER, 1), 4, propellerHz),
                        reading(line(Shaft.CRANK, 0.5), weaker, propellerHz))));
    }

    @Test
    @DisplayName("A slow throb is told from a depth of 30 % on, between 1 and 8 swells per second")
    void slowThrobFromItsDepthOn() {
        // 2·b/(4 + b) = 0.3 at b = 12/17 = 0.7059.
        double weaker = 12 / 17.0;
        assertThat(new ThrobRule().weigh(throb(MORE * weaker, PROPELLER_HZ))).isPresent();
        assertThat(new ThrobRule().weigh(throb(LESS * weaker, PROPELLER_HZ))).isEmpty();
        double order = line(Shaft.CRANK, 0.5).propellerOrder() - 1;
        assertThat(new ThrobRule().weigh(throb(2, LESS * 8 / order))).isPresent();
        assertThat(new ThrobRule().weigh(throb(2, MORE * 8 / order))).isEmpty();
        assertThat(new ThrobRule().weigh(throb(2, MORE * 1 / order))).isPresent();
        assertThat(new ThrobRule().weigh(throb(2, LESS * 1 / order))).isEmpty();
    }

    @Test
    @DisplayName("A throb says which lines beat, how fast and how deep")
    void slowThrobWithItsNumbers() {
        String said = Phrases.of(Face.COMMAND_LINE)
                .text(new ThrobRule()
                        .weigh(throb(2, PROPELLER_HZ))
                        .orElseThrow()
                        .pieces()
                        .get(0)
                        .fact());
        double hz = (line(Shaft.CRANK, 0.5).propellerOrder() - 1) * PROPELLER_HZ;
        // 2·2/(4 + 2) = 67 %
        assertThat(said)
                .contains("propeller 1×")
                .contains("crank ½×")
                .contains("67 %")
                .contains(String.format(java.util.Locale.ROOT, "%.1f", hz).substring(0, 3));
    }

    /** Mesh of 1, and a sharp line one propeller turn above it. */
    private static Stage meshWithSide(double share) {
        OrderLine mesh = mesh();
        double order = mesh.propellerOrder() + 1;
        UnexplainedLine side = new UnexplainedLine(order * PROPELLER_HZ, share, order, order / RATIO, true, false);
        return stage(Map.of("level", dwell(PROPELLER_HZ, List.of(side), reading(mesh, 1, PROPELLER_HZ))));
    }

    @Test
    @DisplayName("The drive is spoken of from a line beside the mesh of a tenth of it on, and its spectrum shows it")
    void driveFromItsSideLineOn() {
        Optional<Assessment> said = new DriveRule().weigh(meshWithSide(MORE * Thresholds.SIDE_OVER_MESH));
        assertThat(said.orElseThrow().pieces().get(0).ref()).isInstanceOfSatisfying(EvidenceRef.Run.class, run -> {
            assertThat(run.id()).isEqualTo("e1");
            assertThat(run.side()).isEqualTo(EvidenceRef.Side.SPECTRUM);
            assertThat(run.line()).contains(mesh());
        });
        assertThat(new DriveRule().weigh(meshWithSide(LESS * Thresholds.SIDE_OVER_MESH)))
                .isEmpty();
    }

    private static Stage fall(double share) {
        OrderLine once = line(Shaft.PROPELLER, 1);
        double faster = 1.1 * PROPELLER_HZ;
        return stage(run(
                List.of(new ChannelOrders(
                        "level",
                        SignalUnit.MILLIMETRE_PER_SECOND,
                        List.of(
                                dwell(PROPELLER_HZ, List.of(), reading(once, 4, PROPELLER_HZ)),
                                dwell(faster, List.of(), reading(once, 4 * (1 - share), faster))))),
                List.of(),
                Optional.empty()));
    }

    @Test
    @DisplayName("A resonance is told by a fall of 1× from 15 % on")
    void resonanceFromItsFallOn() {
        assertThat(points(new ResonanceRule(), fall(MORE * Thresholds.FALL), FindingFact.FALLS))
                .isPositive();
        assertThat(points(new ResonanceRule(), fall(LESS * Thresholds.FALL), FindingFact.FALLS))
                .isZero();
    }

    private static Stage clipped(double share, int stuck) {
        ChannelQuality quality = new ChannelQuality("level", share, stuck, 1, 0, 0.3);
        OrderLine once = line(Shaft.PROPELLER, 1);
        return stage(run(
                List.of(new ChannelOrders(
                        "level",
                        SignalUnit.MILLIMETRE_PER_SECOND,
                        List.of(dwell(PROPELLER_HZ, List.of(), reading(once, 1, PROPELLER_HZ))))),
                List.of(quality),
                Optional.empty()));
    }

    @Test
    @DisplayName("The recording is doubted from one clipped sample in 10,000 on, and from 50 equal samples in a row on")
    void recordingFromItsClippingOn() {
        Rule rule = new RecordingRule();
        assertThat(rule.weigh(clipped(MORE * Thresholds.CLIPPED, 0))).isPresent();
        assertThat(rule.weigh(clipped(LESS * Thresholds.CLIPPED, 0))).isEmpty();
        assertThat(rule.weigh(clipped(0, 50))).isPresent();
        assertThat(rule.weigh(clipped(0, 49))).isEmpty();
    }

    @Test
    @DisplayName("Gaps are spoken of from more than a hundredth of the recording on")
    void recordingFromItsGapsOn() {
        assertThat(new RecordingRule().weigh(gaps(60 * 0.01 * MORE))).isPresent();
        assertThat(new RecordingRule().weigh(gaps(60 * 0.01 * LESS))).isEmpty();
    }

    private static Stage gaps(double lostS) {
        ChannelOrders level =
                new ChannelOrders("level", SignalUnit.METRE_PER_SECOND_SQUARED, List.of(dwell(33, List.of())));
        RunEvidence whole = run(List.of(level), List.of(), Optional.empty());
        RunNumbers n = whole.numbers();
        RunNumbers torn = new RunNumbers(
                n.fileChannels(),
                n.durationS(),
                Optional.empty(),
                n.ratio(),
                n.channels(),
                n.quality(),
                Optional.of(new StampQuality(0.001, 0, 3, lostS, 0, 0)));
        return stage(
                new RunEvidence(whole.ref(), whole.at(), Optional.empty(), List.of(), torn, whole.directions(), false));
    }

    @Test
    @DisplayName("A run of which every channel rattles isn't called quiet: its sensor is to be looked at")
    void rattlingSensorsAreToldOf() {
        Assessment told = new RecordingRule()
                .weigh(stage(run(List.of(), List.of(), Optional.empty())))
                .orElseThrow();
        assertThat(told.pieces().get(0).fact().code()).isEqualTo(FindingFact.EVERY_SENSOR_RATTLES);
        assertThat(told.next().code()).isEqualTo(FindingFact.CHECK_SENSOR);
    }

    @Test
    @DisplayName("A speed that isn't confirmed is shown on the side of the run where its speed is")
    void doubtLeadsToTheSpeed() {
        Stage doubted = stage(run(List.of(), List.of(), Optional.of(Fact.of(SpeedDoubt.NOTHING_STANDS))));
        EvidenceItem piece =
                new RecordingRule().weigh(doubted).orElseThrow().pieces().get(0);
        assertThat(piece.fact().code()).isEqualTo(FindingFact.SPEED_NOT_BORNE_OUT);
        assertThat(piece.ref()).isEqualTo(EvidenceRef.Run.of("e1", EvidenceRef.Side.SPEED));
    }
}
