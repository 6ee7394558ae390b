package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.base.units.Length;
import evenblade.face.app.ShowJob.JobView;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.EventFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The JSON form of a job. */
final class JobJson {
    private JobJson() {}

    static JsonFields of(JobView view) {
        Set<String> struck = view.record().struckOut();
        return new JsonFields()
                .put("name", view.record().name())
                .put("invented", view.record().invented())
                .put("installation", view.record().installationAsWritten())
                .put(
                        "events",
                        view.record().events().stream()
                                .map(event -> event(event, struck.contains(event.id())))
                                .toList())
                .put("warnings", WarningText.json(view.warnings()));
    }

    private static JsonFields event(Event event, boolean struckOut) {
        JsonFields json = EventFormat.written(event).put("struckOut", struckOut);
        if (event.detail() instanceof Detail.Tracking tracking) {
            json.put(
                    "readingsMm",
                    readingsMm(tracking.session(event.at().toInstant()).readings()));
        }
        return json;
    }

    private static Map<String, Object> readingsMm(List<List<Length>> readings) {
        Map<String, Object> byPosition = new LinkedHashMap<>();
        for (int i = 0; i < readings.size(); i++) {
            byPosition.put(
                    String.valueOf(i + 1),
                    readings.get(i).stream().map(Length::millimetres).toList());
        }
        return byPosition;
    }
}
