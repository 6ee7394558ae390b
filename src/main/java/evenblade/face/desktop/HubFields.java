package evenblade.face.desktop;

import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Installation.Rotation;
import evenblade.tell.chart.Ink;
import java.awt.BasicStroke;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.LayoutFocusTraversalPolicy;
import javax.swing.text.JTextComponent;
import net.miginfocom.swing.MigLayout;

/** The hub as one stands before it, with a blade and a reading to be typed at each of its positions. */
final class HubFields extends JPanel {
    private static final int CLOCKWISE = 1; // as the sign of the angle
    /** Room for the line of the ground. */
    private static final int GROUND_PX = 4;

    private final List<Place> places = new ArrayList<>();
    private final transient Runnable changed;
    private final transient Optional<Integer> turns;
    private final int sense;

    /** What is typed at one position. */
    private record Place(JPanel box, JTextField blade, JTextField reading) {}

    /**
     * The fields of a hub.
     *
     * @param installation says how many blades there are, how the propeller turns and the positions are counted
     * @param hint what a reading looks like
     * @param keeper keeps each field as it is typed
     * @param changed is told of every key
     */
    HubFields(Installation installation, String hint, Consumer<JTextComponent> keeper, Runnable changed) {
        super(null);
        this.changed = changed;
        this.turns = installation.propeller().rotation().map(HubFields::fromTheFront);
        this.sense = turns.map(turn -> installation.hubCounting() == HubCounting.WITH_ROTATION ? turn : -turn)
                .orElse(CLOCKWISE);
        int positions = installation.propeller().blades();
        setName("hub");
        for (int p = 1; p <= positions; p++) {
            Place place = place(p, hint);
            places.add(place);
            add(place.box());
            keeper.accept(place.blade());
            keeper.accept(place.reading());
        }
        setFocusTraversalPolicyProvider(true);
        setFocusTraversalPolicy(new ByPosition(places.stream().map(Place::box).toList()));
        int em = Look.em();
        setPreferredSize(new Dimension(31 * em, (positions > 4 ? 31 : 21) * em));
        setMinimumSize(new Dimension(28 * em, (positions == 4 ? 20 : 18) * em));
    }

    private Place place(int position, String hint) {
        JPanel box = new JPanel(new MigLayout("insets 2, gap 4 2, novisualpadding", "[][grow,fill]"));
        box.setOpaque(true);
        JLabel name = Look.strong("Position " + position + ", blade");
        JTextField blade = new JTextField(String.valueOf((char) ('A' + position - 1)), 2);
        blade.setName("blade " + position);
        name.setLabelFor(blade);
        JTextField reading = new JTextField(7);
        reading.setName("reading " + position);
        reading.putClientProperty("JTextField.placeholderText", hint);
        box.add(name, "span 2, split 2, grow 0");
        box.add(blade, "wrap");
        box.add(Look.label("reads", reading));
        box.add(reading);
        blade.getDocument().addDocumentListener(new Drafts.Typed(this::typed));
        reading.getDocument().addDocumentListener(new Drafts.Typed(this::typed));
        return new Place(box, blade, reading);
    }

    private void typed() {
        changed.run();
        repaint();
    }

    /** How the drawing is to be read. */
    static String drawn(Installation installation) {
        return "Drawn as seen from the front, position 1 up"
                + (installation.propeller().rotation().isPresent() ? "; the arrow is the way it turns." : ".");
    }

    int positions() {
        return places.size();
    }

    String blade(int position) {
        return places.get(position - 1).blade().getText().strip();
    }

    String reading(int position) {
        return places.get(position - 1).reading().getText().strip();
    }

    void put(int position, String blade) {
        places.get(position - 1).blade().setText(blade);
    }

    /** The layout in the form that is written down: {@code 1=A,2=B,3=C}. */
    String layoutText() {
        List<String> parts = new ArrayList<>();
        for (int p = 1; p <= positions(); p++) {
            parts.add(p + "=" + blade(p));
        }
        return String.join(",", parts);
    }

    /** How the propeller turns for someone who stands before it: as the clock, or against it. */
    private static int fromTheFront(Rotation seenFromBehind) {
        return seenFromBehind == Rotation.CLOCKWISE ? -CLOCKWISE : CLOCKWISE;
    }

    /** From the top, the way the positions are counted. */
    private double angle(int index) {
        return sense * 2 * Math.PI * index / positions();
    }

    /** The hub's centre, so that the boxes round it fill the room: three blades reach further up than down. */
    private Point2D centre() {
        return new Point2D.Double(
                boxWidth() / 2 + across() * reach(i -> -Math.sin(angle(i))),
                boxHeight() / 2 + up() * reach(i -> Math.cos(angle(i))));
    }

    private double boxWidth() {
        return places.get(0).box().getPreferredSize().getWidth();
    }

    private double boxHeight() {
        return places.get(0).box().getPreferredSize().getHeight();
    }

    private double across() {
        double reach = reach(i -> Math.sin(angle(i))) + reach(i -> -Math.sin(angle(i)));
        return (getWidth() - boxWidth()) / Math.max(1, reach);
    }

    private double up() {
        double reach = reach(i -> Math.cos(angle(i))) + reach(i -> -Math.cos(angle(i)));
        return (getHeight() - boxHeight() - GROUND_PX) / Math.max(1, reach);
    }

    private double reach(IntToDoubleFunction part) {
        return IntStream.range(0, positions()).mapToDouble(part).max().orElse(0);
    }

    private Point2D onEllipse(int index, double share) {
        Point2D centre = centre();
        return new Point2D.Double(
                centre.getX() + share * across() * Math.sin(angle(index)),
                centre.getY() - share * up() * Math.cos(angle(index)));
    }

    /** Of four blades two lie level, where their boxes would hide them: those boxes stand below. */
    private boolean level(int index) {
        return positions() == 4 && index % 2 == 1;
    }

    @Override
    public void doLayout() {
        for (int i = 0; i < places.size(); i++) {
            JPanel box = places.get(i).box();
            Dimension size = box.getPreferredSize();
            Point2D centre = onEllipse(i, 1);
            double top = centre.getY() + (level(i) ? 1.1 * Look.em() : -size.height / 2.0);
            box.setBounds((int) (centre.getX() - size.width / 2.0), (int) top, size.width, size.height);
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        super.paintComponent(graphics);
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        double em = Look.em();
        double x = centre().getX();
        double y = centre().getY();
        for (int i = 0; i < places.size(); i++) {
            Point2D tip = onEllipse(i, level(i) ? 1 : 0.72);
            g.setColor(Look.ink(reading(i + 1).isEmpty() ? Ink.GRID : Ink.AFTER));
            g.fill(blade(x, y, tip, em));
        }
        g.setColor(Look.ink(Ink.QUIET_TEXT));
        g.fill(new Ellipse2D.Double(x - 1.3 * em, y - 1.3 * em, 2.6 * em, 2.6 * em));
        g.setColor(Look.ink(Ink.PAPER));
        g.fill(new Ellipse2D.Double(x - 0.5 * em, y - 0.5 * em, em, em));
        g.setColor(Look.ink(Ink.QUIET_TEXT));
        g.setStroke(new BasicStroke(2));
        turns.ifPresent(turn -> arrow(g, x, y, 2.2 * em, turn));
        g.draw(new Line2D.Double(0, getHeight() - 1.0, getWidth(), getHeight() - 1.0));
        g.dispose();
    }

    /** The way the propeller turns. */
    private static void arrow(Graphics2D g, double x, double y, double radius, int turn) {
        double from = 90 - turn * 20;
        double to = from - turn * 80;
        g.draw(new Arc2D.Double(
                x - radius, y - radius, 2 * radius, 2 * radius, Math.min(from, to), Math.abs(to - from), Arc2D.OPEN));
        double end = Math.toRadians(to);
        double tipX = x + radius * Math.cos(end);
        double tipY = y - radius * Math.sin(end);
        double along = end - turn * Math.PI / 2;
        for (double side : new double[] {-0.5, 0.5}) {
            double back = along + Math.PI + side;
            g.draw(new Line2D.Double(
                    tipX, tipY, tipX + 0.35 * radius * Math.cos(back), tipY - 0.35 * radius * Math.sin(back)));
        }
    }

    private static Path2D blade(double x, double y, Point2D tip, double em) {
        double length = tip.distance(x, y);
        Path2D path = new Path2D.Double();
        path.moveTo(0, -0.5 * em);
        path.curveTo(0.4 * length, -1.2 * em, 0.8 * length, -0.9 * em, length, -0.1 * em);
        path.curveTo(0.9 * length, 0.6 * em, 0.4 * length, 0.6 * em, 0, 0.5 * em);
        path.closePath();
        AffineTransform turn = AffineTransform.getTranslateInstance(x, y);
        turn.rotate(tip.getX() - x, tip.getY() - y);
        path.transform(turn);
        return path;
    }

    /** Tab goes from position to position as they are counted, wherever they stand in the drawing. */
    private static final class ByPosition extends LayoutFocusTraversalPolicy {
        ByPosition(List<JPanel> boxes) {
            List<Component> order = new ArrayList<>();
            for (JPanel box : boxes) {
                order.add(box);
                order.addAll(List.of(box.getComponents()));
            }
            setComparator(Comparator.comparingInt(order::indexOf));
        }
    }
}
