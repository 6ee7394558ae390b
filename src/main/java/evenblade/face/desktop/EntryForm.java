package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiFunction;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.text.JTextComponent;
import net.miginfocom.swing.MigLayout;

/** A form that writes into the open job: what was typed is kept at once, what is wrong is said in place. */
abstract class EntryForm extends JPanel {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    final transient Navigator bench;
    final transient OpenJob job;
    final JPanel body = new WidePanel(new MigLayout("insets 0, wrap 2, gapy 2, hidemode 3", "[][grow,fill]", ""));
    final Complaint complaint = new Complaint();
    private final JButton enter;
    private final String form;
    private JTextField when;

    /**
     * Begins a form.
     *
     * @param anew makes another of its kind
     */
    EntryForm(
            Navigator bench,
            OpenJob job,
            String form,
            String heading,
            String enterWords,
            BiFunction<Navigator, OpenJob, ? extends EntryForm> anew) {
        super(new MigLayout("insets 8 18 10 18, wrap 1, hidemode 3", "[grow,fill]", "[][grow,fill][][]"));
        this.bench = bench;
        this.job = job;
        this.form = job.draft(form);
        setName(form);
        add(Look.heading(heading));
        JScrollPane scroll = new JScrollPane(body);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.getVerticalScrollBar().setUnitIncrement(Look.em());
        add(scroll);
        add(complaint);
        enter = Look.main(new JButton(enterWords));
        enter.setName("enter");
        enter.addActionListener(e -> enter());
        JButton leave = Look.button("Leave for later", "leave", bench::showNewest);
        JButton clear = Look.button("Clear form", "clear", () -> {
            bench.drafts().forget(this.form);
            bench.show(anew.apply(bench, job));
        });
        JPanel buttons = new JPanel(new MigLayout("insets 6 0 0 0"));
        buttons.add(enter);
        buttons.add(leave);
        buttons.add(clear);
        add(buttons);
        registerKeyboardAction(
                e -> enter(),
                KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, KeyEvent.CTRL_DOWN_MASK),
                WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
        registerKeyboardAction(
                e -> bench.showNewest(),
                KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
                WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
    }

    /**
     * What is to be written, read off the fields now and done later on another thread.
     *
     * @throws BadInput where a field can't be used
     */
    abstract Work.Labour<List<Event>> entry();

    /** The work of writing an entry with what the form holds. */
    final Work.Labour<List<Event>> written(String text, Detail detail) {
        Entry entry = new Entry(when(), Optional.empty(), text, detail);
        Path folder = job.folder();
        return progress -> List.of(WriteEntry.append(folder, entry));
    }

    /** What to know before it is filled in. */
    final void told(String words) {
        body.add(new WrappedLabel(words), "span 2, growx, wmin 50");
    }

    /** A field of one line, kept as it is typed. */
    final JTextField field(String name, String label, String hint) {
        JTextField field = new JTextField(24);
        labelled(name, label, field);
        field.putClientProperty("JTextField.placeholderText", hint);
        field.setToolTipText(hint);
        keep(field);
        return field;
    }

    /** A field of several lines, kept as it is typed. */
    final JTextArea area(String name, String label, int rows) {
        JTextArea area = new JTextArea(rows, 24);
        area.setLineWrap(true);
        area.setWrapStyleWord(true);
        area.setName(name);
        area.setFocusTraversalKeys(java.awt.KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
        area.setFocusTraversalKeys(java.awt.KeyboardFocusManager.BACKWARD_TRAVERSAL_KEYS, null);
        body.add(Look.label(label, area), "top");
        body.add(new JScrollPane(area), "hmin " + rows + "lp");
        keep(area);
        return area;
    }

    final void labelled(String name, String label, JComponent field) {
        field.setName(name);
        body.add(Look.label(label, field));
        body.add(field);
    }

    final void keep(JTextComponent field) {
        bench.drafts().keep(form, field);
    }

    final void keep(JComboBox<String> choice) {
        bench.drafts().keep(form, choice);
    }

    final void keep(Choice<?> choice) {
        bench.drafts().keep(form, choice);
    }

    final void whenField() {
        when = field("when", "When", "now, or like 2026-03-02 09:15");
    }

    final Optional<OffsetDateTime> when() {
        String text = when.getText().strip();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDateTime.parse(text, MINUTE)
                    .atZone(ZoneId.systemDefault())
                    .toOffsetDateTime());
        } catch (DateTimeParseException e) {
            throw BadInput.in("when").found("\"" + text + "\"", "a time like 2026-03-02 09:15, or nothing for now");
        }
    }

    static Optional<String> typed(JTextComponent field) {
        String text = field.getText().strip();
        return text.isEmpty() ? Optional.empty() : Optional.of(text);
    }

    final void enter() {
        complaint.clear();
        Work.Labour<List<Event>> entry;
        try {
            entry = entry();
        } catch (BadInput e) {
            complaint.show(e.getMessage(), body, e.place().name());
            return;
        }
        enter.setEnabled(false);
        bench.begin(
                "Writing into the job",
                entry,
                events -> {
                    bench.drafts().forget(form);
                    bench.entered(events);
                },
                wrong -> {
                    enter.setEnabled(true);
                    complaint.show(wrong);
                });
    }
}
