package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.DrawBalance;
import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Event;
import evenblade.keep.job.HubWeight;
import evenblade.keep.job.WeightsOn;
import evenblade.machine.installation.HubCounting;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import javax.swing.JComboBox;
import javax.swing.JTextField;

/** Writes down a balance weight that was put on or taken off, and once how angles on the hub are counted. */
final class WeightForm extends EntryForm {
    private static final String NONE = "none";
    /** Height of the picture in letters. */
    private static final int PICTURE_EM = 24;

    private static final String UNSAID = "as said before";

    private final JTextField mass;
    private final JTextField radius;
    private final JTextField angle;
    private final JTextField label;
    private final JComboBox<String> off = new JComboBox<>();
    private final JComboBox<String> counted = new JComboBox<>();

    WeightForm(Navigator bench, OpenJob job) {
        super(bench, job, "weight", "A balance weight put on or taken off", "Write it down", WeightForm::new);
        told("Ignition off, key out, before a hand goes near the propeller. Weights only where and as"
                + " the maker allows; none on the face of a wooden blade.");
        mass = field("mass", "Put on: mass", "like 10 g or 1/4 oz");
        radius = field("radius", "at a radius of", "like 60 mm or 2 3/8 in, to the middle of the weight");
        angle = field("angle", "at an angle of", "degrees from hub position 1");
        label = field("label", "Name of the weight", "short; may be left empty");
        off.addItem(NONE);
        WeightsOn.now(job.record()).forEach(event -> off.addItem(event.label().orElse(event.id())));
        labelled("off", "Taken off", off);
        counted.addItem(UNSAID);
        HubCounting.words().forEach(counted::addItem);
        labelled("counted", "Angles are counted", counted);
        told("Stand behind the propeller. Start at hub position 1 (0°) and go round the hub the way your"
                + " numbers grow. Does the propeller turn the same way? Then it is with-rotation. Choose, and hold"
                + " the picture against the hub: a wrong answer puts the weight on the wrong side.");
        PictureView hub = new PictureView(bench.work());
        hub.setVisible(false);
        hub.setName("counted picture");
        body.add(hub, "span 2, growx, h " + PICTURE_EM * Look.em() + "!");
        counted.addActionListener(e -> {
            Optional<HubCounting> sense = sense();
            hub.setVisible(sense.isPresent());
            sense.ifPresent(s -> hub.show(DrawBalance.counted(job.record().installation(), s)));
            body.revalidate();
        });
        whenField();
    }

    @Override
    Work.Labour<List<Event>> entry() {
        Optional<HubWeight> on = on();
        Optional<String> taken =
                Optional.of(off.getSelectedItem()).map(Object::toString).filter(o -> !o.equals(NONE));
        Optional<HubCounting> sense = sense();
        if (on.isEmpty() && taken.isEmpty() && sense.isEmpty()) {
            throw BadInput.in("weight").found("nothing", "what was put on, or what was taken off");
        }
        Optional<String> name = typed(label);
        Optional<OffsetDateTime> at = when();
        Path folder = job.folder();
        return progress -> List.of(WriteEntry.weight(folder, on, taken, sense, name, at));
    }

    private Optional<HubCounting> sense() {
        return HubCounting.words().contains(counted.getSelectedItem())
                ? Optional.of(HubCounting.named((String) counted.getSelectedItem()))
                : Optional.empty();
    }

    private Optional<HubWeight> on() {
        if (typed(mass).isEmpty() && typed(radius).isEmpty() && typed(angle).isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new HubWeight(
                needed(mass, "mass", "g"),
                needed(radius, "radius", bench.settings().lengthUnit().sign()),
                needed(angle, "angle", "deg")));
    }

    /** What was typed, with the usual unit behind a bare number. */
    private static String needed(JTextField field, String what, String unit) {
        String typed = typed(field).orElseThrow(() -> BadInput.in(what).found("nothing", "a figure with its unit"));
        return Character.isDigit(typed.charAt(typed.length() - 1)) ? typed + " " + unit : typed;
    }
}
