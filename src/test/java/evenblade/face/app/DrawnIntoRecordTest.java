package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.job.NewJob;
import evenblade.keep.practice.PracticeInstallation;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("A picture drawn into the record")
class DrawnIntoRecordTest {
    @TempDir
    Path folder;

    @Test
    @DisplayName(
            "stands there once: the same again is left, another of its name crosses it out, a photo of that name stays")
    void standsOnce() throws IOException {
        Path job = folder.resolve("job");
        JobFolder.create(job, NewJob.of("Invented job", true, PracticeInstallation.geared()));
        Path picture = folder.resolve("trend.png");
        draw(picture, 20);
        WriteEntry.attach(job, List.of(picture), "by hand", Optional.empty());
        draw(picture, 30);
        assertThat(WriteEntry.drawn(job, List.of(picture))).hasSize(1);
        assertThat(WriteEntry.drawn(job, List.of(picture))).isEmpty();
        draw(picture, 40);
        List<Event> anew = WriteEntry.drawn(job, List.of(picture));
        assertThat(anew).hasSize(1);
        assertThat(JobFolder.open(job).record().standing(Kind.ATTACHMENT))
                .extracting(Event::text)
                .containsExactly("by hand", anew.get(0).text());
    }

    @Test
    @DisplayName("shows channels by their noted directions, where the file only numbers them")
    void channelsByDirection() {
        assertThat(FeltChannels.of(
                        List.of("channel 1", "channel 2", "channel 3", "channel 4"), List.of("along", "across", "up")))
                .containsExactly("along", "across", "up", "channel 4");
        assertThat(FeltChannels.of(List.of("shake up", "channel 2"), List.of("along", "across")))
                .containsExactly("shake up", "across");
        assertThat(FeltChannels.of(List.of("left", "right"), List.of("up", "up")))
                .containsExactly("left", "right");
        assertThat(FeltChannels.of(List.of("left", "right"), List.of("up"))).containsExactly("left", "right");
    }

    private static void draw(Path file, int width) throws IOException {
        ImageIO.write(new BufferedImage(width, 10, BufferedImage.TYPE_INT_RGB), "png", file.toFile());
    }
}
