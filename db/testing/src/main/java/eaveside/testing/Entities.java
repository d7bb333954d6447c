package eaveside.testing;

import eaveside.schema.Schema;
import jakarta.persistence.Converter;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.EntityManagerFactory;
import jakarta.persistence.MappedSuperclass;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.hibernate.cfg.Configuration;

/** Finds the entities of every module on the class path, so that a test needs no list of its own. */
public final class Entities {
    private Entities() {}

    static EntityManagerFactory factory(TestDatabase database) {
        Configuration configuration = new Configuration();
        configuration.setProperty("hibernate.connection.url", database.jdbcUrl());
        configuration.setProperty("hibernate.connection.username", Schema.APPLICATION);
        configuration.setProperty("hibernate.connection.password", database.password());
        // Connections are kept, as the server does: signing in costs more than most transactions.
        configuration.setProperty("hibernate.connection.pool_size", "40");
        configuration.setProperty(
                "hibernate.physical_naming_strategy",
                "org.hibernate.boot.model.naming.PhysicalNamingStrategySnakeCaseImpl");
        configuration.setProperty("hibernate.jdbc.batch_size", "50");
        configuration.setProperty("hibernate.order_inserts", "true");
        configuration.setProperty("hibernate.jdbc.time_zone", "UTC");
        all().forEach(configuration::addAnnotatedClass);
        return configuration.buildSessionFactory();
    }

    /** Every persistent class of the project on this class path. */
    public static List<Class<?>> all() {
        List<Class<?>> found = new ArrayList<>();
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
            Path path = Path.of(entry);
            try {
                if (Files.isDirectory(path)) {
                    scan(path, found);
                } else if (path.getFileName().toString().startsWith("eaveside-") && Files.exists(path)) {
                    try (FileSystem jar = FileSystems.newFileSystem(path)) {
                        scan(jar.getPath("/"), found);
                    }
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return found;
    }

    private static void scan(Path root, List<Class<?>> found) throws IOException {
        Path base = root.resolve("eaveside");
        if (!Files.isDirectory(base)) {
            return;
        }
        try (Stream<Path> files = Files.walk(base)) {
            for (Path file : (Iterable<Path>) files::iterator) {
                String name = root.relativize(file).toString().replace('/', '.').replace('\\', '.');
                if (name.endsWith(".class") && !name.contains(".web.")) {
                    Class<?> type = load(name.substring(0, name.length() - ".class".length()));
                    if (type.isAnnotationPresent(Entity.class)
                            || type.isAnnotationPresent(Embeddable.class)
                            || type.isAnnotationPresent(MappedSuperclass.class)
                            || type.isAnnotationPresent(Converter.class)) {
                        found.add(type);
                    }
                }
            }
        }
    }

    private static Class<?> load(String name) {
        try {
            return Class.forName(name, false, Entities.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(name + " is on the class path but cannot be loaded", e);
        }
    }
}
