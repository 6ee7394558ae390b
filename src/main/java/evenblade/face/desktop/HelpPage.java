package evenblade.face.desktop;

import evenblade.tell.document.Document;
import java.awt.Dimension;
import javax.swing.JFrame;
import javax.swing.JOptionPane;

/** Help that needs no network: keys and mouse, and what this program is. */
final class HelpPage {
    /** A line of it is read at one glance. */
    private static final int WIDE_EM = 42;
    /** All of it without scrolling, on the lowest window that is allowed nearly so. */
    private static final int HIGH_EM = 30;

    private HelpPage() {}

    static void keys(JFrame over) {
        Document.Builder text = Document.begin();
        text.heading("In a picture");
        text.say("Point: the cursor goes to the line or peak beside it and reads it.");
        text.say("Click: holds the cursor. Point or click again: measures from there. Esc: lets go.");
        text.say("Wheel, or + and −: nearer and farther; the frequency under the pointer stays there. "
                + "With Shift, or > and <: the time of a waterfall.");
        text.say("Draw a box: shows what is in it. Backspace: one step back. Home: all of it.");
        text.say("Arrow keys move the cursor, with Shift from peak to peak. Enter holds it. Page up and down move on.");
        text.say("Ctrl+C copies, Ctrl+S saves what is seen. In a table Ctrl+A and Ctrl+C copy its rows.");
        text.say("A click in a waterfall shows the spectrum of that moment.");
        text.heading("Everywhere");
        text.say("Ctrl+L looks at a recording without a job. A recording dropped on the window is looked at too.");
        text.say("Ctrl+1 to Ctrl+8 open the pages. Ctrl+Enter enters a form, Esc leaves it; what was typed is kept.");
        text.say("Ctrl and + or −: larger or smaller text. Ctrl+D: dark or light. Ctrl+M: millimetres or inches.");
        show(over, "Keys and mouse", text.done());
    }

    static void about(JFrame over) {
        Document.Builder text = Document.begin();
        text.heading("Evenblade");
        text.say("A vibration spectrum analyser for propeller ground runs.");
        text.say("It measures and records. The decision to fly belongs to the licensed person under local rules, and "
                + "the makers' limits come first.");
        text.say("Before a hand goes near the propeller: ignition off, keys out; treat it as live all the same.");
        text.say("Free software under the GNU General Public License, version 3 or later, without any warranty. "
                + "It sends nothing anywhere.");
        show(over, "About Evenblade", text.done());
    }

    private static void show(JFrame over, String title, Document text) {
        Page page = new Page("help");
        page.show(text);
        page.setPreferredSize(new Dimension(WIDE_EM * Look.em(), HIGH_EM * Look.em()));
        JOptionPane.showMessageDialog(over, page, title, JOptionPane.PLAIN_MESSAGE);
    }
}
