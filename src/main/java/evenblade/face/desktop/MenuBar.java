package evenblade.face.desktop;

import java.util.List;
import java.util.Optional;
import javax.swing.Action;
import javax.swing.JMenu;
import javax.swing.JMenuBar;

/** Everything that can be done, in menus: so that all of it can be had from the keyboard. */
final class MenuBar extends JMenuBar {
    /** Puts the commands in a menu; an empty place is a line between groups. */
    MenuBar add(String words, List<Optional<? extends Action>> commands) {
        int mark = words.indexOf('&');
        JMenu menu = new JMenu(words.replace("&", ""));
        menu.setName("menu " + words.replace("&", ""));
        menu.setMnemonic(Character.toUpperCase(words.charAt(mark + 1)));
        commands.forEach(command -> command.ifPresentOrElse(menu::add, menu::addSeparator));
        add(menu);
        return this;
    }
}
