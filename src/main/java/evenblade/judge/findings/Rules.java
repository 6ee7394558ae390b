package evenblade.judge.findings;

import java.util.List;

/** The rules. This list is the one place where a rule is added. */
final class Rules {
    static final List<Rule> ALL = List.of(
            new MassRule(),
            new TrackRule(),
            new PitchRule(),
            new FlangeRule(),
            new BladeRule(),
            new WeakCylinderRule(),
            new CrankRule(),
            new CarburettorRule(),
            new DriveRule(),
            new ResonanceRule(),
            new LooseMountRule(),
            new RecordingRule(),
            new InseparableRule(),
            new ThrobRule());

    private Rules() {}
}
