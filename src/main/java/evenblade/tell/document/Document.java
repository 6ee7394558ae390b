package evenblade.tell.document;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.tell.document.Block.Align;
import evenblade.tell.document.Block.Column;
import evenblade.tell.document.Block.Row;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Block.Weight;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One answer, composed once: every face shows these blocks in this order.
 *
 * @param blocks from top to bottom
 */
public record Document(List<Block> blocks) {
    public Document {
        blocks = List.copyOf(blocks);
    }

    /** A document without anything in it. */
    public static Builder begin() {
        return new Builder();
    }

    /** Puts a document together from top to bottom. */
    public static final class Builder {
        private final List<Block> blocks = new ArrayList<>();

        private Builder() {}

        public Builder subject(String text) {
            return add(new Block.Heading(1, text));
        }

        /** Says where a job was made up: no figure of it may pass for a measured one. */
        public Builder invented(boolean invented) {
            return invented ? say(Tone.CAUTION, "INVENTED FOR PRACTICE: nothing in this job was measured.") : this;
        }

        /** Said wherever the next step is done by hand at the propeller. Common practice, no source. */
        public Builder handsOff() {
            return say(
                    Tone.CAUTION,
                    "Before a hand goes near the propeller: ignition off (electric: battery unplugged); treat it as live"
                            + " all the same. Blades, weights and shims are changed only as the makers allow.");
        }

        public Builder heading(String text) {
            return add(new Block.Heading(2, text));
        }

        public Builder say(String text) {
            return say(Tone.PLAIN, text);
        }

        public Builder say(Tone tone, String text) {
            return add(new Block.Paragraph(Sentence.of(text), tone));
        }

        /** One paragraph for each, beginning with a large letter. */
        public Builder facts(Tone tone, Phrases phrases, List<Fact> facts) {
            facts.forEach(fact -> add(new Block.Paragraph(phrases.sentence(fact).capital(), tone)));
            return this;
        }

        public Builder warnings(Tone tone, Phrases phrases, List<Warning> warnings) {
            warnings.forEach(
                    warning -> add(new Block.Paragraph(phrases.sentence(warning).capital(), tone)));
            return this;
        }

        public Builder known(String name, String text) {
            return add(new Block.Known(name, Sentence.of(text)));
        }

        public Builder picture(PictureSlot.Shows shows) {
            return add(new Block.Picture(PictureSlot.of(shows)));
        }

        public Builder add(Block block) {
            blocks.add(block);
            return this;
        }

        public Builder addAll(Document other) {
            blocks.addAll(other.blocks());
            return this;
        }

        /** Begins a table; its rows follow. */
        public TableBuilder table(String title) {
            return new TableBuilder(this, title);
        }

        public Document done() {
            return new Document(blocks);
        }
    }

    /** Puts a table together: columns first, then rows. */
    public static final class TableBuilder {
        private final Builder document;
        private final String title;
        private final List<Column> columns = new ArrayList<>();
        private final List<Row> rows = new ArrayList<>();

        private TableBuilder(Builder document, String title) {
            this.document = document;
            this.title = title;
        }

        public TableBuilder left(String heading) {
            return column(heading, Align.LEFT);
        }

        public TableBuilder right(String heading) {
            return column(heading, Align.RIGHT);
        }

        public TableBuilder point(String heading) {
            return column(heading, Align.POINT);
        }

        private TableBuilder column(String heading, Align align) {
            columns.add(new Column(heading, align));
            return this;
        }

        public TableBuilder row(Weight weight, String... cells) {
            rows.add(new Row(Arrays.asList(cells), weight));
            return this;
        }

        public TableBuilder row(String... cells) {
            return row(Weight.PLAIN, cells);
        }

        /** Ends the table; left out where it has no row. */
        public Builder end() {
            return rows.isEmpty() ? document : document.add(new Block.Table(title, columns, rows));
        }
    }
}
