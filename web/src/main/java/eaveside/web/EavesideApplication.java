package eaveside.web;

import jakarta.ws.rs.ApplicationPath;
import jakarta.ws.rs.core.Application;
import java.util.Map;

/** Everything the browser and the scripts reach: pages at the root, JSON under {@code /api}. */
@ApplicationPath("/")
public class EavesideApplication extends Application {
    /** Where a redirect leads is told as a path: what a browser calls us is known to the proxy and not to us. */
    @Override
    public Map<String, Object> getProperties() {
        return Map.of("jersey.config.server.headers.location.relative.resolution.disabled", true);
    }
}
