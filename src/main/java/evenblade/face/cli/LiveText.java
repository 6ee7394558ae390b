package evenblade.face.cli;

import evenblade.measure.live.LiveFigures;
import evenblade.measure.live.StepProgress;
import evenblade.measure.live.SteppedRun;
import evenblade.tell.document.FigureFormat;
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
        String speed = FigureFormat.rpm(rpm.value()) + " ±" + FigureFormat.rpm(rpm.plusMinus()) + " rpm";
        return figures.once().isEmpty() && figures.bladePass().isEmpty()
                ? speed + " not steady"
                : speed + " 1x " + amplitude(figures.once()) + " blade " + amplitude(figures.bladePass());
    }

    /** What to do now in a stepped run. */
    static String of(StepProgress step) {
        return switch (step.state()) {
            case GO_THERE -> "GO TO " + FigureFormat.rpm(step.engineRpm()) + ":";
            case HOLD, DONE, DONE_WEAK ->
                "HOLD " + FigureFormat.rpm(step.engineRpm()) + " " + FigureFormat.fixed(step.heldS(), 0) + "/"
                        + FigureFormat.fixed(until(step), 0) + " s:";
        };
    }

    /** Past the planned length a weak line is waited for. */
    private static double until(StepProgress step) {
        return step.heldS() < step.wantedS() ? step.wantedS() : SteppedRun.GIVE_UP_AFTER * step.wantedS();
    }

    /** The step to do now, as a line of its own. */
    static String next(Optional<StepProgress> step) {
        return step.map(each -> "Next: hold " + FigureFormat.rpm(each.engineRpm()) + " engine rpm.")
                .orElse("No step is left to do.");
    }

    /** A step that is done, as a line of its own. */
    static String done(StepProgress step) {
        return FigureFormat.rpm(step.engineRpm()) + " engine rpm: 1x " + percent(step.oncePercent()) + ", blade pass "
                + percent(step.bladePassPercent()) + ", "
                + (step.state() == StepProgress.State.DONE ? "done" : "as good as it gets") + " after "
                + FigureFormat.fixed(step.heldS(), 0) + " s";
    }

    private static String percent(Optional<Double> percent) {
        return percent.map(p -> "± " + FigureFormat.fixed(p, 1) + " %").orElse("too weak");
    }

    private static String amplitude(Optional<LiveFigures.Figure> figure) {
        return figure.map(each -> each.detected()
                        ? FigureFormat.plain(each.value()) + " ±"
                                + FigureFormat.fixed(Math.ceil(100 * each.plusMinus() / each.value()), 0) + "%"
                        : "<" + FigureFormat.rough(each.value()))
                .orElse("-");
    }
}
