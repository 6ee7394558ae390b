package evenblade.judge.balance;

/**
 * A place on the hub where the maker allows a weight.
 *
 * @param name as the user calls it
 * @param angleDeg its angle, counted as weights are
 * @param radiusMm its radius, above zero
 */
public record HubPlace(String name, double angleDeg, double radiusMm) {
    Unbalance with(double massG) {
        return Unbalance.of(massG, radiusMm, angleDeg);
    }
}
