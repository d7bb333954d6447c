package eaveside.web.security;

import jakarta.inject.Inject;
import jakarta.servlet.ServletContextEvent;
import jakarta.servlet.ServletContextListener;
import jakarta.servlet.annotation.WebListener;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Behind a TLS proxy ({@code eaveside.https=true}) the session's cookie never travels without TLS. */
@WebListener
public class SessionCookies implements ServletContextListener {
    @Inject
    @ConfigProperty(name = "eaveside.https", defaultValue = "false")
    boolean https;

    @Override
    public void contextInitialized(ServletContextEvent event) {
        event.getServletContext().getSessionCookieConfig().setSecure(https);
    }
}
