package evenblade.judge.findings;

import static evenblade.judge.findings.EvidenceItem.running;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Estimated;
import evenblade.base.fact.Value.Quoted;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.TrackingSession;
import evenblade.machine.installation.HubCounting;
import evenblade.measure.orders.BladeShares;
import evenblade.measure.orders.BladeShares.Deviation;
import evenblade.measure.orders.DwellOrders;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** One blade whose push or sound differs from the others' in one mean turn; after a move, whether it went with the blade. */
final class BladeRule implements Rule {
    @Override
    public Cause cause() {
        return Cause.BLADE;
    }

    /** A mean turn, with the layout it ran in. */
    private record Turn(Stage stage, RunEvidence run, DwellOrders dwell, BladeShares blades) {
        /** The turn of a stage that is known best: one, so that there is one chance of a false name. */
        static Optional<Turn> of(Stage stage) {
            List<Turn> turns = new ArrayList<>();
            for (RunEvidence run : stage.runs()) {
                if (run.numbers().confirmed()) {
                    run.numbers().channels().forEach(channel -> channel.dwells().forEach(dwell -> dwell.blades()
                            .ifPresent(blades -> turns.add(new Turn(stage, run, dwell, blades)))));
                }
            }
            return turns.stream().min(Comparator.comparingDouble(t -> t.blades.shares().stream()
                    .mapToDouble(s -> s.strength().standardError())
                    .max()
                    .orElseThrow()));
        }

        /** The blade that stands out by so much that something can be found on it: by its push, else by its angle. */
        Optional<Integer> odd() {
            return blades.standsOut(true)
                    .filter(b -> Math.abs(blades.shares().get(b).strength().value()) >= Thresholds.PUSH_SHARE)
                    .or(() -> blades.standsOut(false)
                            .filter(b -> Math.abs(blades.shares().get(b).late().value()) >= Thresholds.LATE_DEG));
        }

        /** Hub position of a blade, where it was entered which one the mark stands for; the first to go by is 0. */
        OptionalInt position(int blade) {
            OptionalInt atMark = stage.installation().sensor().positionAtMark();
            if (atMark.isEmpty()) {
                return OptionalInt.empty();
            }
            int count = blades.shares().size();
            int nearest = 0;
            for (int b = 1; b < count; b++) {
                boolean nearer = Math.abs(blades.shares().get(b).atTurns())
                        < Math.abs(blades.shares().get(nearest).atTurns());
                nearest = nearer ? b : nearest;
            }
            // What runs ahead goes by first: counted with the rotation, the next to come is one position lower.
            int step = stage.installation().hubCounting() == HubCounting.WITH_ROTATION ? -1 : 1;
            return OptionalInt.of(Math.floorMod(atMark.getAsInt() - 1 + step * (blade - nearest), count) + 1);
        }

        Optional<String> letter(int blade) {
            Optional<Layout> layout = stage.track()
                    .flatMap(t -> t.analysis().sessions().stream()
                            .filter(s -> !s.at().isAfter(run.at()))
                            .reduce((first, second) -> second))
                    .map(TrackingSession::layout)
                    .filter(l -> l.positions() == blades.shares().size());
            OptionalInt position = position(blade);
            return position.isEmpty() ? Optional.empty() : layout.map(l -> l.at(position.getAsInt()));
        }

        Fact name(int blade) {
            Optional<String> letter = letter(blade);
            if (letter.isPresent()) {
                return Fact.of(FindingFact.BLADE_NAMED, new Quoted(letter.get()));
            }
            OptionalInt position = position(blade);
            return position.isPresent()
                    ? Fact.of(FindingFact.BLADE_AT_POSITION, new Count(position.getAsInt()))
                    : Fact.of(FindingFact.BLADE_AFTER_MARK, new Count(blade + 1));
        }

        EvidenceItem item(int blade, int points) {
            BladeShares.Share share = blades.shares().get(blade);
            return running(
                    points,
                    run.ref(EvidenceRef.Side.ORDERS),
                    FindingFact.BLADE_DEVIATES,
                    name(blade),
                    interval(share.strength(), Measure.SHARE),
                    interval(share.late(), Measure.ANGLE),
                    run.ref().quoted());
        }

        private Estimated interval(Deviation d, Measure measure) {
            double half = blades.interval95() * d.standardError();
            return new Estimated(d.value(), d.value() - half, d.value() + half, measure);
        }
    }

    @Override
    public Optional<Assessment> weigh(Stage stage) {
        Optional<Turn> found = Turn.of(stage);
        Optional<Integer> odd = found.flatMap(Turn::odd);
        if (odd.isEmpty()) {
            return Optional.empty();
        }
        Turn turn = found.get();
        List<EvidenceItem> pieces = new ArrayList<>();
        pieces.add(turn.item(odd.get(), 5));
        for (int b = 0; b < turn.blades().shares().size(); b++) {
            if (b != odd.get()) {
                pieces.add(turn.item(b, 0));
            }
        }
        boolean named = turn.letter(odd.get()).isPresent();
        Optional<EvidenceItem> moved = named ? moved(stage, turn, odd.get()) : Optional.empty();
        moved.ifPresent(pieces::add);
        List<PropellerOnceFeatures.HalfOrder> halves = new PropellerOnceFeatures(stage).halfOrders();
        if (LooseMountRule.several(halves)) {
            pieces.add(LooseMountRule.told(-4, halves)); // what knocks raises whole propeller orders too
        }
        BladeShares.Share share = turn.blades().shares().get(odd.get());
        return Optional.of(new Assessment(
                        Fact.of(FindingFact.POINTS_TO_BLADE, turn.name(odd.get())),
                        pieces,
                        false,
                        Math.max(
                                Math.abs(share.strength().value()),
                                Math.abs(share.late().value()) / 10),
                        Fact.of(
                                !named
                                        ? FindingFact.ENTER_POSITION_AT_MARK
                                        : moved.isPresent() ? FindingFact.LOOK_AT_BLADE : FindingFact.MOVE_AND_COMPARE))
                // The body answers each order otherwise: felt pushes are deformed, heard ones aren't.
                .toldApart(turn.run().microphone() || moved.isPresent()));
    }

    /** Whether the blade that stood out before a move is the one that does now. */
    private static Optional<EvidenceItem> moved(Stage stage, Turn now, int odd) {
        Optional<Turn> before = stage.before().flatMap(Turn::of);
        Optional<Integer> oddBefore = before.flatMap(Turn::odd);
        if (oddBefore.isEmpty() || before.get().letter(oddBefore.get()).isEmpty()) {
            return Optional.empty();
        }
        String was = before.get().letter(oddBefore.get()).orElseThrow();
        int wasAt = before.get().position(oddBefore.get()).orElseThrow();
        boolean sameBlade = was.equals(now.letter(odd).orElseThrow());
        boolean samePlace = wasAt == now.position(odd).orElseThrow();
        return sameBlade == samePlace
                ? Optional.empty()
                : Optional.of(running(
                        1,
                        now.run().ref(EvidenceRef.Side.ORDERS),
                        sameBlade ? FindingFact.WENT_WITH_BLADE : FindingFact.STAYED_AT_POSITION,
                        new Quoted(was),
                        new Count(wasAt),
                        before.get().run().ref().quoted()));
    }
}
