package evenblade.house;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayName("The rooms of the house")
class RoomsTest {
    private static final Path SOURCES = Path.of("src/main/java/evenblade");

    static List<Room> rooms() {
        return Room.all();
    }

    /** The table may name a room before it is built. */
    static List<Room> builtRooms() {
        return rooms().stream().filter(room -> Files.isDirectory(room.folder())).toList();
    }

    static List<Library> libraries() {
        return Library.all().stream()
                .filter(library -> !library.packagePrefix().isEmpty())
                .toList();
    }

    @Test
    @DisplayName("Every room that exists is in the table of DEVELOPERS.md")
    void everyRoomIsInTheTable() throws Exception {
        Set<String> named = new TreeSet<>();
        rooms().forEach(room -> named.add(room.name()));
        assertThat(named).as("names of rooms, no two alike").hasSameSizeAs(rooms());
        Set<Path> known = new TreeSet<>();
        rooms().forEach(room -> known.add(room.folder()));
        try (Stream<Path> folders = Files.walk(SOURCES)) {
            assertThat(folders.filter(file -> file.toString().endsWith(".java")).map(Path::getParent))
                    .isSubsetOf(known);
        }
        rooms().forEach(room ->
                assertThat(named).as("rooms that %s may use", room.name()).containsAll(room.mayUse()));
    }

    @Test
    @DisplayName("A room may use only rooms above it in the table, so data walks one way")
    void theTableItselfRunsOneWay() {
        Set<String> above = new TreeSet<>();
        for (Room room : rooms()) {
            assertThat(above).as("rooms above %s", room.name()).containsAll(room.mayUse());
            above.add(room.name());
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rooms")
    @DisplayName("A room uses only the rooms that the table gives it")
    void aRoomUsesOnlyWhatTheTableGivesIt(Room room) {
        List<String> forbidden = new ArrayList<>();
        for (Room other : rooms()) {
            if (!other.equals(room) && !room.mayUse().contains(other.name())) {
                forbidden.add(other.packages());
            }
        }
        noClasses()
                .that()
                .resideInAPackage(room.packages())
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(forbidden.toArray(String[]::new))
                .because("a reader should know from a room's name what can be behind its lines")
                .allowEmptyShould(true)
                .check(Classes.OF_PROGRAM);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("builtRooms")
    @DisplayName("A room uses every room that the table gives it")
    void noArrowIsGrantedInVain(Room room) {
        Set<String> used = new TreeSet<>();
        Classes.OF_PROGRAM.stream()
                .filter(type -> type.getPackageName().equals("evenblade." + room.storey() + "." + room.name()))
                .flatMap(type -> type.getDirectDependenciesFromSelf().stream())
                .map(arrow -> arrow.getTargetClass().getBaseComponentType().getPackageName())
                .map(name -> name.substring(name.lastIndexOf('.') + 1))
                .forEach(used::add);
        used.addAll(room.imports());
        assertThat(used)
                .as("rooms that %s uses; take the others out of its row", room.name())
                .containsAll(room.mayUse());
    }

    @Test
    @DisplayName("No class is called like one in another room")
    void noNameStandsTwice() {
        Set<String> seen = new TreeSet<>();
        Set<String> twice = new TreeSet<>();
        Classes.OF_PROGRAM.stream()
                .filter(type -> type.isTopLevelClass() && !type.getSimpleName().equals("package-info"))
                .forEach(type -> {
                    if (!seen.add(type.getSimpleName())) {
                        twice.add(type.getSimpleName());
                    }
                });
        assertThat(twice)
                .as("a reader who sees one of these must not wonder which")
                .isEmpty();
    }

    @Test
    @DisplayName("No two rooms use each other, however long the way round")
    void noCycles() {
        slices().matching("evenblade.*.(*)..")
                .should()
                .beFreeOfCycles()
                .because("rooms in a ring are one room in truth")
                .check(Classes.OF_PROGRAM);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("libraries")
    @DisplayName("A library is used only in its own room")
    void aLibraryStaysInItsRoom(Library library) {
        List<String> rooms = new ArrayList<>(List.of("nowhere.at.all"));
        library.rooms().forEach(room -> rooms.add("evenblade.*." + room + ".."));
        noClasses()
                .that()
                .resideOutsideOfPackages(rooms.toArray(String[]::new))
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library.packagePrefix() + "..")
                .because("what lives in one room can be replaced in one room")
                .check(Classes.OF_PROGRAM);
    }

    @Test
    @DisplayName("Every library that the program uses is in the list of docs/licences.md")
    void noUnlistedLibrary() {
        List<String> known = new ArrayList<>(List.of("java..", "javax..", "evenblade..", ""));
        libraries().forEach(library -> known.add(library.packagePrefix() + ".."));
        DescribedPredicate<JavaClass> primitive =
                DescribedPredicate.describe("a primitive or an array of them", type -> type.getBaseComponentType()
                        .isPrimitive());
        classes()
                .should()
                .onlyDependOnClassesThat(
                        resideInAnyPackage(known.toArray(String[]::new)).or(primitive))
                .because("a library comes with a licence, and the list says which")
                .check(Classes.OF_PROGRAM);
    }

    @Test
    @DisplayName("Windows and pictures are drawn only in desktop and chart")
    void noDrawingElsewhere() {
        noClasses()
                .that()
                .resideOutsideOfPackages("evenblade.face.desktop..", "evenblade.tell.chart..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.awt..", "javax.swing..")
                .because("the core must not know that it is drawn, and must run where there is no screen")
                .check(Classes.OF_PROGRAM);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("builtRooms")
    @DisplayName("The package-info of a room opens with the purpose that the table gives")
    void aRoomSaysItsPurpose(Room room) {
        StringBuilder text = new StringBuilder();
        for (String line : MarkdownTable.lines(room.folder().resolve("package-info.java"))) {
            text.append(line.strip().replaceFirst("^(/\\*\\*|\\*/|\\*)\\s*", ""))
                    .append(' ');
        }
        assertThat(text.toString().strip().replaceAll("\\{@code (\\w+)}", "`$1`"))
                .startsWith(room.purpose());
    }
}
