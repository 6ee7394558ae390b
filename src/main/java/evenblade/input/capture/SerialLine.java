package evenblade.input.capture;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import evenblade.base.problem.BadInput;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;

/** A sensor that sends its readings as lines of text over a serial port. */
public final class SerialLine {
    /** What boards with a serial line are mostly set to; common practice, no source. */
    public static final int USUAL_BAUD = 115_200;

    private SerialLine() {}

    /** The ports that this machine shows, as it calls them; none where it has no driver for any. */
    public static List<String> ports() {
        try {
            return Arrays.stream(SerialPort.getCommPorts())
                    .map(SerialPort::getSystemPortName)
                    .toList();
        } catch (LinkageError e) {
            // A kind of machine that the driver wasn't built for; sound can be recorded all the same.
            return List.of();
        }
    }

    /**
     * Opens a port for reading: 8 data bits, no parity, 1 stop bit.
     *
     * @param name as the system calls it
     * @param baud bits per second
     * @throws BadInput where there is no such port, or it is in use or forbidden
     */
    public static InputStream open(String name, int baud) {
        BadInput.Place place = BadInput.in("serial port '" + name + "'");
        SerialPort port;
        try {
            port = SerialPort.getCommPort(name);
        } catch (SerialPortInvalidPortException e) {
            List<String> known = ports();
            throw place.found(
                    "no such port",
                    known.isEmpty()
                            ? "a port; this machine shows none"
                            : "one of '" + String.join("', '", known) + "'");
        }
        port.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 0, 0);
        if (!port.openPort()) {
            throw place.found("it can't be opened", "a port that no other program holds and that this user may read");
        }
        return new Unending(port);
    }

    /** A port has no end of its own: where it gives no more bytes it was pulled out. */
    private static final class Unending extends FilterInputStream {
        private final SerialPort port;

        Unending(SerialPort port) {
            super(port.getInputStreamWithSuppressedTimeoutExceptions());
            this.port = port;
        }

        /** The port is free for the next recording, or for another program. */
        @Override
        public void close() {
            port.closePort();
        }

        @Override
        public int read() throws IOException {
            return there(super.read());
        }

        @Override
        public int read(byte[] into, int from, int most) throws IOException {
            return there(super.read(into, from, most));
        }

        private static int there(int got) throws IOException {
            if (got < 0) {
                throw new IOException("the serial port gives nothing any more");
            }
            return got;
        }
    }
}
