package eaveside.web.security;

import jakarta.annotation.Resource;
import jakarta.enterprise.context.ApplicationScoped;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/** Not ready while the database is not there: {@code /health/ready}. */
@Readiness
@ApplicationScoped
public class DatabaseReady implements HealthCheck {
    private static final int SECONDS = 5;

    @Resource(lookup = "java:app/jdbc/eaveside")
    DataSource database;

    @Override
    public HealthCheckResponse call() {
        try (var connection = database.getConnection()) {
            return HealthCheckResponse.named("database")
                    .status(connection.isValid(SECONDS))
                    .build();
        } catch (SQLException e) {
            return HealthCheckResponse.down("database");
        }
    }
}
