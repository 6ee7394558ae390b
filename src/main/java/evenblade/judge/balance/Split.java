package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;
import evenblade.judge.balance.BalanceRequest.HubPlace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A correction shared out over places.
 *
 * @param shares what goes where
 * @param leftGmm how much of the correction is then still missing, in g·mm
 */
public record Split(List<Share> shares, double leftGmm) {
    /** Masses in g closer to zero than this are none. */
    private static final double NOTHING_G = 1e-9;

    public Split {
        shares = List.copyOf(shares);
    }

    /**
     * Exactly, over the two neighbours on either side: U₁ = U·sin(θ₂ − θ)/sin(θ₂ − θ₁), U₂ = U·sin(θ − θ₁)/sin(θ₂ − θ₁).
     * Where no two places have the angle between them (less than half a turn apart), the nearest place takes what it can.
     *
     * @return nothing where no place lies within a quarter turn of the angle
     */
    public static Optional<Split> exact(Unbalance correction, List<HubPlace> places) {
        double angle = correction.angleDeg();
        Optional<HubPlace> before = places.stream()
                .filter(p -> ahead(p.angleDeg(), angle) < 180)
                .min(Comparator.comparingDouble(p -> ahead(p.angleDeg(), angle)));
        Optional<HubPlace> after = places.stream()
                .filter(p -> ahead(angle, p.angleDeg()) < 180)
                .min(Comparator.comparingDouble(p -> ahead(angle, p.angleDeg())));
        if (before.isPresent() && after.isPresent()) {
            double back = ahead(before.get().angleDeg(), angle);
            double on = ahead(angle, after.get().angleDeg());
            if (back + on > 0 && back + on < 180) {
                double whole = Math.sin(Math.toRadians(back + on));
                return Optional.of(of(
                        correction,
                        share(before.get(), correction.gmm() * Math.sin(Math.toRadians(on)) / whole),
                        share(after.get(), correction.gmm() * Math.sin(Math.toRadians(back)) / whole)));
            }
        }
        return places.stream()
                .filter(p -> Math.abs(Correction.turn(p.angleDeg(), angle)) < 90)
                .min(Comparator.comparingDouble(p -> Math.abs(Correction.turn(p.angleDeg(), angle))))
                .map(p -> of(
                        correction,
                        share(p, correction.gmm() * Math.cos(Math.toRadians(Correction.turn(p.angleDeg(), angle))))));
    }

    private static Share share(HubPlace place, double gmm) {
        return new Share(place, gmm / place.radiusMm(), List.of());
    }

    static Split of(Unbalance correction, Share... shares) {
        List<Share> kept = new ArrayList<>();
        Unbalance left = correction;
        for (Share share : shares) {
            if (share.massG() > NOTHING_G) {
                kept.add(share);
                left = left.minus(share.unbalance());
            }
        }
        return new Split(kept, left.gmm());
    }

    /** The weights to put on, for a prediction. */
    public List<Weight> weights() {
        return shares.stream()
                .map(s -> Weight.of(s.massG(), s.place().radiusMm(), s.place().angleDeg()))
                .toList();
    }

    /** Sum of what is put on. */
    public Unbalance sum() {
        return shares.stream().map(Share::unbalance).reduce(new Unbalance(Phasor.ZERO), Unbalance::plus);
    }

    /** The heaviest share. */
    double heaviestG() {
        return shares.stream().mapToDouble(Share::massG).max().orElse(0);
    }

    double totalG() {
        return shares.stream().mapToDouble(Share::massG).sum();
    }

    private static double ahead(double fromDeg, double toDeg) {
        double turn = (toDeg - fromDeg) % 360;
        return turn < 0 ? turn + 360 : turn;
    }

    /**
     * What goes on one place.
     *
     * @param place where
     * @param massG how much
     * @param piecesG the weights of the shop's stock that make it up, heaviest first; empty where no stock was given
     */
    public record Share(HubPlace place, double massG, List<Double> piecesG) {
        public Share {
            piecesG = List.copyOf(piecesG);
        }

        Unbalance unbalance() {
            return place.with(massG);
        }
    }
}
