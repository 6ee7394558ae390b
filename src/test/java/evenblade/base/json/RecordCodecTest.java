package evenblade.base.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("Records that are kept")
class RecordCodecTest {
    sealed interface Shape {}

    record Circle(double radiusMm) implements Shape {}

    record Square(double sideMm) implements Shape {}

    record Drawing(String name, List<Shape> shapes, Optional<Circle> frame, OptionalDouble scale) {}

    record OtherDrawing(String name, List<Shape> shapes) {}

    private static final RecordCodec<Drawing> CODEC = new RecordCodec<>(Drawing.class, List.of());

    @Test
    @DisplayName("come back equal, with the class of each where the type leaves it open")
    void comeBackEqual() {
        Drawing full = new Drawing(
                "größe \" \n",
                List.of(new Circle(0.1 + 0.2), new Square(-0.0)),
                Optional.of(new Circle(1e-300)),
                OptionalDouble.of(3));
        Drawing bare = new Drawing("", List.of(), Optional.empty(), OptionalDouble.empty());
        assertThat(CODEC.read(CODEC.written(full))).contains(full);
        assertThat(CODEC.read(CODEC.written(bare))).contains(bare);
    }

    @Test
    @DisplayName("cut short, or with something missing, more or foreign in them are none")
    void anythingElseIsNone() {
        byte[] whole =
                CODEC.written(new Drawing("a", List.of(new Circle(1)), Optional.empty(), OptionalDouble.empty()));
        for (int length = 0; length < whole.length; length++) {
            assertThat(CODEC.read(Arrays.copyOf(whole, length))).isEmpty();
        }
        String text = new String(whole, StandardCharsets.UTF_8);
        assertThat(text).contains("\"radiusMm\"").contains(Circle.class.getName());
        for (String changed : List.of(
                text.replace("radiusMm", "radius"),
                text.replace("\"name\":\"a\",", ""),
                text.replace("\"name\"", "\"more\":1,\"name\""),
                text.replace(Circle.class.getName(), "java.util.ArrayList"),
                text.replace(Circle.class.getName(), Drawing.class.getName()))) {
            assertThat(changed).isNotEqualTo(text);
            assertThat(CODEC.read(changed.getBytes(StandardCharsets.UTF_8)))
                    .as(changed)
                    .isEmpty();
        }
    }

    @Test
    @DisplayName("have a shape that names every component, also behind lists and interfaces")
    void shapeNamesEveryComponent() {
        assertThat(CODEC.shape()).contains("name", "shapes", "frame", "scale", "radiusMm", "sideMm");
        assertThat(new RecordCodec<>(OtherDrawing.class, List.of()).shape()).isNotEqualTo(CODEC.shape());
    }
}
