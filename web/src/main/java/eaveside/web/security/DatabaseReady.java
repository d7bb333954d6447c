package eaveside.web.security;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/** Not ready while the database is not there: {@code /health/ready}. */
@Readiness
@ApplicationScoped
public class DatabaseReady implements HealthCheck {
    @Inject
    EntityManager database;

    @Override
    public HealthCheckResponse call() {
        return HealthCheckResponse.named("database").status(answers()).build();
    }

    private boolean answers() {
        try {
            database.createNativeQuery("select 1", Integer.class).getSingleResult();
            return true;
        } catch (RuntimeException e) { // whatever it is, pages would meet it too
            return false;
        }
    }
}
