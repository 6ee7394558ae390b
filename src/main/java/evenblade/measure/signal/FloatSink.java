package evenblade.measure.signal;

/** Takes values of one channel, piece by piece; the array is reused by the sender. */
interface FloatSink {
    void accept(float[] values, int count);
}
