package evenblade.face.cli;

import evenblade.face.app.BalanceWords;
import evenblade.judge.balance.BalanceAnswer;
import evenblade.judge.balance.BalanceAnswer.Advice;
import evenblade.judge.balance.Correction;
import evenblade.judge.balance.Residual;
import evenblade.judge.balance.Share;
import evenblade.judge.balance.Split;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A balance answer as text for a terminal of 80 columns. */
final class BalanceText {
    private static final List<String> CAUTIONS = List.of(
            "Ignition off, key out, before a hand goes near the propeller. Treat it as live all the same.",
            "Weights only where and as the maker of propeller or spinner allows; torque and locking as the maker says."
                    + " No weight on the face of a wooden blade.",
            "A licensed person signs for it.");

    private final BalanceAnswer answer;
    private final List<String> lines = new ArrayList<>();

    private BalanceText(BalanceAnswer answer) {
        this.answer = answer;
    }

    static List<String> lines(BalanceAnswer answer) {
        BalanceText text = new BalanceText(answer);
        text.heading();
        answer.refusals().forEach(r -> text.paragraph("- ", "  ", BalanceWords.sentence(r)));
        answer.advice().ifPresent(text::advice);
        answer.warnings().forEach(w -> text.paragraph("! ", "  ", BalanceWords.sentence(w)));
        text.cautions();
        return text.lines;
    }

    private void heading() {
        String how =
                switch (answer.method()) {
                    case WITH_PHASE -> "with phase";
                    case WITHOUT_PHASE -> "without phase";
                };
        lines.add("Balance weight from runs " + how);
        lines.add("");
        if (answer.refused()) {
            lines.add("NO CORRECTION IS GIVEN:");
        }
    }

    private void advice(Advice advice) {
        Correction c = advice.correction();
        double radius = advice.radiusMm();
        paragraph(
                "",
                "  ",
                text(
                        "With all trial weights off, put on %.2f g at %.0f mm, at %.1f°.",
                        advice.massG(), radius, c.value().angleDeg()));
        paragraph(
                "",
                "  ",
                text(
                        "That is %.0f g·mm or %.3f oz·in. The mass is between %.2f and %.2f g, the angle between %.0f°"
                                + " and %.0f° (95 of 100 such cases).",
                        c.value().gmm(),
                        c.value().ounceInches(),
                        c.lowGmm() / radius,
                        c.highGmm() / radius,
                        wrapped(c.value().angleDeg() - c.belowDeg()),
                        wrapped(c.value().angleDeg() + c.aboveDeg())));
        paragraph("", "  ", "Angles turn as the phases do: against the rotation.");
        advice.split().ifPresent(this::split);
        Residual residual = advice.residual();
        lines.add("");
        paragraph(
                "",
                "  ",
                text(
                        "The 1× line was %.3g. Predicted with %s: about %.2g, between %.2g and %.2g.",
                        advice.influence().restAmplitude(),
                        advice.split().isPresent() ? "these weights" : "this weight",
                        residual.amplitude(),
                        residual.low(),
                        residual.high()));
        answer.closure()
                .ifPresent(closure -> paragraph("", "  ", text("Closure %.3f: 1 where all readings agree.", closure)));
    }

    private void split(Split split) {
        lines.add("");
        TextTable table = new TextTable("lrrrl");
        table.row("place", "angle °", "radius mm", "mass g", "made of");
        for (Share share : split.shares()) {
            table.row(
                    share.place().name(),
                    text("%.1f", share.place().angleDeg()),
                    text("%.1f", share.place().radiusMm()),
                    text("%.2f", share.massG()),
                    pieces(share));
        }
        lines.addAll(table.lines());
        lines.add(text("Left over: %.0f g·mm.", split.leftGmm()));
    }

    private static String pieces(Share share) {
        StringBuilder text = new StringBuilder();
        share.piecesG().forEach(g -> text.append(text.isEmpty() ? "" : " + ").append(text("%.4s", g)));
        return text.toString();
    }

    private void cautions() {
        lines.add("");
        CAUTIONS.forEach(caution -> paragraph("", "", caution));
    }

    private void paragraph(String first, String rest, String text) {
        lines.addAll(LineWrapper.lines(first, rest, text));
    }

    private static double wrapped(double degrees) {
        return ((degrees % 360) + 360) % 360;
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
