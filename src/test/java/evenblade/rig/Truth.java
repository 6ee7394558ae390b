package evenblade.rig;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a run truly is. Times are true times; the file's own clock may show others ({@link GroundRun#stampS}).
 * Line amplitudes are peak values in the channel's unit, of the machine as the sensor in its first state records it:
 * response, gain, remounting factors included, disturbances (let-go sensor, automatic gain, clipping) not.
 */
public record Truth(
        long seed,
        Machine machine,
        boolean machineRunning,
        SpeedTrack track,
        List<Dwell> dwells,
        List<Map<String, Object>> disturbances,
        Map<String, Object> facts) {

    /** One steady lever: speeds (mean, least, most) and every line on every channel. */
    public record Dwell(
            double fromS,
            double toS,
            double engineRpm,
            double minEngineRpm,
            double maxEngineRpm,
            double propellerRpm,
            Map<String, List<LineTruth>> channels) {

        public Optional<LineTruth> line(String channel, Shaft shaft, double order) {
            return channels.getOrDefault(channel, List.of()).stream()
                    .filter(l -> l.id().shaft() == shaft && Math.abs(l.id().order() - order) < 1e-9)
                    .findFirst();
        }
    }

    /**
     * One line in one dwell.
     *
     * @param amplitude size of the mean of its complex value, measured with the true angle of its shaft
     * @param meanSize mean of its momentary size: larger where the phase swings
     * @param phaseDeg cosine phase against the shaft's mark
     * @param amplitudeAtFrequency with every line that lies on the very same frequency added (vectors)
     * @param coincident those lines
     */
    public record LineTruth(
            LineId id,
            double frequencyHz,
            double amplitude,
            double meanSize,
            double phaseDeg,
            double amplitudeAtFrequency,
            List<LineId> coincident) {}

    /** Engine and propeller speed at a true time, rpm. */
    public double engineRpm(double timeS) {
        return track.engineRpm().at(timeS);
    }

    public String json() {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("seed", seed);
        all.put("machine", machine.name());
        all.put("machineRunning", machineRunning);
        all.put("trueRatio", machine.ratio());
        List<Object> speeds = new ArrayList<>();
        Series engine = track.engineRpm();
        Series propeller = track.propellerRpm();
        for (double t = 0; t <= track.seconds(); t += 0.1) {
            speeds.add(List.of(t, engine.at(t), propeller.at(t)));
        }
        all.put("timeEngineRpmPropellerRpm", speeds);
        all.put("dwells", dwells.stream().map(Truth::dwell).toList());
        all.put("disturbances", disturbances);
        all.put("facts", facts);
        return Json.write(all);
    }

    private static Object dwell(Dwell d) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("fromS", d.fromS);
        map.put("toS", d.toS);
        map.put("engineRpm", d.engineRpm);
        map.put("minEngineRpm", d.minEngineRpm);
        map.put("maxEngineRpm", d.maxEngineRpm);
        map.put("propellerRpm", d.propellerRpm);
        Map<String, Object> channels = new LinkedHashMap<>();
        d.channels.forEach((name, lines) ->
                channels.put(name, lines.stream().map(Truth::line).toList()));
        map.put("channels", channels);
        return map;
    }

    private static Object line(LineTruth l) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("of", l.id.shaft() == Shaft.PROPELLER ? "propeller" : "crank");
        map.put("order", l.id.order());
        map.put("frequencyHz", l.frequencyHz);
        map.put("amplitude", l.amplitude);
        map.put("meanSize", l.meanSize);
        map.put("phaseDeg", l.phaseDeg);
        map.put("amplitudeAtFrequency", l.amplitudeAtFrequency);
        return map;
    }
}
