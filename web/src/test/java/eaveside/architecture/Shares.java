package eaveside.architecture;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.properties.CanBeAnnotated;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import eaveside.kernel.Shared;
import eaveside.reports.Papers;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.util.Set;
import java.util.stream.Stream;

/** What one instance for all requests may hold, and that services are such instances, as rules. */
final class Shares {
    private static final Set<String> SERVICES = Set.copyOf(Modules.read().services());

    private Shares() {}

    /** Two requests at once would write over what the other left in a field. */
    static ArchRule sharedHoldOnlyTheirParts() {
        return ArchRuleDefinition.classes()
                .that()
                .areAnnotatedWith(Shared.class)
                .should(new ArchCondition<JavaClass>("hold nothing but parts, set once") {
                    @Override
                    public void check(JavaClass item, ConditionEvents events) {
                        item.getAllFields().stream()
                                .filter(field -> !field.getModifiers().contains(JavaModifier.STATIC))
                                .filter(field -> !isPart(field) || !isSetOnce(field))
                                .forEach(field -> events.add(SimpleConditionEvent.violated(
                                        item, field.getFullName() + " is no part that is set once")));
                    }
                });
    }

    /** Parts of parts, made anew for each request, cost more than the page that they serve. */
    static ArchRule whatIsGivenItsPartsIsShared(String base) {
        return ArchRuleDefinition.constructors()
                .that()
                .areAnnotatedWith(Inject.class)
                .and()
                .areDeclaredInClassesThat(new DescribedPredicate<JavaClass>("are services") {
                    @Override
                    public boolean test(JavaClass item) {
                        return SERVICES.contains(Rules.module(base, item))
                                && !item.getSimpleName().endsWith("_");
                    }
                })
                .should()
                .beDeclaredInClassesThat(CanBeAnnotated.Predicates.annotatedWith(Shared.class)
                        .or(CanBeAnnotated.Predicates.annotatedWith(ApplicationScoped.class)));
    }

    private static boolean isSetOnce(JavaField field) {
        return field.getModifiers().contains(JavaModifier.FINAL) || field.isAnnotatedWith(Inject.class);
    }

    /** What is shared itself, knows its request, or is given out by the container for any thread to use. */
    private static boolean isPart(JavaField field) {
        JavaClass type = field.getRawType();
        return type.isAnnotatedWith(Shared.class)
                || type.isAnnotatedWith(ApplicationScoped.class)
                || type.isAnnotatedWith(RequestScoped.class)
                || type.isInterface() && type.getPackageName().startsWith("eaveside.")
                || Stream.of(EntityManager.class, Clock.class, Papers.class).anyMatch(type::isEquivalentTo);
    }
}
