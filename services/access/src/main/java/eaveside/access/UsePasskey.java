package eaveside.access;

import eaveside.access.internal.Passkeys;
import eaveside.access.internal.SignInGate;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import org.jspecify.annotations.Nullable;

/**
 * Signs somebody in by a passkey, alone or beside the password. The device asks its user for a finger, a face or a code first, so
 * a passkey is two factors; and it cannot be guessed, so a good one never waits.
 */
@Shared
public class UsePasskey {
    private final Passkeys passkeys;
    private final SignInGate gate;
    private final RecordAudit audit;

    @Inject
    public UsePasskey(Passkeys passkeys, SignInGate gate, RecordAudit audit) {
        this.passkeys = passkeys;
        this.gate = gate;
        this.audit = audit;
    }

    /**
     * What to ask the browser's authenticators, for some minutes.
     *
     * @param  user    null where the passkey will tell
     * @param  address the network address that asks
     */
    @Transactional
    public PasskeyQuestion ask(Site site, @Nullable UserId user, String address) {
        return passkeys.askToShow(site, user, address);
    }

    /**
     * Whoever the passkey is of. Refuses with {@link AccessRefusal.BadPasskey} an answer to nothing that was asked, a passkey that
     * nobody has, one made for another site, and one of somebody deactivated.
     *
     * @param  address the network address that it comes from
     */
    public SignedIn show(Site site, String name, String credential, @Nullable UserId user, String address) {
        try {
            return gate.completePasskey(site, name, credential, user, address);
        } catch (AccessRefusal.BadPasskey refusal) {
            if (gate.countBadPasskey(address)) {
                audit.record(AuditEvent.refused("sign-in.passkey", user, "").from(address));
            }
            throw refusal;
        }
    }
}
