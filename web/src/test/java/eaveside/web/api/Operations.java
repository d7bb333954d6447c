package eaveside.web.api;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import eaveside.access.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The operations of the interface for scripts, read from the compiled resources, so that none can be forgotten. */
final class Operations {
    /**
     * One of them.
     *
     * @param template such as {@code /api/invoices/{id}}, without the patterns that a part may have
     * @param takes    whether a method parameter is the request's body
     */
    record Operation(String method, String template, Set<Role> roles, boolean takes) {
        String name() {
            return method + " " + template;
        }

        private boolean isAt(String path) {
            return Pattern.matches(template.replaceAll("\\{[^}]*}", "[^/]+"), path);
        }

        private long parameters() {
            return template.chars().filter(c -> c == '{').count();
        }
    }

    private static final List<Operation> ALL = read();

    private Operations() {}

    /** By address and method. */
    static List<Operation> all() {
        return ALL;
    }

    /** The operation that a request asks for; of several that fit, the one that names more of the address. */
    static Optional<Operation> of(String method, String path) {
        String plain = "/" + path.replaceFirst("^/", "").replaceFirst("\\?.*", "");
        return ALL.stream()
                .filter(operation -> operation.method().equals(method) && operation.isAt(plain))
                .min(Comparator.comparingLong(Operation::parameters));
    }

    private static List<Operation> read() {
        return new ClassFileImporter()
                        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                        .withImportOption(location -> !location.contains("/templates/"))
                        .importPackages("eaveside.web")
                        .stream()
                        .filter(type -> type.isAnnotatedWith(Path.class))
                        .map(JavaClass::reflect)
                        .filter(type -> address(type.getAnnotation(Path.class)).startsWith("/api/"))
                        .flatMap(Operations::of)
                        .sorted(Comparator.comparing(Operation::template).thenComparing(Operation::method))
                        .toList();
    }

    private static Stream<Operation> of(Class<?> resource) {
        return Stream.of(resource.getMethods())
                .flatMap(method -> Stream.of(method.getAnnotations())
                        .map(annotation -> annotation.annotationType().getAnnotation(HttpMethod.class))
                        .filter(verb -> verb != null)
                        .map(verb -> operation(resource, method, verb.value())));
    }

    private static Operation operation(Class<?> resource, Method method, String verb) {
        Path own = method.getAnnotation(Path.class);
        String template = (address(resource.getAnnotation(Path.class))
                        + (own == null ? "" : address(own).replaceFirst("/$", "")))
                .replaceAll("\\{(\\w+):[^}]*\\](\\{\\d+})?}", "{$1}");
        RolesAllowed roles = method.isAnnotationPresent(RolesAllowed.class)
                ? method.getAnnotation(RolesAllowed.class)
                : resource.getAnnotation(RolesAllowed.class);
        boolean takes = Stream.of(method.getParameterAnnotations()).anyMatch(Operations::isBody);
        Set<Role> may = new TreeSet<>();
        for (String role : roles == null ? new String[0] : roles.value()) {
            may.add(Role.valueOf(role));
        }
        return new Operation(verb, template, may, takes);
    }

    private static boolean isBody(Annotation[] onParameter) {
        return Stream.of(onParameter)
                .noneMatch(annotation -> annotation.annotationType().getName().startsWith("jakarta.ws.rs."));
    }

    private static String address(Path path) {
        return "/" + path.value().replaceFirst("^/", "");
    }
}
