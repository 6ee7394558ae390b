package evenblade.tell.chart;

import java.awt.BasicStroke;

/** The dashes that lines have, so that they can be separated without colour. */
enum Dash {
    SOLID {
        @Override
        float[] pattern(float unit) {
            return null; // what BasicStroke takes for an unbroken line
        }
    },
    LONG {
        @Override
        float[] pattern(float unit) {
            return new float[] {6 * unit, 3 * unit};
        }
    },
    LONG_SHORT {
        @Override
        float[] pattern(float unit) {
            return new float[] {8 * unit, 2.5f * unit, 2 * unit, 2.5f * unit};
        }
    },
    DOTS {
        @Override
        float[] pattern(float unit) {
            return new float[] {1.2f * unit, 2.4f * unit};
        }
    };

    abstract float[] pattern(float unit);

    /** With wide gaps, for lines laid over a picture that must stay in sight. */
    private float[] sparsePattern(float unit) {
        return switch (this) {
            case SOLID -> new float[] {14 * unit, 24 * unit};
            case LONG -> new float[] {4 * unit, 4 * unit, 4 * unit, 26 * unit};
            case LONG_SHORT -> new float[] {11 * unit, 3 * unit, 3 * unit, 21 * unit};
            case DOTS -> new float[] {2 * unit, 3 * unit, 2 * unit, 3 * unit, 2 * unit, 26 * unit};
        };
    }

    BasicStroke sparseStroke(double width, ChartTheme theme) {
        float unit = (float) (theme.textPx() / 10);
        return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, sparsePattern(unit), 0);
    }

    /** A stroke of that width, its dashes in proportion to the text. */
    BasicStroke stroke(double width, ChartTheme theme) {
        float unit = (float) (theme.textPx() / 10);
        return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, pattern(unit), 0);
    }
}
