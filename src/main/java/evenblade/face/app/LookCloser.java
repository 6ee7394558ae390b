package evenblade.face.app;

import evenblade.base.units.SignalUnit;
import evenblade.face.app.LookAtRecording.LookedAt;
import evenblade.input.recording.Series;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.signal.AveragedSpectrum;
import evenblade.measure.signal.EvenGrid;
import evenblade.measure.signal.Spectrum;
import evenblade.measure.signal.Waterfall;
import evenblade.measure.speed.Dwell;
import evenblade.tell.chart.AmplitudeScale;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Curve;
import evenblade.tell.chart.OrderMark;
import evenblade.tell.chart.OrderRows;
import evenblade.tell.chart.ShaftSpeeds;
import evenblade.tell.chart.SpectrumCurve;
import evenblade.tell.chart.SpectrumPicture;
import evenblade.tell.chart.WaterfallPicture;
import evenblade.tell.chart.Zoom;
import evenblade.tell.document.FigureFormat;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Answers what one asks of a channel while one looks at its pictures: the spectrum of a moment, a part of the waterfall more finely, the highest
 * that each frequency ever was, other runs beside it, and how it sounds.
 */
public final class LookCloser {
    private static final double MOMENT_S = DrawRecording.SPECTRUM_STRETCH_S;
    /** More bins than this from 0 Hz up take more memory than a picture is worth. */
    private static final int MOST_BINS = 6000;

    private final String file;
    private final String channel;
    private final SignalUnit unit;
    private final EvenGrid grid;
    private final double fromS;
    private final double toS;
    private final double upToHz;
    private final Optional<RunOrders> run;
    private final Optional<DwellOrders> dwell;

    private LookCloser(
            String file,
            String channel,
            SignalUnit unit,
            EvenGrid grid,
            double fromS,
            double toS,
            double upToHz,
            Optional<RunOrders> run,
            Optional<DwellOrders> dwell) {
        this.file = file;
        this.channel = channel;
        this.unit = unit;
        this.grid = grid;
        this.fromS = fromS;
        this.toS = toS;
        this.upToHz = upToHz;
        this.run = run;
        this.dwell = dwell;
    }

    /**
     * At a channel of an analysed run.
     *
     * @param place of the channel among the analysed ones, from 0
     * @param chosen the dwell that the pictures show; the whole run, where empty
     */
    public static LookCloser at(AnalysedRecording analysed, int place, Optional<Dwell> chosen) {
        RunOrders orders = analysed.orders();
        EvenGrid grid = DrawRecording.grid(analysed.recording(), place);
        double endS = grid.startS() + grid.values().size() / grid.rateHz();
        Optional<DwellOrders> dwell = orders.channels().get(place).dwells().stream()
                .filter(each -> chosen.filter(each.dwell()::equals).isPresent())
                .findFirst();
        return new LookCloser(
                String.valueOf(orders.source().file().getFileName()),
                orders.channels().get(place).channel(),
                orders.channels().get(place).unit(),
                grid,
                chosen.map(Dwell::fromS).orElse(grid.startS()),
                chosen.map(Dwell::toS).orElse(endS),
                DrawRecording.upToHz(dwell, DrawRecording.usableUpToHz(analysed.recording(), grid)),
                Optional.of(orders),
                dwell);
    }

    /** At a recording that was looked at without a job. */
    public static LookCloser at(LookedAt looked) {
        return new LookCloser(
                String.valueOf(looked.spectrum().source().file().getFileName()),
                looked.spectrum().channel(),
                looked.spectrum().unit(),
                looked.spectrum().measured().grid(),
                looked.spectrum().fromS(),
                looked.spectrum().toS(),
                looked.spectrum().measured().upToHz(),
                looked.run(),
                looked.dwell());
    }

    /** The highest that each frequency was in the stretch shown. */
    public SpectrumCurve loudest() {
        Series part = DrawRecording.part(grid, fromS, toS);
        return new SpectrumCurve(
                "the loudest it ever was",
                curve(AveragedSpectrum.hann(MOMENT_S, grid.rateHz(), Spectrum.Scaling.AMPLITUDE)
                        .loudest(part, grid.rateHz())),
                SpectrumCurve.Role.LOUDEST);
    }

    /** The averaged spectrum of this channel in the stretch shown, to lay over another one's. */
    public SpectrumCurve average(String name) {
        return new SpectrumCurve(
                name, curve(average(DrawRecording.part(grid, fromS, toS))), SpectrumCurve.Role.REFERENCE);
    }

    /**
     * The averaged spectrum of the same channel in another run, in that run's longest dwell.
     *
     * @return empty where that run has no such channel in the same unit
     */
    public Optional<SpectrumCurve> reference(Path job, Event other) {
        JobRuns runs = new JobRuns(JobFolder.open(job));
        return runs.result(other, false)
                .run()
                .view(channel)
                .filter(view -> view.unit() == unit)
                .map(view ->
                        new SpectrumCurve(runs.nameOf(other), curve(view.spectrum()), SpectrumCurve.Role.REFERENCE));
    }

    /** The spectrum of a few seconds around a moment, with the lines marked where they lie at the speed of then. */
    public SpectrumPicture spectrumAt(double timeS) {
        double from = Math.max(grid.startS(), timeS - MOMENT_S / 2);
        double end = grid.startS() + grid.values().size() / grid.rateHz();
        double to = Math.min(end, from + MOMENT_S);
        Spectrum spectrum = average(DrawRecording.part(grid, from, to));
        Optional<Double> turns = dwell.flatMap(known -> run)
                .map(known -> known.speed().track())
                .filter(track -> timeS >= track.fromS() && timeS <= track.toS())
                .map(track -> track.propellerHzAt(timeS));
        List<OrderMark> marks = new ArrayList<>();
        turns.ifPresent(hz ->
                OrderRows.lines(dwell.orElseThrow()).forEach(mark -> mark.at(hz).ifPresent(marks::add)));
        List<String> parts = new ArrayList<>(List.of(
                file,
                Caption.channel(channel),
                FigureFormat.fixed(from, 1) + " to " + FigureFormat.fixed(to, 1) + " s"));
        turns.ifPresent(hz -> parts.add(Caption.rpm(60 * hz * run.orElseThrow().ratio(), 60 * hz)));
        parts.add("Hann window, bins of " + FigureFormat.fixed(spectrum.binHz(), 2) + " Hz");
        return new SpectrumPicture(new SpectrumPicture.Data(
                        new Caption(parts),
                        spectrum.frequenciesHz(),
                        spectrum.values(),
                        unit,
                        marks,
                        upToHz,
                        AmplitudeScale.DECADES)
                .turning(turns.map(hz -> new ShaftSpeeds(hz, run.orElseThrow().ratio()))));
    }

    /** What a zoomed waterfall shows, worked out anew as finely as the picture can show. */
    public WaterfallPicture finer(WaterfallPicture shown) {
        Zoom zoom = shown.zoom().orElseThrow();
        Zoom.Range hz = zoom.upward().orElseThrow();
        double from = zoom.across().from();
        double to = zoom.across().to();
        Series part = DrawRecording.part(grid, from, to);
        int bins = (int) Math.min(MOST_BINS, Math.ceil(DrawRecording.WATERFALL_BINS * hz.to() / hz.size()));
        Waterfall fall = Waterfall.of(part, grid.rateHz(), hz.to(), DrawRecording.WATERFALL_SLICES, Math.max(2, bins));
        return shown.finer(
                fall.slices(),
                Math.max(from, grid.startS()) + fall.timeS(0),
                step(fall, to - from),
                fall.frequencyHz(1),
                fall.bins(),
                DrawRecording.levelsDb(fall));
    }

    private static double step(Waterfall fall, double wholeS) {
        return fall.slices() > 1 ? fall.timeS(1) - fall.timeS(0) : wholeS;
    }

    /** Plays a stretch, as far as the recording has it. */
    public PlayStretch play(double from, double to) {
        return PlayStretch.of(grid, Math.max(from, grid.startS()), to);
    }

    /** Start of the stretch that the pictures show, in seconds. */
    public double fromS() {
        return fromS;
    }

    /** Its end. */
    public double toS() {
        return toS;
    }

    private Spectrum average(Series part) {
        return AveragedSpectrum.hann(MOMENT_S, grid.rateHz(), Spectrum.Scaling.AMPLITUDE)
                .of(part, grid.rateHz());
    }

    private static Curve curve(Spectrum spectrum) {
        return new Curve(spectrum.frequenciesHz(), spectrum.values());
    }
}
