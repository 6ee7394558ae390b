package evenblade.measure.speed;
public class Peek2 {
    public static void main(String[] a) {
        System.setProperty("peek", "1");
        for (Machine m : Machine.ALL) {
            for (int seed = 1; seed <= 3; seed++) {
            System.out.println("### " + m.name());
            Trial t = Trial.of(m, 20, 0.01, 12, seed);
            System.out.println(t.found().confirmed() + " " + t.found().doubt() + " true " + t.run().speed().meanHz(0,12) + " dwells " + t.found().dwells().size());
            if (t.found().confirmed()) System.out.println("err " + t.error());
            }
        }
    }
}
