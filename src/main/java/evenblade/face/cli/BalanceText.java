package evenblade.face.cli;

import evenblade.face.app.BalanceSheet;
import java.util.ArrayList;
import java.util.List;

/** A balance answer as text for a terminal of 80 columns. */
final class BalanceText {
    private final List<String> lines = new ArrayList<>();

    private BalanceText() {}

    static List<String> lines(BalanceSheet sheet) {
        BalanceText text = new BalanceText();
        text.lines.add(sheet.heading());
        text.table("lrrrrl", sheet.runs());
        text.lines.add("");
        if (sheet.refused()) {
            text.lines.add("NO CORRECTION IS GIVEN:");
        }
        sheet.reasons().forEach(reason -> text.paragraph("- ", "  ", reason));
        sheet.correction().forEach(sentence -> text.paragraph("", "  ", sentence));
        text.table("lrrrl", sheet.split());
        if (!sheet.outlook().isEmpty()) {
            text.lines.add("");
        }
        sheet.outlook().forEach(sentence -> text.paragraph("", "  ", sentence));
        sheet.warnings().forEach(warning -> text.paragraph("! ", "  ", warning));
        text.lines.add("");
        sheet.cautions().forEach(caution -> text.paragraph("", "", caution));
        return text.lines;
    }

    private void table(String columns, List<List<String>> rows) {
        if (rows.isEmpty()) {
            return;
        }
        lines.add("");
        TextTable table = new TextTable(columns);
        rows.forEach(row -> table.row(row.toArray(String[]::new)));
        lines.addAll(table.lines());
    }

    private void paragraph(String first, String rest, String text) {
        lines.addAll(LineWrapper.lines(first, rest, text));
    }
}
