package evenblade.tell.document;

import evenblade.tell.document.Block.Align;
import java.util.function.Function;

/** A document as a part of a page: paragraphs, tables and pictures with classes for a style sheet, no style of its own. */
public final class Html {
    private final Function<PictureSlot, String> pictures;
    private final StringBuilder html = new StringBuilder();
    private boolean inFacts;
    private boolean inList;

    private Html(Function<PictureSlot, String> pictures) {
        this.pictures = pictures;
    }

    /**
     * The blocks in order.
     *
     * @param pictures gives the elements of a picture; empty where it is shown elsewhere or nowhere
     */
    public static String of(Document document, Function<PictureSlot, String> pictures) {
        Html page = new Html(pictures);
        document.blocks().forEach(page::block);
        page.close();
        return page.html.toString();
    }

    private void block(Block block) {
        boolean item = block instanceof Block.Paragraph p && p.tone() == Block.Tone.ITEM;
        if (!(block instanceof Block.Known) && inFacts || !item && inList) {
            close();
        }
        if (block instanceof Block.Heading heading) {
            String tag = heading.level() == 1 ? "h3" : "h4";
            html.append(element(tag, "", heading.text()));
        } else if (block instanceof Block.Paragraph paragraph) {
            paragraph(paragraph);
        } else if (block instanceof Block.Known known) {
            html.append(inFacts ? "" : "<table class=\"facts\">\n");
            inFacts = true;
            html.append("<tr><th>")
                    .append(escaped(known.name()))
                    .append("</th><td>")
                    .append(escaped(known.sentence().text()))
                    .append("</td></tr>\n");
        } else if (block instanceof Block.Table table) {
            table(table);
        } else if (block instanceof Block.Picture picture) {
            html.append(pictures.apply(picture.slot()));
        }
    }

    private void paragraph(Block.Paragraph paragraph) {
        String text = paragraph.sentence().text();
        switch (paragraph.tone()) {
            case PLAIN -> html.append(element("p", "", text));
            case ANSWER -> html.append(element("p", "says", text));
            case NOTE -> html.append(element("p", "note", text));
            case CAUTION -> html.append(element("p", "warn", text));
            case ITEM -> {
                html.append(inList ? "" : "<ul>\n");
                inList = true;
                html.append(element("li", "", text));
            }
        }
    }

    private void table(Block.Table table) {
        html.append("<div class=\"scroll\"><table class=\"figures\">\n");
        if (!table.title().isEmpty()) {
            html.append(element("caption", "", table.title()));
        }
        html.append("<thead><tr>");
        table.columns().forEach(column -> html.append(element("th", align(column), column.heading())));
        html.append("</tr></thead>\n<tbody>\n");
        for (Block.Row row : table.rows()) {
            if (row.weight() == Block.Weight.REMARK) {
                html.append("<tr><td colspan=\"" + table.columns().size() + "\">")
                        .append(escaped(row.cells().get(0)))
                        .append("</td></tr>\n");
                continue;
            }
            html.append(
                    switch (row.weight()) {
                        case PLAIN, REMARK -> "<tr>";
                        case CLEAR -> "<tr class=\"clear\">";
                        case FAINT -> "<tr class=\"faint\">";
                    });
            for (int i = 0; i < row.cells().size(); i++) {
                html.append(
                        element("td", align(table.columns().get(i)), row.cells().get(i)));
            }
            html.append("</tr>\n");
        }
        html.append("</tbody></table></div>\n");
    }

    private static String align(Block.Column column) {
        return column.align() == Align.LEFT ? "" : "n";
    }

    private void close() {
        html.append(inFacts ? "</table>\n" : "").append(inList ? "</ul>\n" : "");
        inFacts = false;
        inList = false;
    }

    private static String element(String tag, String style, String text) {
        String open = style.isEmpty() ? "<" + tag + ">" : "<" + tag + " class=\"" + style + "\">";
        return open + escaped(text) + "</" + tag + ">" + (tag.startsWith("t") ? "" : "\n");
    }

    /** Text as it may stand in XML, in content and in quoted attributes; what XML can't hold is left out. */
    public static String escaped(String text) {
        StringBuilder safe = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> {
                    if (legal(c)) {
                        safe.appendCodePoint(c);
                    }
                }
            }
        });
        return safe.toString();
    }

    /** XML 1.0, production 2. */
    private static boolean legal(int c) {
        return c == '\t'
                || c == '\n'
                || c == '\r'
                || (c >= 0x20 && c <= 0xD7FF)
                || (c >= 0xE000 && c <= 0xFFFD)
                || c >= 0x10000;
    }
}
