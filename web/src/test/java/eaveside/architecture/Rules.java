package eaveside.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.lang.conditions.ArchPredicates.are;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import eaveside.kernel.Decision;
import eaveside.web.security.For;
import eaveside.web.security.Open;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** The structure that the design promises, as rules; {@code base} is the package that the modules lie in. */
final class Rules {
    /** From left to right: a module leans only on those before it. */
    static final List<String> MODULES = List.of(
            "schema",
            "kernel",
            "access",
            "ledger",
            "customers",
            "serviceItems",
            "costing",
            "inventory",
            "pricing",
            "findings",
            "visits",
            "invoicing",
            "margins",
            "reports",
            "demo",
            "web",
            "deploy");

    private static final Set<String> SERVICES = Set.copyOf(MODULES.subList(2, MODULES.indexOf("reports")));

    private Rules() {}

    static ArchRule modulesLeanLeft(String base) {
        return classes()
                .that()
                .resideInAPackage(base + "..")
                .should(new ArchCondition<JavaClass>("lean only on modules to their left") {
                    @Override
                    public void check(JavaClass item, ConditionEvents events) {
                        int own = MODULES.indexOf(module(base, item));
                        item.getDirectDependenciesFromSelf().stream()
                                .filter(d -> {
                                    int other = MODULES.indexOf(module(base, d.getTargetClass()));
                                    return own >= 0 && other > own;
                                })
                                .forEach(d -> events.add(SimpleConditionEvent.violated(item, d.getDescription())));
                    }
                });
    }

    static ArchRule internalIsPrivate(String base) {
        return classes()
                .that()
                .resideInAPackage(base + "..")
                .should(new ArchCondition<JavaClass>("keep out of other modules' internal packages") {
                    @Override
                    public void check(JavaClass item, ConditionEvents events) {
                        String own = module(base, item);
                        item.getDirectDependenciesFromSelf().stream()
                                .filter(d -> d.getTargetClass().getPackageName().matches(".*\\.internal(\\..*)?"))
                                .filter(d -> d.getTargetClass().getPackageName().startsWith(base))
                                .filter(d -> !module(base, d.getTargetClass()).equals(own))
                                .forEach(d -> events.add(SimpleConditionEvent.violated(item, d.getDescription())));
                    }
                });
    }

    static ArchRule decisionsArePlain() {
        return noClasses()
                .that()
                .areAnnotatedWith(Decision.class)
                .should()
                .dependOnClassesThat(resideInAnyPackage("jakarta..", "org.hibernate..", "java.sql..", "javax.sql..")
                        .or(type(Clock.class)));
    }

    static ArchRule transactionsOnlyAtUseCases(String base) {
        return methods()
                .that()
                .areAnnotatedWith(Transactional.class)
                .should(new ArchCondition<JavaMethod>("belong to a use case, or be the reading of a page") {
                    @Override
                    public void check(JavaMethod method, ConditionEvents events) {
                        JavaClass owner = method.getOwner();
                        boolean useCase = SERVICES.stream()
                                .anyMatch(m -> owner.getPackageName().equals(base + "." + m));
                        boolean reading = method.isAnnotatedWith(GET.class)
                                || owner.getSimpleName().equals("Viewer")
                                || owner.getSimpleName().equals("Names");
                        // The gate counts a failure before the slow password check and keeps no connection through it.
                        boolean gate = owner.getSimpleName().equals("SignInGate");
                        if (!useCase
                                && !gate
                                && !(module(base, owner).equals("web") && reading)
                                && !module(base, owner).equals("demo")) {
                            events.add(SimpleConditionEvent.violated(
                                    method, method.getFullName() + " opens a transaction"));
                        }
                    }
                });
    }

    static ArchRule timeComesFromAClock() {
        return classes().should(new ArchCondition<JavaClass>("take the time from a Clock") {
            @Override
            public void check(JavaClass item, ConditionEvents events) {
                if (item.getSimpleName().equals("ClockProducer")) {
                    return; // the one place that asks the machine
                }
                for (JavaAccess<?> access : item.getAccessesFromSelf()) {
                    String owner = access.getTargetOwner().getName();
                    boolean now = access.getName().equals("now")
                            && owner.startsWith("java.time.")
                            && access.getTarget().getFullName().endsWith("now()");
                    boolean system =
                            (owner.equals("java.time.Clock") && access.getName().startsWith("system"))
                                    || (owner.equals("java.lang.System")
                                            && access.getName().equals("currentTimeMillis"));
                    if (now || system) {
                        events.add(SimpleConditionEvent.violated(item, access.getDescription()));
                    }
                }
            }
        });
    }

    static ArchRule everyAddressSaysWhoMayCall() {
        return methods()
                .that(new DescribedPredicate<JavaMethod>("answer requests") {
                    @Override
                    public boolean test(JavaMethod method) {
                        return method.isAnnotatedWith(GET.class)
                                || method.isAnnotatedWith(POST.class)
                                || method.isAnnotatedWith(PUT.class)
                                || method.isAnnotatedWith(DELETE.class);
                    }
                })
                .should(new ArchCondition<JavaMethod>("say who may call them") {
                    @Override
                    public void check(JavaMethod method, ConditionEvents events) {
                        boolean said = method.isAnnotatedWith(For.class)
                                || method.isAnnotatedWith(Open.class)
                                || method.getOwner().isAnnotatedWith(For.class)
                                || method.getOwner().isAnnotatedWith(Open.class);
                        if (!said) {
                            events.add(
                                    SimpleConditionEvent.violated(method, method.getFullName() + " is open to nobody"));
                        }
                    }
                });
    }

    /** Money, quantities and times of a contract are typed: no bare number of the types that lose or mix units. */
    static ArchRule nothingTravelsNaked(String base) {
        return methods()
                .that()
                .areDeclaredInClassesThat(are(resideInAPackage(base + "..")))
                .and()
                .areDeclaredInClassesThat(new DescribedPredicate<JavaClass>("form a module's contract") {
                    @Override
                    public boolean test(JavaClass type) {
                        return SERVICES.stream()
                                .anyMatch(m -> type.getPackageName().equals(base + "." + m));
                    }
                })
                .should(new ArchCondition<JavaMethod>("use no binary floating point") {
                    @Override
                    public void check(JavaMethod method, ConditionEvents events) {
                        List<String> types = new ArrayList<>(method.getRawParameterTypes().stream()
                                .map(JavaClass::getName)
                                .toList());
                        types.add(method.getRawReturnType().getName());
                        for (String naked : List.of("double", "float", "java.lang.Double", "java.lang.Float")) {
                            if (types.contains(naked) && method.getModifiers().contains(JavaModifier.PUBLIC)) {
                                events.add(
                                        SimpleConditionEvent.violated(method, method.getFullName() + " uses " + naked));
                            }
                        }
                    }
                });
    }

    private static String module(String base, JavaClass item) {
        String name = item.getPackageName();
        if (!name.startsWith(base + ".")) {
            return "";
        }
        return name.substring(base.length() + 1).split("\\.", 2)[0];
    }
}
