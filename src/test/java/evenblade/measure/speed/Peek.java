package evenblade.measure.speed;

import evenblade.bench.ConfirmationBench;

public class Peek {
    public static void main(String[] a) throws Exception {
        System.setProperty("peek", "1");
        ConfirmationBench.main(a);
    }
}
