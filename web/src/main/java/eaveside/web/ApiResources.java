package eaveside.web;

import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.Startup;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.Bean;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * The operations for scripts, from the resource classes that the platform found. They are noted when the application starts,
 * since the description is asked for outside of it, where its beans cannot be looked up.
 */
@Dependent
public class ApiResources {
    private static volatile List<Class<?>> known = List.of();

    void note(@Observes Startup event, BeanManager beans) {
        known = beans.getBeans(Object.class, Any.Literal.INSTANCE).stream()
                .<Class<?>>map(Bean::getBeanClass)
                .filter(type -> type.getAnnotation(Path.class) instanceof Path path
                        && path.value().startsWith("/api/"))
                .sorted(Comparator.comparing(Class::getName))
                .toList();
    }

    /** Of all resources, by address. */
    static List<ApiOperation> operations() {
        List<ApiOperation> operations = new ArrayList<>();
        for (Class<?> resource : known) {
            for (Method method : resource.getDeclaredMethods()) {
                Arrays.stream(method.getAnnotations())
                        .map(annotation -> annotation.annotationType().getAnnotation(HttpMethod.class))
                        .filter(Objects::nonNull)
                        .forEach(verb -> operations.add(new ApiOperation(resource, method, verb.value())));
            }
        }
        operations.sort(Comparator.comparing(ApiOperation::path).thenComparing(ApiOperation::verb));
        return operations;
    }
}
