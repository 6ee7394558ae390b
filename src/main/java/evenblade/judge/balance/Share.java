package evenblade.judge.balance;

import java.util.List;

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
