package evenblade.rig;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Collects what the lines truly were, adds parts of one line, and finds lines on the very same frequency. */
final class TruthBook {
    private final SpeedTrack track;
    private final double ratio;
    private final boolean ratioFixed;
    private final List<Map<String, List<Truth.LineTruth>>> byHold = new ArrayList<>();

    TruthBook(SpeedTrack track, Machine machine, double ratioWander) {
        this.track = track;
        this.ratio = machine.ratio();
        this.ratioFixed = ratioWander == 0;
        track.holds().forEach(h -> byHold.add(new LinkedHashMap<>()));
    }

    void add(String channel, List<Synthesis.Met> met) {
        for (int h = 0; h < byHold.size(); h++) {
            Map<LineId, Phasor> mean = new LinkedHashMap<>();
            Map<LineId, Double> size = new LinkedHashMap<>();
            for (Synthesis.Met m : met) {
                if (m.hold() == h) {
                    boolean first = !mean.containsKey(m.id());
                    Phasor sum = mean.getOrDefault(m.id(), Phasor.ZERO).plus(m.mean());
                    mean.put(m.id(), sum);
                    size.put(m.id(), first ? m.meanSize() : sum.amplitude());
                }
            }
            SpeedTrack.Hold span = track.holds().get(h);
            List<Truth.LineTruth> lines = new ArrayList<>();
            mean.forEach((id, z) -> {
                List<LineId> others = mean.keySet().stream()
                        .filter(o -> !o.equals(id) && coincide(id, o))
                        .toList();
                double hz = id.order() * track.hz(id.shaft()).mean(span.fromS(), span.toS());
                lines.add(new Truth.LineTruth(
                        id, hz, z.amplitude(), size.get(id), z.phaseDeg(), sumAt(id, mean), others));
            });
            byHold.get(h).put(channel, lines);
        }
    }

    private boolean coincide(LineId a, LineId b) {
        return a.equals(b) || (ratioFixed && Math.abs(a.propellerOrder(ratio) - b.propellerOrder(ratio)) < 1e-9);
    }

    /** Sum of coinciding lines, each turned to the angle of the line's own shaft at the start of the run. */
    private double sumAt(LineId id, Map<LineId, Phasor> mean) {
        Phasor total = Phasor.ZERO;
        for (Map.Entry<LineId, Phasor> other : mean.entrySet()) {
            if (coincide(id, other.getKey())) {
                double turns =
                        track.turns(other.getKey().shaft(), 0) * other.getKey().order();
                total = total.plus(other.getValue().times(Phasor.polar(1, 2 * Math.PI * turns)));
            }
        }
        return total.amplitude();
    }

    List<Truth.Dwell> dwells() {
        List<Truth.Dwell> dwells = new ArrayList<>();
        Series rpm = track.engineRpm();
        for (int h = 0; h < byHold.size(); h++) {
            SpeedTrack.Hold span = track.holds().get(h);
            dwells.add(new Truth.Dwell(
                    span.fromS(),
                    span.toS(),
                    rpm.mean(span.fromS(), span.toS()),
                    rpm.min(span.fromS(), span.toS()),
                    rpm.max(span.fromS(), span.toS()),
                    track.propellerRpm().mean(span.fromS(), span.toS()),
                    byHold.get(h)));
        }
        return dwells;
    }
}
