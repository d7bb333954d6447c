package eaveside.web;

import eaveside.web.forms.Created;
import eaveside.web.forms.Schemas;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.jspecify.annotations.Nullable;

/** One operation for scripts: what its method and annotations say of address, body and answers. */
record ApiOperation(Class<?> resource, Method method, String verb) {
    private static final Pattern IN_BRACES = Pattern.compile("\\{(\\w+)\\s*(?::\\s*((?:[^{}]|\\{[^{}]*})*))?}");

    /** A parameter of the address. */
    record Said(String name, boolean inPath, Map<String, Object> schema, boolean required) {}

    private String template() {
        Path own = method.getAnnotation(Path.class);
        String whole = resource.getAnnotation(Path.class).value() + "/" + (own == null ? "" : own.value());
        return whole.replaceAll("/+", "/").replaceAll("(.)/$", "$1");
    }

    /** With the names of its parameters in braces. */
    String path() {
        return IN_BRACES.matcher(template()).replaceAll("{$1}");
    }

    /** What the path says. */
    Set<String> inPath() {
        return inBraces().map(found -> found.group(1)).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private Stream<MatchResult> inBraces() {
        return IN_BRACES.matcher(template()).results();
    }

    List<Said> parameters() {
        Stream<Said> inQuery = Arrays.stream(method.getParameters())
                .filter(parameter -> parameter.isAnnotationPresent(QueryParam.class))
                .map(parameter ->
                        new Said(parameter.getAnnotation(QueryParam.class).value(), false, query(parameter), false));
        return Stream.concat(inBraces().map(this::inPath), inQuery).toList();
    }

    private Said inPath(MatchResult braces) {
        String name = braces.group(1);
        Map<String, Object> schema = Arrays.stream(method.getParameters())
                .filter(parameter -> parameter.getAnnotation(PathParam.class) instanceof PathParam path
                        && path.value().equals(name))
                .findFirst()
                .map(parameter -> Schemas.parameter(parameter.getType()))
                .orElseGet(() -> Schemas.parameter(body(), name));
        String pattern = braces.group(2);
        return new Said(
                name,
                true,
                pattern == null ? schema : Schemas.with(schema, "pattern", "^(" + pattern.strip() + ")$"),
                true);
    }

    private static Map<String, Object> query(Parameter parameter) {
        Class<?> type = parameter.getType();
        Map<String, Object> schema = Schemas.parameter(type);
        if (type.isEnum()) {
            // A choice is named in an address as it calls itself; see Parameters.
            List<String> names =
                    Stream.of(type.getEnumConstants()).map(Object::toString).toList();
            schema = Schemas.with(schema, "enum", names);
        }
        DefaultValue given = parameter.getAnnotation(DefaultValue.class);
        String text = given != null ? given.value() : type == boolean.class ? "false" : "";
        return text.isEmpty() ? schema : Schemas.withDefault(schema, text);
    }

    /** The parameter that the body is read into. */
    private Optional<Parameter> bodyParameter() {
        return Arrays.stream(method.getParameters())
                .filter(parameter -> !parameter.isAnnotationPresent(PathParam.class)
                        && !parameter.isAnnotationPresent(QueryParam.class))
                .findFirst();
    }

    boolean hasBody() {
        return bodyParameter().isPresent();
    }

    /** The record that a body describes; null where there is no body, or it is none. */
    @Nullable
    Class<?> body() {
        RequestBody said = method.getAnnotation(RequestBody.class);
        if (said != null) {
            return said.content()[0].schema().implementation();
        }
        return bodyParameter().map(Parameter::getType).filter(Class::isRecord).orElse(null);
    }

    /** What the body need not say although the record must have it. */
    Set<String> given() {
        Set<String> given = inPath();
        Class<?> body = body();
        Set<String> members = new LinkedHashSet<>();
        if (body != null) {
            Arrays.stream(body.getRecordComponents()).forEach(part -> members.add(part.getName()));
        }
        given.retainAll(members);
        RequestBody said = method.getAnnotation(RequestBody.class);
        if (said != null) {
            members.removeAll(Set.of(said.content()[0].schema().requiredProperties()));
            given.addAll(members);
        }
        return given;
    }

    String takes() {
        return Objects.requireNonNull(says(Consumes.class)).value()[0];
    }

    /** 201 where something is made at an address of its own, 204 where nothing is answered. */
    int success() {
        return method.getReturnType() == Created.class ? 201 : method.getReturnType() == void.class ? 204 : 200;
    }

    /** The one record that is answered, or those of which one is. */
    List<Type> answers() {
        APIResponse said = method.getAnnotation(APIResponse.class);
        if (said != null) {
            return List.of(said.content()[0].schema().anyOf());
        }
        if (method.getReturnType() == void.class) {
            return List.of();
        }
        return List.of(
                method.getGenericReturnType() instanceof ParameterizedType created
                        ? created.getActualTypeArguments()[0]
                        : method.getGenericReturnType());
    }

    /** The statuses of refusals that may come of it. */
    Set<Integer> refusals() {
        Set<Integer> statuses = new LinkedHashSet<>();
        List<Said> parameters = parameters();
        boolean changes = !verb.equals("GET");
        if (hasBody() || !parameters.isEmpty()) {
            statuses.add(400);
        }
        statuses.add(401);
        statuses.add(403);
        if (parameters.stream().anyMatch(Said::inPath)) {
            statuses.add(404);
        }
        if (changes) {
            statuses.add(409);
        }
        if (hasBody()) {
            statuses.add(413);
            statuses.add(415);
        }
        if (changes || !parameters.isEmpty()) {
            statuses.add(422);
        }
        return statuses;
    }

    List<String> roles() {
        return List.of(Objects.requireNonNull(says(RolesAllowed.class)).value());
    }

    <A extends Annotation> @Nullable A says(Class<A> annotation) {
        A own = method.getAnnotation(annotation);
        return own == null ? resource.getAnnotation(annotation) : own;
    }

    /** Unique: several methods of one name differ in what their paths say. */
    String id() {
        String area = resource.getSimpleName().replaceFirst("Api$", "");
        long alike = Arrays.stream(resource.getDeclaredMethods())
                .filter(other -> other.getName().equals(method.getName()) && other.getAnnotations().length > 0)
                .count();
        return area + "." + method.getName() + (alike > 1 && !inPath().isEmpty() ? "At" : "");
    }
}
