package evenblade.input.capture;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;

/**
 * A microphone or line input. Only what has already come in is read: a device that goes away makes a
 * waiting read hang for ever, and one that is asked first can be given up.
 */
final class SoundInput implements LiveSource {
    /** How much the device keeps while nobody reads. */
    private static final double DEVICE_BUFFER_S = 4;

    private static final long PAUSE_MS = 20; // much shorter than a device's buffer

    private final String name;
    private final InputFormat format;
    private final TargetDataLine line;
    private boolean started;

    private SoundInput(String name, InputFormat format, TargetDataLine line) {
        this.name = name;
        this.format = format;
        this.line = line;
    }

    /** Opens it; {@code LineUnavailableException} also where it opens at another rate than asked. */
    static SoundInput open(String name, Mixer mixer, InputFormat format) throws LineUnavailableException {
        AudioFormat wanted = new AudioFormat(format.rateHz(), format.coding().bits(), format.channels(), true, false);
        TargetDataLine line;
        try {
            line = (TargetDataLine) mixer.getLine(new DataLine.Info(TargetDataLine.class, wanted));
            line.open(wanted, (int) format.bytesOf(DEVICE_BUFFER_S));
        } catch (IllegalArgumentException e) {
            throw new LineUnavailableException(format.text() + " refused");
        }
        AudioFormat got = line.getFormat();
        if (Math.abs(got.getSampleRate() - format.rateHz()) > 0.5 || got.getFrameSize() != format.frameBytes()) {
            line.close();
            throw new LineUnavailableException("it opens as " + got);
        }
        return new SoundInput(name, format, line);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public InputFormat format() {
        return format;
    }

    @Override
    public void start() {
        line.flush();
        line.start();
        started = true;
    }

    @Override
    public int read(byte[] into, int mostFrames) throws IOException {
        if (!started || !line.isOpen()) {
            return -1;
        }
        int frames = Math.min(mostFrames, line.available() / format.frameBytes());
        if (frames <= 0) {
            pause();
            return 0;
        }
        int bytes = line.read(into, 0, frames * format.frameBytes());
        return bytes <= 0 ? 0 : bytes / format.frameBytes();
    }

    private static void pause() throws IOException {
        try {
            Thread.sleep(PAUSE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("interrupted while waiting for sound");
        }
    }

    @Override
    public Optional<String> comesFrom() {
        return ServerSource.ofThisProgram();
    }

    @Override
    public void close() {
        line.stop();
        line.close();
    }
}
