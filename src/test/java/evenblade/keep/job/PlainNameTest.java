package evenblade.keep.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class PlainNameTest {
    @Test
    void holdsOnlyWhatEveryFileSystemAndLocaleTakes() {
        assertThat(PlainName.of("=HYPERLINK(größe)")).isEqualTo("HYPERLINK-gro-e");
        assertThat(PlainName.of("../été\u0000/前")).isEqualTo("ete");
        assertThat(PlainName.of("前")).isEmpty();
        assertThat(PlainName.of("Ĳ½" + "ö".repeat(300)).getBytes(StandardCharsets.UTF_8))
                .hasSizeLessThanOrEqualTo(40);
        assertThat(PlainName.of("ab cd", 3)).as("no hyphen at its end").isEqualTo("ab");
    }
}
