package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.schema.Schema;
import eaveside.web.testing.Server;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.postgresql.ds.PGSimpleDataSource;
import org.w3c.dom.Element;

/** What the application's own connection to the database is told, as it stands in its descriptor. */
class DataSourceIT {
    private static final Path DESCRIPTOR = Path.of("src/main/webapp/WEB-INF/web.xml");

    private static Map<String, String> told() throws Exception {
        Map<String, String> told = new HashMap<>();
        var properties = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(DESCRIPTOR.toFile())
                .getElementsByTagName("property");
        for (int i = 0; i < properties.getLength(); i++) {
            Element property = (Element) properties.item(i);
            told.put(text(property, "name"), text(property, "value"));
        }
        return told;
    }

    private static String text(Element property, String name) {
        return property.getElementsByTagName(name).item(0).getTextContent();
    }

    private static Connection connection(String... names) throws Exception {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setUrl(Server.shared().database().jdbcUrl());
        source.setUser(Schema.APPLICATION);
        source.setPassword(Server.shared().database().password());
        for (String name : names) {
            source.setProperty(name, told().get(name));
        }
        return source.getConnection();
    }

    private static String refused(Connection connection) {
        return assertThrows(
                        SQLException.class,
                        () -> connection
                                .createStatement()
                                .execute("insert into vehicle (id, name) values (gen_random_uuid(), null)"))
                .getMessage();
    }

    /** What a database says about a refused row goes to the log: its values do not. */
    @Test
    void what_goes_wrong_is_told_without_the_values_of_the_row() throws Exception {
        try (Connection plain = connection();
                Connection ours = connection("logServerErrorDetail")) {
            assertTrue(refused(plain).contains("Failing row contains"), "it would be told");
            assertFalse(refused(ours).contains("Failing row contains"));
        }
    }

    @Test
    void statements_and_waits_for_others_end_by_themselves() throws Exception {
        try (Connection ours = connection("options");
                var statement = ours.createStatement();
                var found = statement.executeQuery(
                        "select current_setting('statement_timeout'), current_setting('lock_timeout')")) {
            assertTrue(found.next());
            assertEquals("1min", found.getString(1));
            assertEquals("30s", found.getString(2));
        }
    }
}
