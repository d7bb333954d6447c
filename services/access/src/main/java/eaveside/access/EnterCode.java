package eaveside.access;

import eaveside.access.internal.SignInGate;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;

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
     * The user, who has shown two factors now.
     *
     * @throws AccessRefusal.WrongCode for a code that is wrong, too old, or was taken before
     * @throws AccessRefusal.TooSoon   where earlier failures still make this one wait; not counted
     */
    public SignedIn enter(UserId user, String code, String address) {
        gate.admitCode(user);
        return gate.completeCode(user, code, address).orElseThrow(() -> {
            audit.record(AuditEvent.refused("sign-in.code", user, "").from(address));
            return new AccessRefusal.WrongCode();
        });
    }
}
