package evenblade.rig;

/** Sine and cosine of turns by table with straight lines between: error at most (π/16384)²/2 = 2e-8. */
final class Sines {
    private static final int SIZE = 16_384;
    private static final double[] TABLE = table();

    private Sines() {}

    private static double[] table() {
        double[] t = new double[SIZE + SIZE / 4 + 2];
        for (int i = 0; i < t.length; i++) {
            t[i] = Math.sin(2 * Math.PI * i / SIZE);
        }
        return t;
    }

    static double sin(double turns) {
        double place = (turns - Math.floor(turns)) * SIZE;
        int i = (int) place;
        double a = TABLE[i];
        return a + (TABLE[i + 1] - a) * (place - i);
    }

    static double cos(double turns) {
        double place = (turns - Math.floor(turns)) * SIZE;
        int i = (int) place + SIZE / 4;
        double a = TABLE[i];
        return a + (TABLE[i + 1] - a) * (place - (i - SIZE / 4));
    }
}
