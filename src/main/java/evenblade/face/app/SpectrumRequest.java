package evenblade.face.app;

import evenblade.base.units.FullScale;
import evenblade.input.recording.TableReading;
import evenblade.machine.installation.Installation;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One recording to look at.
 *
 * @param file the recording
 * @param installation what was running, where its orders are to be named
 * @param fromS start of the stretch to look at, seconds; the recording's start where left out
 * @param toS its end; the recording's end where left out
 * @param upToHz highest frequency of interest; all that can be measured where left out
 * @param channel its name or number; the first that moves where left out
 * @param fullScale what the largest sample of sound stands for
 * @param table how a table is to be read, as far as it is said
 */
public record SpectrumRequest(
        Path file,
        Optional<Installation> installation,
        OptionalDouble fromS,
        OptionalDouble toS,
        OptionalDouble upToHz,
        Optional<String> channel,
        Optional<FullScale> fullScale,
        TableReading table) {}
