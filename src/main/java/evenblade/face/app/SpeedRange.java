package evenblade.face.app;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.machine.installation.Engine;
import evenblade.measure.speed.SpeedPrior;
import evenblade.tell.document.FigureFormat;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where to look for the speed: around the entered one, else over the engine's whole range.
 *
 * @param expectation the range, in propeller revolutions per second
 * @param assumed what had to be assumed about the engine to get it
 */
record SpeedRange(SpeedPrior expectation, Optional<Warning> assumed) {
    /** An entered speed may lie this share outside idle and highest speed: instruments err. */
    private static final double INSTRUMENT_ERROR = 0.1;
    /** The search goes this share beyond idle and highest speed. */
    private static final double SEARCH_MARGIN = 0.05;
    /** Taken where an engine states only one end of its range. */
    private static final double MOST_OVER_IDLE = 5;

    /** Taken where an engine states neither: 300 to 3600 propeller rpm. */
    private static final double SLOWEST_PROPELLER_HZ = 5;

    /** 3600 rpm, past any propeller of this kind; common practice, no source. */
    private static final double FASTEST_PROPELLER_HZ = 60;

    static SpeedRange of(AnalysisRequest request) {
        double ratio = request.installation().reduction().ratio();
        Engine engine = request.installation().engine();
        OptionalDouble entered = request.engineRpm();
        if (request.propellerRpm().isPresent()) {
            entered = OptionalDouble.of(request.propellerRpm().getAsDouble() * ratio);
        }
        if (entered.isPresent()) {
            requireRunsNear(engine, entered.getAsDouble(), request);
            double propellerHz = entered.getAsDouble() / ratio / 60;
            SpeedPrior range = wholeRange(engine, ratio).expectation();
            return new SpeedRange(SpeedPrior.near(propellerHz, range.fromHz(), range.toHz()), Optional.empty());
        }
        return wholeRange(engine, ratio);
    }

    private static void requireRunsNear(Engine engine, double engineRpm, AnalysisRequest request) {
        double least = engine.idleRpm().orElse(Engine.LEAST_RPM) * (1 - INSTRUMENT_ERROR);
        double most = engine.maxRpm().orElse(Engine.MOST_RPM) * (1 + INSTRUMENT_ERROR);
        if (engineRpm >= least && engineRpm <= most) {
            return;
        }
        String found = request.propellerRpm().isPresent()
                ? FigureFormat.rpm(engineRpm / ratio(request)) + " rpm of the propeller, " + FigureFormat.rpm(engineRpm)
                        + " rpm of the engine"
                : FigureFormat.rpm(engineRpm) + " rpm of the engine";
        throw BadInput.in("entered speed")
                .found(
                        found,
                        "an engine speed from " + FigureFormat.rpm(least) + " ("
                                + (engine.idleRpm().isPresent() ? "10 % below idle" : "the least taken") + ") to "
                                + FigureFormat.rpm(most) + " rpm ("
                                + (engine.maxRpm().isPresent() ? "10 % above the stated maximum" : "the most taken")
                                + ")");
    }

    private static double ratio(AnalysisRequest request) {
        return request.installation().reduction().ratio();
    }

    private static SpeedRange wholeRange(Engine engine, double ratio) {
        double idle = engine.idleRpm()
                .orElse(
                        engine.maxRpm().isPresent()
                                ? engine.maxRpm().getAsDouble() / MOST_OVER_IDLE
                                : 60 * SLOWEST_PROPELLER_HZ * ratio);
        double most = engine.maxRpm()
                .orElse(
                        engine.idleRpm().isPresent()
                                ? engine.idleRpm().getAsDouble() * MOST_OVER_IDLE
                                : 60 * FASTEST_PROPELLER_HZ * ratio);
        Optional<Warning> assumed = Optional.empty();
        if (engine.idleRpm().isEmpty() || engine.maxRpm().isEmpty()) {
            assumed = Optional.of(Warning.of(
                    WarningCode.SPEED_RANGE_ASSUMED,
                    Subject.Whole.INSTALLATION,
                    Measure.ENGINE_RPM.of(idle),
                    Measure.ENGINE_RPM.of(most)));
        }
        return new SpeedRange(
                SpeedPrior.between(idle * (1 - SEARCH_MARGIN) / ratio / 60, most * (1 + SEARCH_MARGIN) / ratio / 60),
                assumed);
    }
}
