package evenblade.input.intake;

import evenblade.input.recording.QualityMeter;

/** Brings a column of a table through the same meter as sound. */
final class TableQuality {
    private static final int BLOCK = 4096; // 16 KiB: fits the processor's cache

    private TableQuality() {}

    /**
     * Measures a column. The meter works in single precision, so it is shown the distance from the first
     * value, which keeps small vibration on top of a large constant apart.
     *
     * @return a meter to be asked with an offset of {@code values[0]}
     */
    static QualityMeter meter(String channel, double[] values, double rateHz) {
        QualityMeter meter = new QualityMeter(channel, 0, SignalChecks.flatRun(rateHz));
        float[] block = new float[BLOCK];
        for (int from = 0; from < values.length; from += BLOCK) {
            int count = Math.min(BLOCK, values.length - from);
            for (int i = 0; i < count; i++) {
                block[i] = (float) (values[from + i] - values[0]);
            }
            meter.add(block, 0, 1, count);
        }
        return meter;
    }
}
