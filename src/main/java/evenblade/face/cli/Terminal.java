package evenblade.face.cli;

import evenblade.tell.document.Block;
import evenblade.tell.document.Block.Align;
import evenblade.tell.document.Document;
import java.util.ArrayList;
import java.util.List;

/** Shows a document on a terminal of 80 columns; pictures are left out. */
final class Terminal {
    private static final String GAP = "  ";
    /** A last column gets at least this much room before its words break. */
    private static final int LEAST_LAST = 24;

    /** So much of a name is left in a table that is too wide. */
    private static final int LEAST_NAME = 8;

    private final List<String> lines = new ArrayList<>();
    private final List<Block> blocks;

    private Terminal(Document document) {
        this.blocks = document.blocks();
    }

    static List<String> lines(Document document) {
        Terminal terminal = new Terminal(document);
        for (int i = 0; i < terminal.blocks.size(); i++) {
            terminal.show(i);
        }
        return terminal.lines;
    }

    private void show(int index) {
        Block block = blocks.get(index);
        if (block instanceof Block.Heading heading) {
            gap();
            wrap("", heading.level() == 1 ? "" : "  ", heading.text());
        } else if (block instanceof Block.Paragraph paragraph) {
            paragraph(paragraph);
        } else if (block instanceof Block.Known known) {
            int width = nameWidth(index);
            wrap(
                    padded(known.name(), width, false) + GAP,
                    " ".repeat(width + 2),
                    known.sentence().text());
        } else if (block instanceof Block.Table table) {
            table(table);
        }
    }

    private void paragraph(Block.Paragraph paragraph) {
        String text = paragraph.sentence().text();
        switch (paragraph.tone()) {
            case PLAIN, NOTE -> wrap("", "", text);
            case ANSWER -> {
                gap();
                wrap("", "", text);
            }
            case ITEM -> wrap("- ", "  ", text);
            case CAUTION -> wrap("! ", "  ", text);
        }
    }

    /** Names below each other are as wide as the longest of them. */
    private int nameWidth(int index) {
        int from = index;
        while (from > 0 && blocks.get(from - 1) instanceof Block.Known) {
            from--;
        }
        int width = 0;
        for (int i = from; i < blocks.size() && blocks.get(i) instanceof Block.Known known; i++) {
            width = Math.max(width, columns(known.name()));
        }
        return width;
    }

    private void table(Block.Table table) {
        if (!table.title().isEmpty()) {
            gap();
            wrap("", "  ", table.title());
        }
        int count = table.columns().size();
        List<List<String>> rows = new ArrayList<>();
        rows.add(table.columns().stream().map(Block.Column::heading).toList());
        table.rows().stream().filter(row -> row.weight() != Block.Weight.REMARK).forEach(row -> rows.add(row.cells()));
        List<List<String>> set = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            set.add(column(rows, i, table.columns().get(i).align()));
        }
        boolean wordsLast = table.columns().get(count - 1).align() == Align.LEFT;
        narrow(set, wordsLast);
        row(set, 0, wordsLast ? rows.get(0).get(count - 1) : "", wordsLast);
        int next = 1;
        for (Block.Row row : table.rows()) {
            if (row.weight() == Block.Weight.REMARK) {
                wrap("", "  ", row.cells().get(0));
            } else {
                row(set, next, wordsLast ? row.cells().get(count - 1) : "", wordsLast);
                next++;
            }
        }
    }

    /** Where a table is too wide, the names in its first column give way. */
    private static void narrow(List<List<String>> set, boolean wordsLast) {
        int wide = GAP.length() * (set.size() - 1);
        for (int i = 0; i < set.size() - (wordsLast ? 1 : 0); i++) {
            wide += columns(set.get(i).get(0));
        }
        wide += wordsLast ? LEAST_LAST : 0;
        int first = columns(set.get(0).get(0));
        int room = Math.max(LEAST_NAME, first - Math.max(0, wide - LineWrapper.WIDTH));
        if (room < first) {
            set.set(0, set.get(0).stream().map(name -> shortened(name, room)).toList());
        }
    }

    private static String shortened(String padded, int room) {
        String name = padded.strip();
        return columns(name) <= room ? padded(name, room, false) : name.substring(0, room - 1) + "…";
    }

    private void row(List<List<String>> set, int number, String last, boolean wordsLast) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < set.size() - (wordsLast ? 1 : 0); i++) {
            line.append(i == 0 ? "" : GAP).append(set.get(i).get(number));
        }
        if (last.isEmpty()) {
            lines.add(line.toString().stripTrailing());
            return;
        }
        String lead = line + (set.size() == 1 ? "" : GAP);
        wrap(lead, " ".repeat(columns(lead)), last);
    }

    private static List<String> column(List<List<String>> rows, int index, Align align) {
        List<String> cells = rows.stream().map(row -> row.get(index)).toList();
        if (align == Align.POINT) {
            int most =
                    cells.stream().skip(1).mapToInt(Terminal::afterPoint).max().orElse(0);
            List<String> pointed = new ArrayList<>(List.of(cells.get(0)));
            cells.stream()
                    .skip(1)
                    .map(cell -> cell.isEmpty() || !Character.isDigit(cell.charAt(cell.length() - 1))
                            ? cell
                            : cell + " ".repeat(most - afterPoint(cell)))
                    .forEach(pointed::add);
            cells = pointed;
        }
        int width = cells.stream().mapToInt(Terminal::columns).max().orElse(0);
        return cells.stream()
                .map(cell -> padded(cell, width, align != Align.LEFT))
                .toList();
    }

    /** Columns from the decimal point on. */
    private static int afterPoint(String cell) {
        int point = cell.lastIndexOf('.');
        return point < 0 ? 0 : cell.length() - point;
    }

    private static String padded(String text, int width, boolean right) {
        String blanks = " ".repeat(Math.max(0, width - columns(text)));
        return right ? blanks + text : text + blanks;
    }

    private static int columns(String text) {
        return text.codePointCount(0, text.length());
    }

    private void gap() {
        if (!lines.isEmpty() && !lines.get(lines.size() - 1).isEmpty()) {
            lines.add("");
        }
    }

    private void wrap(String first, String rest, String text) {
        lines.addAll(LineWrapper.lines(first, rest, text));
    }
}
