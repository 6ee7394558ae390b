package evenblade.house;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaModifier.SYNTHETIC;
import static com.tngtech.archunit.lang.conditions.ArchConditions.have;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitCallTarget;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.text.DecimalFormat;
import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.Formatter;
import java.util.List;
import java.util.Random;
import java.util.Scanner;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.ThreadLocalRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("The habits of the house")
class HabitsTest {
    @Test
    @DisplayName("Only the command line prints, and only it ends the process")
    void onlyTheCommandLinePrints() {
        GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS
                .because("a room that prints can't be used by the other face")
                .check(Classes.OF_PROGRAM);
        noClasses()
                .that()
                .resideOutsideOfPackage("evenblade.face.cli..")
                .should()
                .callMethod(System.class, "exit", int.class)
                .orShould()
                .callMethod(Runtime.class, "halt", int.class)
                .because("what ends the process loses what another thread has not yet written")
                .check(Classes.OF_PROGRAM);
    }

    @Test
    @DisplayName("Nothing static can change")
    void noMutableStatics() {
        fields().that()
                .areStatic()
                .and()
                .doNotHaveModifier(SYNTHETIC)
                .should()
                .beFinal()
                .because("two runs in one process must not meet in a field")
                .check(Classes.OF_PROGRAM);
        noFields()
                .that()
                .areStatic()
                .and()
                .areNotPrivate()
                .and()
                .doNotHaveModifier(SYNTHETIC)
                .should(have(DescribedPredicate.<JavaField>describe(
                        "an array type", field -> field.getRawType().isArray())))
                .because("anyone who can see an array can change it")
                .check(Classes.OF_PROGRAM);
    }

    @Test
    @DisplayName("Chance comes from a stated seed")
    void chanceIsSeeded() {
        noClasses()
                .should()
                .callMethod(Math.class, "random")
                .orShould()
                .callConstructor(Random.class)
                .orShould()
                .callConstructor(SplittableRandom.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(ThreadLocalRandom.class)
                .because("a result that can't be had again can't be checked")
                .check(Classes.OF_PROGRAM);
    }

    @Test
    @DisplayName("Numbers and letters don't change with the machine's language")
    void noDefaultLocale() {
        noClasses()
                .should()
                .callCodeUnitWhere(namedWithoutLocale())
                .because("a comma for a point in a file is read as another number, or not at all")
                .check(Classes.OF_PROGRAM);
    }

    @Test
    @DisplayName("Text is read and written in a stated encoding")
    void noDefaultCharset() {
        noClasses()
                .should()
                .callConstructor(InputStreamReader.class, java.io.InputStream.class)
                .orShould()
                .callConstructor(OutputStreamWriter.class, java.io.OutputStream.class)
                .orShould()
                .callConstructor(java.io.FileReader.class, java.io.File.class)
                .orShould()
                .callConstructor(java.io.FileReader.class, String.class)
                .orShould()
                .callConstructor(java.io.FileWriter.class, java.io.File.class)
                .orShould()
                .callConstructor(java.io.FileWriter.class, String.class)
                .orShould()
                .callMethod(String.class, "getBytes")
                .orShould()
                .callConstructor(String.class, byte[].class)
                .because("an umlaut in a path or a note must survive the way to another machine")
                .check(Classes.OF_PROGRAM);
    }

    @Test
    @DisplayName("A record that other rooms can see holds no array")
    void noArrayInARecord() {
        noFields()
                .that()
                .areDeclaredInClassesThat()
                .areRecords()
                .and()
                .areDeclaredInClassesThat()
                .arePublic()
                .and()
                .areNotStatic()
                .should(have(DescribedPredicate.<JavaField>describe(
                        "an array type", field -> field.getRawType().isArray())))
                .because("a record promises to stay as it is and to compare by content; an array does neither")
                .check(Classes.OF_PROGRAM);
    }

    @Test
    @DisplayName("No class is named for being useful")
    void noUtilities() {
        noClasses()
                .should()
                .haveNameMatching(".*(Util|Utils|Utility|Helper|Helpers|Manager)(\\$.*)?")
                .because("such a name says nothing about what is inside, so everything ends up in it")
                .check(Classes.OF_PROGRAM);
    }

    private static DescribedPredicate<JavaCall<?>> namedWithoutLocale() {
        return target(DescribedPredicate.<CodeUnitCallTarget>describe(
                "a call that formats or changes case by the machine's language", HabitsTest::dependsOnLanguage));
    }

    private static boolean dependsOnLanguage(CodeUnitCallTarget called) {
        JavaClass owner = called.getOwner();
        List<JavaClass> parameters = new ArrayList<>(called.getRawParameterTypes());
        boolean takesLocale = parameters.stream()
                .anyMatch(type -> type.isEquivalentTo(java.util.Locale.class)
                        || type.isEquivalentTo(java.text.DecimalFormatSymbols.class));
        if (takesLocale) {
            return false;
        }
        String name = called.getName();
        if (owner.isEquivalentTo(String.class)) {
            return Set.of("format", "formatted", "toLowerCase", "toUpperCase").contains(name);
        }
        if (owner.isAssignableTo(java.io.PrintStream.class) || owner.isAssignableTo(java.io.PrintWriter.class)) {
            return Set.of("printf", "format").contains(name);
        }
        boolean made = name.equals("<init>");
        return made && (owner.isEquivalentTo(Formatter.class) || owner.isEquivalentTo(DecimalFormat.class))
                || made && owner.isEquivalentTo(Scanner.class)
                || owner.isEquivalentTo(NumberFormat.class) && name.startsWith("get") && name.endsWith("Instance");
    }
}
