package evenblade.keep.practice;

import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.PitchReadings;
import evenblade.keep.job.Detail;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntToDoubleFunction;

/**
 * What a technician reads off a machine that stands still, with the error of each reading: pencil line at the
 * tips 0.4 mm, protractor 0.1°, dial 0.01 mm.
 *
 * @param machine the truth
 * @param seed of the reading errors
 */
record StaticCheck(Machine machine, long seed) {
    private static final double MARK_SIGMA_MM = 0.4; // invented: a felt pen against a block
    private static final double PROTRACTOR_SIGMA_DEG = 0.1; // invented: a digital protractor
    private static final double BLOCK_MM = 12; // invented
    private static final double SET_PITCH_DEG = 21; // invented
    private static final int ROUNDS = 2; // what it takes to see the reading error

    /** Tip marks against a block, two rounds. */
    Detail.Tracking tracking() {
        Random random = new Random(Seeds.part(seed, 1));
        String readings = rounds(
                position -> BLOCK_MM + 1000 * machine.trackAtM(position) + MARK_SIGMA_MM * random.nextGaussian(),
                "%.1f mm");
        return new Detail.Tracking(layout(), readings, Optional.of(MARK_SIGMA_MM + " mm"));
    }

    /** Blade angles at 0.75 of the tip radius, two rounds, protractor set to zero on the hub. */
    Detail.Pitch pitch() {
        Random random = new Random(Seeds.part(seed, 2));
        String readings = rounds(
                position -> SET_PITCH_DEG
                        + machine.blades().get(position - 1).pitchDeg()
                        + PROTRACTOR_SIGMA_DEG * random.nextGaussian(),
                "%.1f deg");
        String station = text("%.0f mm", 750 * machine.tipRadiusM());
        return new Detail.Pitch(
                layout(),
                readings,
                Optional.of("0 deg"),
                PitchReadings.Reference.HUB,
                Optional.of(station),
                Optional.of(PROTRACTOR_SIGMA_DEG + " deg"));
    }

    /** The dial on the flange. */
    Detail.RunOut runOut() {
        InventedRunOut truth = machine.runOut();
        return new Detail.RunOut(
                text("%.2f mm", 1000 * truth.totalM()),
                text("%.0f mm", 1000 * truth.dialRadiusM()),
                Optional.of(text("%.0f deg", 10 * Math.rint(truth.highDeg() / 10) % 360)));
    }

    private Layout layout() {
        return new Layout(machine.blades().stream().map(Blade::name).toList());
    }

    private String rounds(IntToDoubleFunction reading, String format) {
        List<String> rounds = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
            List<String> marks = new ArrayList<>();
            for (int position = 1; position <= machine.blades().size(); position++) {
                marks.add(text(format, reading.applyAsDouble(position)));
            }
            rounds.add(String.join(", ", marks));
        }
        return String.join("; ", rounds);
    }

    private static String text(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
