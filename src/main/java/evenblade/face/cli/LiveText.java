package evenblade.face.cli;

import evenblade.measure.live.LiveFigures;
import evenblade.measure.live.StepProgress;
import evenblade.measure.live.SteppedRun;
import java.util.Locale;
import java.util.Optional;

/** Speed, propeller once-per-revolution and blade pass now, in few letters. */
final class LiveText {
    private LiveText() {}

    /** Figures with their errors; a line that is too weak shows what it stays below. */
    static String of(LiveFigures figures) {
        if (figures.engineRpm().isEmpty()) {
            return "no speed";
        }
        LiveFigures.Figure rpm = figures.engineRpm().get();
        String speed = String.format(Locale.ROOT, "%.0f ±%.0f rpm", rpm.value(), rpm.plusMinus());
        return figures.once().isEmpty() && figures.bladePass().isEmpty()
                ? speed + " not steady"
                : speed + " 1x " + amplitude(figures.once()) + " blade " + amplitude(figures.bladePass());
    }

    /** What to do now in a stepped run. */
    static String of(StepProgress step) {
        return switch (step.state()) {
            case GO_THERE -> String.format(Locale.ROOT, "GO TO %.0f:", step.engineRpm());
            case HOLD, DONE, DONE_WEAK ->
                String.format(Locale.ROOT, "HOLD %.0f %.0f/%.0f s:", step.engineRpm(), step.heldS(), until(step));
        };
    }

    /** Past the planned length a weak line is waited for. */
    private static double until(StepProgress step) {
        return step.heldS() < step.wantedS() ? step.wantedS() : SteppedRun.GIVE_UP_AFTER * step.wantedS();
    }

    /** The step to do now, as a line of its own. */
    static String next(Optional<StepProgress> step) {
        return step.map(each -> String.format(Locale.ROOT, "Next: hold %.0f engine rpm.", each.engineRpm()))
                .orElse("No step is left to do.");
    }

    /** A step that is done, as a line of its own. */
    static String done(StepProgress step) {
        return String.format(
                Locale.ROOT,
                "%.0f engine rpm: 1x %s, blade pass %s, %s after %.0f s",
                step.engineRpm(),
                percent(step.oncePercent()),
                percent(step.bladePassPercent()),
                step.state() == StepProgress.State.DONE ? "done" : "as good as it gets",
                step.heldS());
    }

    private static String percent(Optional<Double> percent) {
        return percent.map(p -> String.format(Locale.ROOT, "± %.1f %%", p)).orElse("too weak");
    }

    private static String amplitude(Optional<LiveFigures.Figure> figure) {
        return figure.map(each -> each.detected()
                        ? String.format(
                                Locale.ROOT,
                                "%.3g ±%.0f%%",
                                each.value(),
                                Math.ceil(100 * each.plusMinus() / each.value()))
                        : String.format(Locale.ROOT, "<%.2g", each.value()))
                .orElse("-");
    }
}
