package eaveside.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.simpleNameEndingWith;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.core.domain.properties.CanBeAnnotated.Predicates.annotatedWith;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import eaveside.kernel.Decision;
import eaveside.kernel.Shared;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.MappedSuperclass;
import jakarta.servlet.Servlet;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The structure that the design promises, as rules; {@code base} is the package that the modules lie in. */
final class Rules {
    private static final Modules MODULES = Modules.read();

    private static final Set<String> SERVICES = Set.copyOf(MODULES.services());

    private Rules() {}

    /** What another module's POM does not bring along must not be used, even where a module beside it does bring it. */
    static ArchRule modulesLeanOnTheirPoms(String base) {
        return classes()
                .that()
                .resideInAPackage(base + "..")
                .should(new ArchCondition<JavaClass>("lean only on modules that their POM leads to") {
                    @Override
                    public void check(JavaClass item, ConditionEvents events) {
                        String own = module(base, item);
                        Set<String> reach = MODULES.reach(own);
                        item.getDirectDependenciesFromSelf().stream()
                                .filter(d -> {
                                    String other = module(base, d.getTargetClass());
                                    return MODULES.names().contains(own)
                                            && MODULES.names().contains(other)
                                            && !reach.contains(other);
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
                    if (asksTheMachine(access)) {
                        events.add(SimpleConditionEvent.violated(item, access.getDescription()));
                    }
                }
            }
        });
    }

    /** {@code now()} and {@code now(zone)}, called or referred to, and the older ways; {@code now(clock)} is the right one. */
    private static boolean asksTheMachine(JavaAccess<?> access) {
        String owner = access.getTargetOwner().getName();
        String name = access.getName();
        String target = access.getTarget().getFullName();
        return switch (owner) {
            case "java.time.Clock" ->
                name.startsWith("system") || name.startsWith("tick") && !target.contains("Clock,");
            case "java.lang.System" -> name.equals("currentTimeMillis");
            case "java.util.Date" -> target.endsWith("<init>()");
            case "java.util.Calendar", "java.util.GregorianCalendar" ->
                name.equals("getInstance") || target.endsWith("<init>()");
            default -> owner.startsWith("java.time.") && name.equals("now") && !target.endsWith("now(java.time.Clock)");
        };
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
                        boolean said = method.isAnnotatedWith(RolesAllowed.class)
                                || method.isAnnotatedWith(PermitAll.class)
                                || resources(method)
                                        .allMatch(resource -> resource.isAnnotatedWith(RolesAllowed.class)
                                                || resource.isAnnotatedWith(PermitAll.class));
                        if (!said) {
                            events.add(
                                    SimpleConditionEvent.violated(method, method.getFullName() + " is open to nobody"));
                        }
                    }
                });
    }

    /** What answers in another way stands in no list of doors. */
    static ArchRule addressesAreResources(String root) {
        return classes()
                .that(resideInAPackage(root + ".."))
                .should(new ArchCondition<JavaClass>("answer as resources alone") {
                    @Override
                    public void check(JavaClass found, ConditionEvents events) {
                        boolean known = found.getName().equals("eaveside.web.security.FailureServlet");
                        if (found.isAssignableTo(Servlet.class) && !known) {
                            events.add(SimpleConditionEvent.violated(found, found.getName() + " is a servlet"));
                        }
                        for (JavaMethod method : found.getMethods()) {
                            boolean asked = method.getAnnotations().stream()
                                    .anyMatch(annotation ->
                                            annotation.getRawType().isMetaAnnotatedWith(HttpMethod.class)
                                                    || annotation.getRawType().isAnnotatedWith(HttpMethod.class));
                            if (method.isAnnotatedWith(Path.class) && !asked) {
                                events.add(SimpleConditionEvent.violated(method, method.getFullName() + " leads on"));
                            }
                        }
                    }
                });
    }

    /** The classes at whose addresses the method answers: its own, or those that inherit it. */
    private static Stream<JavaClass> resources(JavaMethod method) {
        return isAbstract(method.getOwner())
                ? method.getOwner().getAllSubclasses().stream().filter(resource -> !isAbstract(resource))
                : Stream.of(method.getOwner());
    }

    private static boolean isAbstract(JavaClass type) {
        return type.getModifiers().contains(JavaModifier.ABSTRACT);
    }

    /**
     * What a module's contract takes and gives is typed: no binary floating point, no bare id, and no bare number or text where
     * the name says that it is money or an identity.
     */
    static ArchRule nothingTravelsNaked(String base) {
        return classes()
                .that(new DescribedPredicate<JavaClass>("form a module's contract") {
                    @Override
                    public boolean test(JavaClass type) {
                        return SERVICES.stream()
                                        .filter(service -> !service.equals("kernel"))
                                        .anyMatch(m -> type.getPackageName().equals(base + "." + m))
                                && type.getModifiers().contains(JavaModifier.PUBLIC)
                                && !type.isAssignableTo(RuntimeException.class);
                    }
                })
                .should(new ArchCondition<JavaClass>("take and give no naked values") {
                    @Override
                    public void check(JavaClass type, ConditionEvents events) {
                        if (isOneTypedValue(type)) {
                            return;
                        }
                        type.getMethods().stream()
                                .filter(method -> method.getModifiers().contains(JavaModifier.PUBLIC))
                                .filter(method -> Stream.concat(
                                                method.getRawParameterTypes().stream(),
                                                Stream.of(method.getRawReturnType()))
                                        .anyMatch(used -> NAKED.contains(used.getName())))
                                .forEach(method ->
                                        events.add(SimpleConditionEvent.violated(method, method.getFullName())));
                        if (type.isRecord()) {
                            type.getFields().stream()
                                    .filter(field -> !field.getModifiers().contains(JavaModifier.STATIC))
                                    .filter(field -> !OF_NO_UNIT.contains(field.getFullName()))
                                    .filter(field -> NAKED_BY_NAME
                                                            .matcher(field.getName())
                                                            .find()
                                                    && BARE.contains(
                                                            field.getRawType().getName())
                                            || field.getRawType().getName().equals("java.math.BigDecimal"))
                                    .forEach(field ->
                                            events.add(SimpleConditionEvent.violated(field, field.getFullName())));
                        }
                    }
                });
    }

    /** Of a row's columns only its own key is bare, since converters do not apply to keys. */
    static ArchRule rowsHoldIdsTyped(String base) {
        return fields().that()
                .areDeclaredInClassesThat(resideInAPackage(base + "..")
                        .and(annotatedWith(Entity.class)
                                .or(annotatedWith(MappedSuperclass.class))
                                .or(annotatedWith(Embeddable.class)))
                        .and(not(simpleNameEndingWith("Key"))))
                .and()
                .areNotAnnotatedWith(Id.class)
                .should()
                .notHaveRawType(UUID.class);
    }

    /** A record of nothing but a value is what gives the value its type. */
    private static boolean isOneTypedValue(JavaClass type) {
        return type.isRecord()
                && type.getFields().stream()
                        .filter(field -> !field.getModifiers().contains(JavaModifier.STATIC))
                        .map(JavaMember::getName)
                        .toList()
                        .equals(List.of("value"));
    }

    private static final Set<String> NAKED =
            Set.of("double", "float", "java.lang.Double", "java.lang.Float", "java.util.UUID", "java.util.Date");

    private static final Set<String> BARE =
            Set.of("int", "long", "java.lang.Integer", "java.lang.Long", "java.lang.String", "java.math.BigDecimal");

    /** A ratio has no unit; a price's discount is in the price's own. */
    private static final Set<String> OF_NO_UNIT =
            Set.of("eaveside.inventory.MixRatio.parts", "eaveside.invoicing.ItemPrice.discount");

    private static final Pattern NAKED_BY_NAME =
            Pattern.compile("^(id|.*Id|amount|price|cost|total|fee|balance|quantity|rate)$");

    /**
     * A class of a service that knows no container decides by its values alone, and says so, that it is held to it: see {@link
     * #decisionsArePlain}.
     */
    static ArchRule plainClassesAreMarked(String base) {
        return classes()
                .that(new DescribedPredicate<JavaClass>("are plain classes of a service with something to decide") {
                    @Override
                    public boolean test(JavaClass type) {
                        return SERVICES.contains(module(base, type))
                                && !module(base, type).equals("kernel")
                                && type.isTopLevelClass()
                                && !type.isInterface()
                                && !type.isEnum()
                                && !type.isRecord()
                                && type.getMethods().stream()
                                        .anyMatch(
                                                method -> !method.getModifiers().contains(JavaModifier.PRIVATE))
                                && !type.isAssignableTo(Throwable.class)
                                && !type.isAnnotatedWith(Shared.class)
                                && !GENERATED.matcher(type.getSimpleName()).find()
                                && type.getDirectDependenciesFromSelf().stream()
                                        .noneMatch(d -> CONTAINERS
                                                .matcher(d.getTargetClass().getPackageName())
                                                .find())
                                && !PARTS_OF_A_PROTOCOL.contains(type.getFullName());
                    }
                })
                .should()
                .beAnnotatedWith(Decision.class);
    }

    private static final Pattern GENERATED = Pattern.compile("_$|^_");

    private static final Pattern CONTAINERS =
            Pattern.compile("^(jakarta|org\\.hibernate|java\\.sql|javax\\.sql)(\\.|$)");

    /** What a use case hands to the protocol that it goes by: it says something, and decides nothing. */
    private static final Set<String> PARTS_OF_A_PROTOCOL =
            Set.of("eaveside.ledger.Decided", "eaveside.ledger.Lock", "eaveside.ledger.Lock$Rank");

    static String module(String base, JavaClass item) {
        String name = item.getPackageName();
        if (!name.startsWith(base + ".")) {
            return "";
        }
        return name.substring(base.length() + 1).split("\\.", 2)[0];
    }
}
