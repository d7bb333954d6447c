package eaveside.web.security;

import eaveside.access.AuditEvent;
import eaveside.access.RecordAudit;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.Startup;
import jakarta.inject.Inject;
import java.util.logging.Logger;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Whether owners need a passkey or an authenticator app: where the program can be reached from elsewhere than its own machine, unless
 * that was switched off ({@code --no-second-factor}), which is said at each start and kept on the audit log.
 */
@ApplicationScoped
public class SecondFactorRule {
    private static final Logger LOG = Logger.getLogger(SecondFactorRule.class.getName());

    private static final String OWNERS = "owners";
    private static final String OFF = "off";

    @Inject
    @ConfigProperty(name = "eaveside.second-factor", defaultValue = "local")
    String rule;

    @Inject
    RecordAudit recordAudit;

    void begins(@Observes Startup event) {
        if (rule.equals(OFF)) {
            LOG.warning("Owners sign in with a password alone, though others can reach this address");
            recordAudit.record(AuditEvent.done("second-factor.off", null, "owners"));
        }
    }

    public boolean ownersNeedTwo() {
        return rule.equals(OWNERS);
    }
}
