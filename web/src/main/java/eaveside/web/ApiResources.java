package eaveside.web;

import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.Startup;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.Bean;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The operations for scripts, from the resource classes that the platform found. They are noted when the application starts,
 * since the description is asked for outside of it, where its beans cannot be looked up.
 */
@Dependent
public class ApiResources {
    private static volatile List<Class<?>> known = List.of();

    void note(@Observes Startup event, BeanManager beans) {
        List<Class<?>> found = new ArrayList<>();
        for (Bean<?> bean : beans.getBeans(Object.class, Any.Literal.INSTANCE)) {
            Path path = bean.getBeanClass().getAnnotation(Path.class);
            if (path != null && path.value().startsWith("/api/")) {
                found.add(bean.getBeanClass());
            }
        }
        found.sort(Comparator.comparing(Class::getName));
        known = List.copyOf(found);
    }

    /** Of all resources, by address. */
    static List<ApiOperation> operations() {
        return operations(known);
    }

    static List<ApiOperation> operations(List<Class<?>> resources) {
        List<ApiOperation> operations = new ArrayList<>();
        for (Class<?> resource : resources) {
            for (Method method : resource.getDeclaredMethods()) {
                Arrays.stream(method.getAnnotations())
                        .map(Annotation::annotationType)
                        .filter(type -> type.isAnnotationPresent(HttpMethod.class))
                        .map(type -> type.getAnnotation(HttpMethod.class).value())
                        .forEach(verb -> operations.add(new ApiOperation(resource, method, verb)));
            }
        }
        operations.sort(Comparator.comparing(ApiOperation::path).thenComparing(ApiOperation::verb));
        return operations;
    }
}
