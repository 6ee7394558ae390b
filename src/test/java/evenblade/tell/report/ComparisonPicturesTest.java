package evenblade.tell.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.judge.comparison.BeforeAndAfter;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.Figure;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.comparison.RunComparison;
import evenblade.judge.comparison.RunComparison.ChannelComparison;
import evenblade.judge.comparison.RunConditions;
import evenblade.tell.chart.BeforeAfterBarsPicture;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ComparisonPicturesTest {
    private static RunComparison compared() {
        return BeforeAndAfter.compare(
                MeasuredRun.of("as found", RunConditions.UNKNOWN, InventedReport.orders(2.0, 0.02)),
                MeasuredRun.of("shimmed", RunConditions.UNKNOWN, InventedReport.orders(1.0, 0.01)),
                List.of());
    }

    /** The same with an unevenness beside the amplitudes. */
    private static RunComparison withUnevenness(RunComparison plain) {
        ChannelComparison channel = plain.channels().get(0);
        DwellComparison dwell = channel.dwells().get(0);
        Change first = dwell.changes().get(0);
        List<Change> changes = new ArrayList<>(dwell.changes());
        changes.add(new Change(
                Figure.UNEVENNESS,
                first.before(),
                first.after(),
                first.percent(),
                first.ciLowPercent(),
                first.ciHighPercent(),
                first.verdict(),
                first.scatter(),
                List.of()));
        DwellComparison more = new DwellComparison(
                dwell.before(),
                dwell.after(),
                dwell.engineRpmBefore(),
                dwell.engineRpmAfter(),
                changes,
                dwell.notCompared(),
                dwell.takenOutShare());
        ChannelComparison both = new ChannelComparison(
                channel.channel(), channel.unit(), channel.basis(), channel.repeatRuns(), List.of(more));
        return new RunComparison(plain.before(), plain.after(), plain.reasons(), List.of(both), plain.warnings());
    }

    private static List<BeforeAfterBarsPicture.Strip> strips(RunComparison compared) {
        ChannelComparison channel = compared.channels().get(0);
        return ComparisonPictures.strips(channel, channel.dwells().get(0));
    }

    @Test
    void whatHasNoUnitIsntDrawnOnTheAxisOfTheAmplitudes() {
        assertThat(strips(compared()))
                .extracting(BeforeAfterBarsPicture.Strip::axisTitle)
                .containsExactly("amplitude (m/s² peak)");
        List<BeforeAfterBarsPicture.Strip> both = strips(withUnevenness(compared()));
        assertThat(both)
                .extracting(BeforeAfterBarsPicture.Strip::axisTitle)
                .containsExactly("amplitude (m/s² peak)", "ratio (no unit)");
        assertThat(both.get(1).rows())
                .extracting(BeforeAfterBarsPicture.Row::name)
                .containsExactly("unevenness");
        assertThat(both.get(0).rows())
                .extracting(BeforeAfterBarsPicture.Row::name)
                .doesNotContain("unevenness")
                .contains("propeller 1×");
    }
}
