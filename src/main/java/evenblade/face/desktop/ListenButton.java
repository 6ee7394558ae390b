package evenblade.face.desktop;

import evenblade.face.app.LookCloser;
import evenblade.face.app.PlayStretch;
import evenblade.tell.chart.Zoom;
import java.util.Optional;
import java.util.function.Function;
import javax.swing.JToggleButton;
import javax.swing.Timer;

/** Plays the stretch of a recording that one looks at, until it ends or the button is pressed again. */
final class ListenButton extends JToggleButton {
    private static final int LOOK_MS = 200; // soon enough to see that the sound has ended

    private final transient Navigator bench;
    private final transient Timer looks = new Timer(LOOK_MS, e -> look());
    private transient Optional<PlayStretch> sound = Optional.empty();
    private transient Optional<Function<Optional<Zoom>, PlayStretch>> play = Optional.empty();

    ListenButton(Navigator bench, PicturePane pane, boolean timeAcross) {
        super("Listen");
        this.bench = bench;
        setName("listen to it");
        setToolTipText("Plays the stretch that is looked at, in the band that was analysed");
        setMargin(new java.awt.Insets(2, 10, 2, 10));
        setEnabled(false);
        addActionListener(e -> {
            if (isSelected()) {
                begin(timeAcross ? pane.view().picture().flatMap(picture -> picture.zoom()) : Optional.empty());
            } else {
                end();
            }
        });
        pane.offer(this);
    }

    /** What is played from now on. */
    void of(Optional<LookCloser> closer) {
        end();
        play = closer.map(look -> seen -> look.play(
                seen.map(zoom -> zoom.across().from()).orElse(look.fromS()),
                seen.map(zoom -> zoom.across().to()).orElse(look.toS())));
        setEnabled(play.isPresent());
    }

    private void begin(Optional<Zoom> seen) {
        play.ifPresent(how -> bench.work()
                .alongside(
                        "Playing",
                        progress -> how.apply(seen),
                        begun -> {
                            sound = Optional.of(begun);
                            looks.start();
                        },
                        wrong -> {
                            setSelected(false);
                            bench.say(wrong);
                        }));
    }

    private void look() {
        if (sound.filter(PlayStretch::playing).isEmpty() || !isSelected()) {
            end();
        }
    }

    private void end() {
        looks.stop();
        sound.ifPresent(PlayStretch::close);
        sound = Optional.empty();
        setSelected(false);
    }

    @Override
    public void removeNotify() {
        end();
        super.removeNotify();
    }
}
