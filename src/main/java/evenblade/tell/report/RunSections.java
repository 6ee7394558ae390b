package evenblade.tell.report;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.RunSettings;
import evenblade.tell.document.Block.Tone;
import evenblade.tell.document.Document;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.PictureSlot;
import evenblade.tell.document.RunDocument;
import evenblade.tell.document.RunDocument.Extent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Each ground run of a job: what was said of it, how it was measured, and what came of it. */
public final class RunSections {
    private RunSections() {}

    /** Newest first and in full, the others in brief. */
    static List<Section> of(List<ReportedRun> runs, Phrases phrases) {
        List<Section> sections = new ArrayList<>();
        for (int i = runs.size() - 1; i >= 0; i--) {
            sections.add(of(runs.get(i), i == runs.size() - 1 ? Extent.FIRST_CHANNEL : Extent.IN_BRIEF, phrases));
        }
        return sections;
    }

    private static Section of(ReportedRun run, Extent extent, Phrases phrases) {
        Event event = run.event();
        Document.Builder text =
                Document.begin().subject(run.name() + ", " + FigureFormat.minute(event.at()) + " (" + event.id() + ")");
        if (!event.text().isBlank()) {
            text.say(event.text());
        }
        if (run.troubled()) {
            text.say(Tone.CAUTION, run.trouble());
        }
        text.addAll(noted((Detail.Run) event.detail()));
        run.orders().map(orders -> RunDocument.of(orders, extent, phrases)).ifPresent(text::addAll);
        return new Section(text.done(), Map.of(PictureSlot.of(PictureSlot.Shows.RUN), run.figures()));
    }

    /** How a run was measured, and what was said of its recording. */
    public static Document noted(Detail.Run detail) {
        Document.Builder text = Document.begin();
        detail.conditions()
                .entries()
                .forEach((condition, value) -> text.known(FigureFormat.capital(condition.word()), value));
        if (detail.conditions().entries().isEmpty()) {
            text.known("Conditions", "none were noted: it can't be known whether like was compared with like");
        }
        RunSettings settings = detail.settings();
        settings.engineRpm().ifPresent(rpm -> text.known("Entered speed", "engine " + FigureFormat.rpm(rpm) + " rpm"));
        settings.propellerRpm()
                .ifPresent(rpm -> text.known("Entered speed", "propeller " + FigureFormat.rpm(rpm) + " rpm"));
        settings.fullScale().ifPresent(value -> text.known("Full scale", value));
        settings.markChannel().ifPresent(value -> text.known("Mark on channel", value));
        if (!settings.table().unsaid()) {
            text.known("Table read with", settings.table().words());
        }
        return text.done();
    }
}
