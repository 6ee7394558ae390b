package evenblade.input.intake;

import evenblade.input.recording.SampleStream;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Everything a sound file delivered, kept whole for a test to look at. */
record Heard(StreamHeader header, List<float[]> blocks, StreamSummary summary) {
    static Heard from(Path file) {
        return from(file, IntakeOptions.NONE);
    }

    static Heard from(Path file, IntakeOptions options) {
        SampleStream sound = ((Intake.Streamed) RecordingReader.open(file, options)).sound();
        List<float[]> blocks = new ArrayList<>();
        int lanes = sound.header().channels().size();
        StreamSummary summary =
                sound.deliverTo((samples, frames) -> blocks.add(java.util.Arrays.copyOf(samples, frames * lanes)));
        return new Heard(sound.header(), blocks, summary);
    }

    float[] lane(int lane) {
        int lanes = header.channels().size();
        float[] all = new float[(int) summary.frames()];
        int at = 0;
        for (float[] block : blocks) {
            for (int i = lane; i < block.length; i += lanes) {
                all[at++] = block[i];
            }
        }
        return all;
    }

    List<String> codes() {
        return summary.warnings().stream().map(warning -> warning.code().word()).toList();
    }
}
