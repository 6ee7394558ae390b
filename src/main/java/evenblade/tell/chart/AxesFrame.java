package evenblade.tell.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Locale;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.Styler;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * Axes, grid and curves of a picture, drawn by XChart; the only class that knows it. A picture asks
 * for the {@link #place place} first, paints what lies beneath, then the frame, then what lies above.
 */
final class AxesFrame {
    private static final String NUMBERS = "0.######";
    private static final double LYING_SPACE_EM = 5.5; // a number's width and a gap
    private static final double UPRIGHT_SPACE_EM = 3.5; // tick labels with air between
    private static final double SHARE_OF_PLOT = 0.6; // the data keep most of the picture
    /** Numbers and title of the lying axis take a little less, in text heights. */
    private static final double LYING_AXIS_EM = 5;
    /** However low the area, some plot is left. */
    private static final double LEAST_SHARE_OF_PLOT = 0.1;

    /** The upright title may reach a line beyond the plot at both ends, where the lying axis has its numbers. */
    private static final double OVERHANG_EM = 2.5;

    private final XYChart chart = new XYChart(100, 100);
    private final Axis xAxis;
    private final Axis yAxis;
    private final ChartTheme theme;
    private boolean rows;
    private Rectangle2D area = new Rectangle2D.Double();

    AxesFrame(Axis xAxis, Axis yAxis, ChartTheme theme) {
        this.xAxis = xAxis;
        this.yAxis = yAxis;
        this.theme = theme;
        style(chart.getStyler());
        chart.setXAxisTitle(xAxis.title());
        chart.setYAxisGroupTitle(0, yAxis.title());
    }

    /** Leaves out the numbers, grid lines and title of the upright axis, for rows with names of their own. */
    AxesFrame withoutUprightNumbers() {
        rows = true;
        chart.getStyler().setYAxisTicksVisible(false);
        chart.getStyler().setYAxisTitleVisible(false);
        chart.getStyler().setPlotGridHorizontalLinesVisible(false);
        return this;
    }

    /** Leaves out the numbers, grid lines and title of the lying axis, for columns with names of their own. */
    AxesFrame withoutLyingNumbers() {
        chart.getStyler().setXAxisTicksVisible(false);
        chart.getStyler().setXAxisTitleVisible(false);
        chart.getStyler().setPlotGridVerticalLinesVisible(false);
        return this;
    }

    /** Gives the numbers left of the plot so much room in pixels, so that plots stand in line. */
    AxesFrame withLeftRoom(double px) {
        chart.getStyler().setYAxisLeftWidthHint((int) Math.round(px));
        return this;
    }

    /**
     * A second scale on the right for the same curves.
     *
     * @param factor what a number on the left is multiplied by
     */
    AxesFrame withRightScale(double factor) {
        // XChart lays a second scale out only where a series belongs to it.
        XYSeries ends =
                chart.addSeries("ends of the right scale", new double[] {xAxis.min(), xAxis.max()}, new double[] {
                    factor * yAxis.min(), factor * yAxis.max()
                });
        ends.setMarker(SeriesMarkers.NONE);
        ends.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter);
        ends.setYAxisGroup(1);
        chart.getStyler().setYAxisGroupPosition(1, Styler.YAxisPosition.Right);
        chart.getStyler().setYAxisMin(1, factor * justBelow(yAxis));
        chart.getStyler().setYAxisMax(1, factor * justAbove(yAxis));
        return this;
    }

    /** Adds a curve; both arrays have the same length, at least 1. */
    void curve(String name, double[] x, double[] y, Ink ink, BasicStroke stroke) {
        XYSeries series = chart.addSeries(name, x, y);
        series.setMarker(SeriesMarkers.NONE);
        series.setLineColor(theme.palette().of(ink));
        series.setLineStyle(stroke);
    }

    /** Lays the frame out in an area and says where values will lie. */
    Plane place(Rectangle2D where) {
        area = where;
        closeMarksUp();
        Plane whole = laidOut();
        if (Pen.width(yAxis.title(), TextStyle.BODY, theme) <= whole.box().getHeight() + OVERHANG_EM * theme.textPx()) {
            return whole;
        }
        chart.setYAxisGroupTitle(0, unitOf(yAxis.title()));
        return laidOut();
    }

    /** What stands in the brackets at the end of a title; all of it where there are none. */
    static String unitOf(String title) {
        int from = title.lastIndexOf('(');
        return from > 0 && title.endsWith(")") ? title.substring(from + 1, title.length() - 1) : title;
    }

    private Plane laidOut() {
        BufferedImage scratch = new BufferedImage(1, 1, BufferedImage.TYPE_INT_ARGB);
        Graphics2D surface = scratch.createGraphics();
        chart.paint(surface, (int) area.getWidth(), (int) area.getHeight());
        surface.dispose();
        double left = area.getX() + chart.getScreenXFromChart(xAxis.min());
        double right = area.getX() + chart.getScreenXFromChart(xAxis.max());
        double top = area.getY() + chart.getScreenYFromChart(yAxis.max());
        double bottom = area.getY() + chart.getScreenYFromChart(yAxis.min());
        return new Plane(xAxis, yAxis, new Rectangle2D.Double(left, top, right - left, bottom - top));
    }

    void paint(Graphics2D surface) {
        AffineTransform saved = surface.getTransform();
        surface.translate(area.getX(), area.getY());
        chart.paint(surface, (int) area.getWidth(), (int) area.getHeight());
        surface.setTransform(saved);
    }

    /**
     * XChart puts every value into the middle of an axis that is shorter than the space between two numbers, and
     * measures the upright axis by the space that the lying one needs.
     */
    private void closeMarksUp() {
        double height = shareOfPlot() * area.getHeight();
        double width = SHARE_OF_PLOT * area.getWidth();
        XYStyler styler = chart.getStyler();
        styler.setXAxisTickMarkSpacingHint((int) Math.min(LYING_SPACE_EM * theme.textPx(), Math.min(width, height)));
        styler.setYAxisTickMarkSpacingHint((int) Math.min(UPRIGHT_SPACE_EM * theme.textPx(), height));
    }

    /** Rows may stand in an area so low that most of it goes to the lying axis. */
    private double shareOfPlot() {
        double beside = 1 - LYING_AXIS_EM * theme.textPx() / area.getHeight();
        return rows ? Math.max(LEAST_SHARE_OF_PLOT, Math.min(SHARE_OF_PLOT, beside)) : SHARE_OF_PLOT;
    }

    /** XChart leaves out a number that lies exactly on the end of an axis; this much is under a tenth of a pixel. */
    private static final double HAIR = 5e-5;

    private static double justBelow(Axis axis) {
        return axis.logarithmic() ? axis.min() * (1 - HAIR) : axis.min() - HAIR * (axis.max() - axis.min());
    }

    private static double justAbove(Axis axis) {
        return axis.logarithmic() ? axis.max() * (1 + HAIR) : axis.max() + HAIR * (axis.max() - axis.min());
    }

    private void style(XYStyler styler) {
        Palette palette = theme.palette();
        Color clear = new Color(0, 0, 0, 0);
        int gap = (int) Math.round(0.4 * theme.textPx());
        styler.setLocale(Locale.ROOT);
        styler.setLegendVisible(false);
        styler.setChartTitleVisible(false);
        styler.setChartBackgroundColor(clear);
        styler.setPlotBackgroundColor(clear);
        styler.setPlotBorderVisible(false);
        styler.setPlotContentSize(1.0);
        styler.setPlotMargin(0);
        styler.setChartPadding(gap);
        styler.setChartFontColor(palette.of(Ink.TEXT));
        styler.setAxisTitleFont(TextStyle.BODY.font(theme));
        styler.setAxisTickLabelsFont(TextStyle.SMALL.font(theme));
        styler.setAxisTickLabelsColor(palette.of(Ink.TEXT));
        styler.setXAxisTitleColor(palette.of(Ink.TEXT));
        styler.setYAxisTitleColor(palette.of(Ink.TEXT));
        styler.setAxisTickMarksColor(palette.of(Ink.QUIET_TEXT));
        styler.setAxisTickMarkLength(gap);
        styler.setAxisTickPadding(gap);
        styler.setAxisTitlePadding(gap);
        BasicStroke hair = new BasicStroke((float) Math.max(0.5, 0.06 * theme.textPx()));
        styler.setAxisTickMarksStroke(hair);
        styler.setPlotGridLinesColor(palette.of(Ink.GRID));
        styler.setPlotGridLinesStroke(hair);
        styler.setXAxisDecimalPattern(NUMBERS);
        styler.setYAxisDecimalPattern(NUMBERS);
        styler.setXAxisMin(justBelow(xAxis));
        styler.setXAxisMax(justAbove(xAxis));
        styler.setYAxisMin(justBelow(yAxis));
        styler.setYAxisMax(justAbove(yAxis));
        styler.setXAxisLogarithmic(xAxis.logarithmic());
        styler.setYAxisLogarithmic(yAxis.logarithmic());
    }
}
