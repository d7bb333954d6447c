package eaveside.architecture;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import com.tngtech.archunit.lang.syntax.elements.GivenClassesConjunction;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What lies between a module's contract and its internals, as rules. */
final class Rooms {
    private Rooms() {}

    /**
     * A use case leans on its internals, and both on the records of the contract. Internals that lean on a use case could
     * not be understood, or tested, before it.
     */
    static ArchRule internalsNeverLeanOnWhatLeansOnThem(String base) {
        return internals(base).should(new ArchCondition<JavaClass>("not lean on what leans on them") {
            @Override
            public void check(JavaClass item, ConditionEvents events) {
                JavaClass own = outermost(item);
                String module = contract(item);
                leansOn(own)
                        .filter(other -> other.getPackageName().equals(module))
                        .filter(other -> reaches(other, own, module, new HashSet<>()))
                        .forEach(other -> events.add(SimpleConditionEvent.violated(
                                item, own.getFullName() + " and " + other.getFullName() + " lean on each other")));
            }
        });
    }

    private static boolean reaches(JavaClass from, JavaClass to, String module, Set<JavaClass> seen) {
        return seen.add(from)
                && leansOn(from)
                        .filter(other -> (other.getPackageName() + ".").startsWith(module + "."))
                        .anyMatch(other -> other.equals(to) || reaches(other, to, module, seen));
    }

    /** Of a class with all that is nested in it. */
    private static Stream<JavaClass> leansOn(JavaClass outermost) {
        return outermost.getPackage().getClasses().stream()
                .filter(part -> outermost(part).equals(outermost))
                .flatMap(part -> part.getDirectDependenciesFromSelf().stream())
                .map(dependency -> outermost(dependency.getTargetClass().getBaseComponentType()))
                .filter(other -> !other.equals(outermost))
                .distinct();
    }

    /** By the sources: the type of a local variable leaves no trace in a class file. */
    private static final Set<String> IMPORTED = imported();

    private static Set<String> imported() {
        Set<String> imported = new HashSet<>();
        for (String module : Modules.read().services()) {
            for (Path source : Modules.read().sources(module)) {
                try (Stream<String> lines = Files.lines(source)) {
                    lines.filter(line -> line.startsWith("import ") && line.contains(".internal."))
                            .forEach(line -> imported.add(line.substring("import ".length(), line.indexOf(';'))));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        }
        return imported;
    }

    /** What only its own package uses is of that package. */
    static ArchRule internalsArePrivateToTheirPackage(String base) {
        return internals(base).should(new ArchCondition<JavaClass>("be public only for the contract's sake") {
            @Override
            public void check(JavaClass item, ConditionEvents events) {
                // Expressions of compiled papers are classes of no package; they call these.
                boolean ofPapers = item.getPackageName().endsWith(".reports.internal");
                boolean generated = item.getSimpleName().endsWith("_")
                        || item.getSimpleName().startsWith("_")
                        || item.getSimpleName().equals("package-info");
                boolean used = item.getDirectDependenciesToSelf().stream()
                                .anyMatch(dependency -> !dependency
                                        .getOriginClass()
                                        .getPackageName()
                                        .equals(item.getPackageName()))
                        || IMPORTED.contains(item.getName());
                if (item.isTopLevelClass()
                        && item.getModifiers().contains(JavaModifier.PUBLIC)
                        && !generated
                        && !ofPapers
                        && !used) {
                    events.add(SimpleConditionEvent.violated(
                            item, item.getFullName() + " is public, and only its own package uses it"));
                }
            }
        });
    }

    /**
     * Who did what stands on the audit log in the transaction of the deed: a use case that changes something tells it itself,
     * through one of its internals, or by the protocol of edits or of postings.
     */
    static ArchRule deedsAreTold(String base) {
        return ArchRuleDefinition.classes()
                .that(new DescribedPredicate<JavaClass>("are use cases that change something") {
                    @Override
                    public boolean test(JavaClass type) {
                        return type.getPackageName().matches(Pattern.quote(base) + "\\.\\w+")
                                && Modules.read().services().contains(module(base, type))
                                && !READING.matcher(type.getSimpleName()).find()
                                && !TOLD_BY_OTHERS.contains(type.getName())
                                && type.getMethods().stream().anyMatch(Rooms::opensTransaction);
                    }
                })
                .should(new ArchCondition<JavaClass>("tell the audit log") {
                    @Override
                    public void check(JavaClass item, ConditionEvents events) {
                        boolean tells = Stream.concat(Stream.of(item), leansOn(item))
                                .filter(type -> (type.getPackageName() + ".").startsWith(item.getPackageName() + "."))
                                .flatMap(Rooms::leansOn)
                                .anyMatch(type -> TELLERS.contains(type.getName()));
                        if (!tells) {
                            events.add(SimpleConditionEvent.violated(item, item.getFullName() + " tells nobody"));
                        }
                    }
                });
    }

    /** What joins another's transaction is part of another's deed. */
    private static boolean opensTransaction(JavaMethod method) {
        return method.isAnnotatedWith(Transactional.class)
                && method.getAnnotationOfType(Transactional.class).value() != Transactional.TxType.MANDATORY;
    }

    private static final Pattern READING = Pattern.compile("^(Read|Find|Price[A-Z]|Names$|Books$|Catalog$)");

    private static final Set<String> TELLERS =
            Set.of("eaveside.access.RecordAudit", "eaveside.access.Edits", "eaveside.ledger.Posting");

    /** Those that only read under another name or keep what was answered for a deed that is told, the log itself, and the first of all deeds, which nobody here did. */
    private static final Set<String> TOLD_BY_OTHERS = Set.of(
            "eaveside.access.AuthenticateToken",
            "eaveside.access.BeginSession",
            "eaveside.access.KeepAnswers",
            "eaveside.access.ResumeSession",
            "eaveside.access.RecordAudit",
            "eaveside.catalog.TaxSettings",
            "eaveside.costing.ApplyVisitCost",
            "eaveside.ledger.FoundCompany",
            "eaveside.visits.BillableVisit");

    private static String module(String base, JavaClass type) {
        return type.getPackageName().substring(base.length() + 1).split("\\.", 2)[0];
    }

    private static GivenClassesConjunction internals(String base) {
        return ArchRuleDefinition.classes().that().resideInAPackage(base + ".*.internal");
    }

    private static String contract(JavaClass internal) {
        return internal.getPackageName().replaceFirst("\\.internal$", "");
    }

    private static JavaClass outermost(JavaClass type) {
        JavaClass outer = type;
        while (outer.getEnclosingClass().isPresent()) {
            outer = outer.getEnclosingClass().get();
        }
        return outer;
    }
}
