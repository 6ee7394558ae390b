package evenblade.keep.practice;

/**
 * One blade as it truly is.
 *
 * @param name the mark it keeps when it moves: A, B, …
 * @param massKg of the blade
 * @param centreOfGravityM from the shaft's axis
 * @param trackM how far its own tip stands ahead of where it should, in metres
 * @param pitchDeg how much coarser than the mean it is set
 */
public record Blade(String name, double massKg, double centreOfGravityM, double trackM, double pitchDeg) {
    Blade heavierBy(double kg) {
        return new Blade(name, massKg + kg, centreOfGravityM, trackM, pitchDeg);
    }

    Blade ahead(double metres) {
        return new Blade(name, massKg, centreOfGravityM, trackM + metres, pitchDeg);
    }

    Blade coarser(double degrees) {
        return new Blade(name, massKg, centreOfGravityM, trackM, pitchDeg + degrees);
    }
}
