package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import evenblade.input.recording.Series;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.measure.signal.EvenGrid;
import evenblade.measure.speed.Dwell;
import evenblade.tell.chart.SpectrumCurve;
import evenblade.tell.chart.WaterfallPicture;
import evenblade.tell.chart.Zoom;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On the first invented run of the practice job, whose speeds are those of its run card. */
@DisplayName("Looking closer at a run")
class LookCloserTest {
    @TempDir
    static Path scratch;

    private static Path job;
    private static AnalysedRecording analysed;
    private static LookCloser look;

    @BeforeAll
    static void analyse() throws IOException {
        job = scratch.resolve("job");
        MakePractice.make(job, List.of(), 1, Optional.empty());
        analysed = AnalyseRecording.ofRun(job, runs().get(0).id(), (share, doing) -> {});
        Dwell longest = analysed.orders().speed().main().orElseThrow();
        look = LookCloser.at(analysed, 0, Optional.of(longest));
    }

    private static List<Event> runs() {
        return new JobRuns(JobFolder.open(job)).record().standing(Kind.RUN);
    }

    @Test
    @DisplayName("the loudest that a frequency ever was is never under its average")
    void theLoudestIsAboveTheAverage() {
        Series loudest = look.loudest().curve().y();
        Series average = look.average("average").curve().y();
        assertThat(loudest.size()).isEqualTo(average.size());
        for (int i = 0; i < loudest.size(); i++) {
            assertThat(loudest.at(i)).isGreaterThanOrEqualTo(average.at(i) * (1 - 1e-9));
        }
    }

    @Test
    @DisplayName("a moment's spectrum is of the four seconds around it, its lines where they lie at the speed of then")
    void theSpectrumOfAMoment() {
        double timeS = 10;
        assertThat(look.spectrumAt(timeS).caption().parts()).contains("8.0 to 12.0 s");
        double hz = analysed.orders().speed().track().propellerHzAt(timeS);
        assertThat(look.spectrumAt(timeS).peaks().get(0).reading(evenblade.tell.chart.Spot.What.PROPELLER_ORDER))
                .isPresent()
                .get()
                .satisfies(order -> assertThat(order.value() * hz)
                        .isCloseTo(look.spectrumAt(timeS).peaks().get(0).x(), offset(1e-6)));
    }

    @Test
    @DisplayName("a part of the waterfall is worked out with shorter steps and finer bins")
    void aFinerWaterfall() {
        WaterfallPicture whole = (WaterfallPicture) DrawRecording.draw(analysed).entrySet().stream()
                .filter(each -> each.getKey().startsWith("waterfall"))
                .findFirst()
                .orElseThrow()
                .getValue();
        Zoom part =
                whole.zoom().orElseThrow().box(0.4, 0.5, 0.1, 0.4, whole.whole().orElseThrow());
        WaterfallPicture coarse = (WaterfallPicture) whole.zoomedTo(part);
        WaterfallPicture fine = look.finer(coarse);
        assertThat(fine.zoom()).contains(part);
        assertThat(fine.binHz()).isLessThan(coarse.binHz());
    }

    @Test
    @DisplayName("another run's curve comes from its longest dwell")
    void anotherRun() {
        SpectrumCurve other = look.reference(job, runs().get(1)).orElseThrow();
        assertThat(other.role()).isEqualTo(SpectrumCurve.Role.REFERENCE);
        assertThat(other.curve().x().size()).isGreaterThan(100);
    }

    @Test
    @DisplayName("what is played has the tone and the length of the stretch, at half of full scale")
    void whatIsPlayed() {
        double rateHz = 1000;
        double[] tone = new double[4000];
        for (int i = 0; i < tone.length; i++) {
            tone[i] = 3 * Math.sin(2 * Math.PI * 50 * i / rateHz);
        }
        byte[] sound = PlayStretch.sound(new EvenGrid(10, rateHz, Series.of(tone)), 11, 12);
        assertThat(sound).hasSize(2 * 48_000);
        int crossings = 0;
        int largest = 0;
        short before = 0;
        for (int i = 0; i < sound.length; i += 2) {
            short value = (short) (sound[i] & 0xFF | sound[i + 1] << 8);
            crossings += before < 0 && value > 0 ? 1 : 0;
            before = value == 0 ? before : value;
            largest = Math.max(largest, value);
        }
        assertThat(crossings).isBetween(49, 50);
        assertThat(largest).isBetween(16_000, 16_384);
    }
}
