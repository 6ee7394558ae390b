package evenblade.face.cli;

import evenblade.base.problem.BadInput;
import java.util.stream.Stream;

/** Words of the command line, as far as they came over from the terminal whole. */
final class WholeWords {
    /** What Java puts in the place of bytes that are no letters in the terminal's locale. */
    private static final char LOST = '\ufffd';

    private WholeWords() {}

    /**
     * Refuses what lost letters on its way here: kept in a record, they were lost for good.
     *
     * @throws BadInput that names the word, or the folder that the program was called in
     */
    static void require(String... words) {
        Stream.concat(Stream.of(words), Stream.of(System.getProperty("user.dir")))
                .filter(word -> word.indexOf(LOST) >= 0)
                .findFirst()
                .ifPresent(word -> {
                    throw BadInput.in("'" + word + "'")
                            .found(
                                    "letters that got lost between terminal and program",
                                    "a terminal whose locale is UTF-8 (such as LC_ALL=C.UTF-8)");
                });
    }
}
