package evenblade.face.desktop;

import evenblade.tell.chart.Picture;
import evenblade.tell.chart.SpectrumCurve;
import evenblade.tell.chart.SpectrumPicture;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.swing.JButton;
import javax.swing.JCheckBoxMenuItem;
import javax.swing.JPopupMenu;

/** Curves that can be laid over a spectrum by choice: the loudest it ever was, other channels, other runs. */
final class SpectrumOverlays {
    private final Navigator bench;
    private final PicturePane pane;
    private final JButton choice = new JButton("Lay over…");
    private final Set<String> chosen = new LinkedHashSet<>();
    private final Map<String, SpectrumCurve> curves = new LinkedHashMap<>();
    private Map<String, Work.Labour<Optional<SpectrumCurve>>> offers = Map.of();
    private Optional<SpectrumPicture> base = Optional.empty();

    SpectrumOverlays(Navigator bench, PicturePane pane) {
        this.bench = bench;
        this.pane = pane;
        choice.setName("lay over");
        choice.setToolTipText("A second curve: the loudest it ever was, another channel, another run");
        choice.setMargin(new java.awt.Insets(2, 10, 2, 10));
        choice.addActionListener(e -> menu().show(choice, 0, choice.getHeight()));
        choice.setVisible(false);
        pane.offer(choice);
    }

    /**
     * Shows a spectrum; what was laid over the one before is laid over this one too, where it is offered.
     *
     * @param offered curves by name, each worked out when it is asked for
     */
    void show(Optional<Picture> picture, String otherwise, Map<String, Work.Labour<Optional<SpectrumCurve>>> offered) {
        offers = new LinkedHashMap<>(offered);
        curves.clear();
        base = picture.filter(SpectrumPicture.class::isInstance).map(SpectrumPicture.class::cast);
        choice.setVisible(base.isPresent() && !offers.isEmpty());
        pane.show(picture, otherwise);
        chosen.stream().filter(offers::containsKey).forEach(this::fetch);
    }

    private JPopupMenu menu() {
        JPopupMenu menu = new JPopupMenu();
        menu.setName("overlays");
        offers.keySet().forEach(name -> {
            JCheckBoxMenuItem item = new JCheckBoxMenuItem(name, chosen.contains(name));
            item.addActionListener(e -> choose(name, item.isSelected()));
            menu.add(item);
        });
        return menu;
    }

    /** Lays a curve over, or takes it off. */
    void choose(String name, boolean on) {
        if (on && offers.containsKey(name)) {
            chosen.add(name);
            fetch(name);
        } else {
            chosen.remove(name);
            curves.remove(name);
            draw();
        }
    }

    private void fetch(String name) {
        Optional<SpectrumPicture> asked = base;
        bench.begin(
                "Fetching " + name,
                offers.get(name),
                found -> {
                    if (base.equals(asked) && chosen.contains(name)) {
                        found.ifPresentOrElse(
                                curve -> curves.put(name, curve),
                                () -> bench.say(name + " has no such channel in the same unit."));
                        draw();
                    }
                },
                bench::say);
    }

    private void draw() {
        List<SpectrumCurve> all = new ArrayList<>(curves.values());
        base.ifPresent(picture -> pane.show(Optional.of(picture.with(all)), ""));
    }
}
