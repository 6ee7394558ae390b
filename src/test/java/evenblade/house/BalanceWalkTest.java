package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.cli.Program;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("The page about balance weights")
@Tag("long")
class BalanceWalkTest {
    private static final String PROMPT = "$ evenblade ";
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TempDir
    Path folder;

    @Test
    @DisplayName("balances a whole job word for word as it says")
    void theWalkIsTrue() {
        List<String> page = MarkdownTable.lines(Path.of("docs", "balancing.md"));
        int from = page.indexOf("$ evenblade practice shop --to-balance --seed 3");
        int to = from + page.subList(from, page.size()).indexOf("```");
        List<String> block = page.subList(from, to);
        int compared = 0;
        for (int i = 0; i < block.size(); i++) {
            if (block.get(i).startsWith(PROMPT)) {
                List<String> shown = new ArrayList<>();
                for (int j = i + 1; j < block.size() && !block.get(j).startsWith(PROMPT); j++) {
                    shown.add(block.get(j));
                }
                String out = done(block.get(i).substring(PROMPT.length()));
                if (!shown.isEmpty()) {
                    assertThat(out.lines().toList()).as(block.get(i)).isEqualTo(shown);
                    compared++;
                }
            }
        }
        assertThat(compared).isEqualTo(2);
        assertThat(folder.resolve("shop/report.html")).content().contains("Balance weight from runs with phase");
    }

    private String done(String line) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(line);
        while (word.find()) {
            String each = word.group(1) != null ? word.group(1) : word.group(2);
            words.add(each.equals("shop") ? folder.resolve("shop").toString() : each);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Program.run(
                words.toArray(String[]::new),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        assertThat(status).as(err.toString(StandardCharsets.UTF_8)).isZero();
        return out.toString(StandardCharsets.UTF_8);
    }
}
