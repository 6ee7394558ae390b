package evenblade.tell.report;

import evenblade.machine.plan.RunPlan;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.PlanDocument;
import java.util.List;
import java.util.Map;

/** The run card as a sheet to print, with blanks for what is only known beside the aircraft. */
public final class RunCardSheet {
    private RunCardSheet() {}

    public static OneSheet of(RunPlan plan) {
        return new OneSheet(
                "Run card for a ground run",
                plan.installation().name().orElse("Engine and propeller"),
                false,
                "The makers' papers and local rules come first.",
                List.of(new Section(PlanDocument.card(plan, Phrases.of(Face.PAPER)), Map.of())));
    }
}
