package eaveside.web.security;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import eaveside.access.Duty;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * One thing that can be asked of the application, and whom its resource class lets in.
 *
 * @param  path  with its braces
 * @param  takes the type of its body
 * @param  roles empty where it is open to everybody
 * @param  sees  what else one must be allowed to see; empty for nothing
 * @param  administers whether a script's token has to be issued for that
 * @param  before what somebody may owe who comes here
 */
record Door(
        String method,
        String path,
        String takes,
        Set<String> roles,
        String sees,
        boolean administers,
        Set<Duty> before) {
    boolean isOpen() {
        return roles.isEmpty();
    }

    /** Where people do what they owe: it leads to a session, which no script gets. */
    boolean isForPeople() {
        return !before.isEmpty();
    }

    /** As a person decides on it, on one line. */
    String line() {
        return "%-6s %-55s %s%s%s%s"
                .formatted(
                        method,
                        path,
                        isOpen() ? "everybody" : String.join(" ", roles),
                        sees.isEmpty() ? "" : ", who sees " + sees,
                        administers ? ", scripts that administer" : "",
                        isForPeople() ? ", no scripts, also before " + before : "");
    }

    /** Every door of the application, from its classes. */
    static List<Door> all() {
        return new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("eaveside.web").stream()
                        .filter(found -> found.isAnnotatedWith(Path.class))
                        .map(JavaClass::reflect)
                        .flatMap(resource -> Arrays.stream(resource.getMethods())
                                .filter(method -> methodOf(method) != null)
                                .map(method -> of(resource, method)))
                        .sorted(Comparator.comparing(Door::path).thenComparing(Door::method))
                        .toList();
    }

    private static Door of(Class<?> resource, Method method) {
        Path own = method.getAnnotation(Path.class);
        String path = ("/" + resource.getAnnotation(Path.class).value() + "/" + (own == null ? "" : own.value()))
                .replaceAll("\\{(\\w+)\\s*:\\s*(?:[^{}]|\\{[^{}]*\\})*\\}", "{$1}")
                .replaceAll("/+", "/")
                .replaceAll("(.)/$", "$1");
        RolesAllowed allowed = said(resource, method, RolesAllowed.class);
        boolean open =
                said(resource, method, PermitAll.class) != null && !method.isAnnotationPresent(RolesAllowed.class);
        Sees sees = said(resource, method, Sees.class);
        BeforeDuties before = said(resource, method, BeforeDuties.class);
        Consumes takes = inherited(resource, method);
        return new Door(
                String.valueOf(methodOf(method)),
                path,
                takes == null ? "" : takes.value()[0],
                open || allowed == null
                        ? Set.of()
                        : Arrays.stream(allowed.value()).collect(Collectors.toCollection(TreeSet::new)),
                sees == null ? "" : sees.value().name(),
                said(resource, method, Administers.class) != null,
                before == null ? Set.of() : new TreeSet<>(List.of(before.value())));
    }

    private static @Nullable String methodOf(Method method) {
        return Stream.of(method.getAnnotations())
                .map(annotation -> annotation.annotationType().getAnnotation(HttpMethod.class))
                .filter(found -> found != null)
                .map(HttpMethod::value)
                .findFirst()
                .orElse(null);
    }

    private static <A extends Annotation> @Nullable A said(Class<?> resource, Method method, Class<A> type) {
        A own = method.getAnnotation(type);
        return own != null ? own : resource.getAnnotation(type);
    }

    private static @Nullable Consumes inherited(Class<?> resource, Method method) {
        Consumes own = method.getAnnotation(Consumes.class);
        for (Class<?> type = resource; own == null && type != null; type = type.getSuperclass()) {
            own = type.getAnnotation(Consumes.class);
        }
        return own;
    }
}
