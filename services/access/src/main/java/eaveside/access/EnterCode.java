package eaveside.access;

import eaveside.access.internal.SignInGate;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import org.jspecify.annotations.Nullable;

/** The second step of a sign-in by the code of an authenticator app. Wrong codes make the next wait, as wrong passwords do. */
@Shared
public class EnterCode {
    private final SignInGate gate;
    private final RecordAudit audit;

    @Inject
    public EnterCode(SignInGate gate, RecordAudit audit) {
        this.gate = gate;
        this.audit = audit;
    }

    /**
     * The user, who has shown two factors now. Wrong codes elsewhere never delay a browser in which the user has shown both before.
     *
     * @param  browser the secret by which the browser may be known; null for none
     * @throws AccessRefusal.WrongCode for a code that is wrong, too old, or was taken before
     * @throws AccessRefusal.TooSoon   where earlier failures still make this one wait; not counted
     */
    public SignedIn enter(UserId user, String code, String address, @Nullable String browser) {
        gate.admitCode(user, browser);
        return gate.completeCode(user, code, address, browser).orElseThrow(() -> {
            audit.record(AuditEvent.refused("sign-in.code", user, "").from(address));
            return new AccessRefusal.WrongCode();
        });
    }
}
