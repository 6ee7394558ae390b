package evenblade.tell.document;

import evenblade.judge.findings.EvidenceRef;
import java.util.List;
import java.util.Optional;

/** A piece of a document. Each renderer decides how it looks; none decides what it says. */
public sealed interface Block {
    /**
     * What comes next is about this.
     *
     * @param level 1 for the subject, 2 for a part of it
     * @param text a few words
     */
    record Heading(int level, String text) implements Block {}

    /**
     * A paragraph.
     *
     * @param sentence one or a few
     * @param tone how it is meant
     */
    record Paragraph(Sentence sentence, Tone tone) implements Block {}

    /** How a paragraph is meant. */
    enum Tone {
        PLAIN,
        /** The answer itself. */
        ANSWER,
        /** A remark on what was just shown. */
        NOTE,
        /** One of several things to know. */
        ITEM,
        /** What a hand near a propeller, or a reader of a figure, has to heed. */
        CAUTION
    }

    /**
     * Something known under a name.
     *
     * @param name a word or two; empty where it goes on from the one before
     * @param sentence what is known
     * @param seen where it can be looked at
     */
    record Known(String name, Sentence sentence, Optional<EvidenceRef> seen) implements Block {
        public Known(String name, Sentence sentence) {
            this(name, sentence, Optional.empty());
        }
    }

    /**
     * Figures below each other.
     *
     * @param title what is in it; may be empty
     * @param columns from left to right; each with its unit in the heading
     * @param rows each with as many cells as there are columns
     */
    record Table(String title, List<Column> columns, List<Row> rows) implements Block {
        public Table {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
            for (Row row : rows) {
                if (row.weight() != Weight.REMARK && row.cells().size() != columns.size()) {
                    throw new IllegalArgumentException(
                            row.cells().size() + " cells for " + columns.size() + " columns");
                }
            }
        }
    }

    /**
     * A column.
     *
     * @param heading with its unit
     * @param align how its cells are set
     */
    record Column(String heading, Align align) {}

    /** How cells are set below each other. */
    enum Align {
        LEFT,
        RIGHT,
        /** Decimal points below each other. */
        POINT
    }

    /**
     * A row.
     *
     * @param cells one per column, may be empty; a remark has one in all
     * @param weight how much the row says
     */
    record Row(List<String> cells, Weight weight) {
        public Row {
            cells = List.copyOf(cells);
        }
    }

    /** How much a row says. */
    enum Weight {
        PLAIN,
        /** A change is shown. */
        CLEAR,
        /** Nothing was seen. */
        FAINT,
        /** Words across all columns, in one cell. */
        REMARK
    }

    /** Where a picture belongs that the face draws, or leaves out if it can't. */
    record Picture(PictureSlot slot) implements Block {}
}
