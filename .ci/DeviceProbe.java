import java.awt.GraphicsEnvironment;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.TargetDataLine;

/** Opens the default input, reads a tenth of a second from it, and asks for the display: both must be there. */
class DeviceProbe {
    public static void main(String[] args) throws Exception {
        AudioFormat format = new AudioFormat(48_000, 16, 2, true, false);
        try (TargetDataLine line = AudioSystem.getTargetDataLine(format)) {
            line.open(format);
            line.start();
            byte[] block = new byte[4_800 * format.getFrameSize()];
            int read = line.read(block, 0, block.length);
            if (read != block.length) {
                throw new IllegalStateException("read " + read + " of " + block.length + " bytes from the input");
            }
        }
        if (GraphicsEnvironment.isHeadless()) {
            throw new IllegalStateException("no display: DISPLAY=" + System.getenv("DISPLAY"));
        }
        System.out.println("[ci] Java reads the default input and sees a screen of "
                + GraphicsEnvironment.getLocalGraphicsEnvironment()
                        .getDefaultScreenDevice()
                        .getDefaultConfiguration()
                        .getBounds()
                        .getSize());
    }
}
