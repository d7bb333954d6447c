package eaveside.access;

import eaveside.access.internal.PasswordHasher;
import eaveside.access.internal.SignInGate;
import eaveside.access.internal.SignInGate.Candidate;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Changes one's own password. The old one is checked with the same delays as a sign-in, and as little transactional. */
@Shared
public class ChangePassword {
    private final ReadUsers users;
    private final SignInGate gate;
    private final PasswordHasher hasher;
    private final ReadCompanyWords companyWords;
    private final RecordAudit audit;

    @Inject
    public ChangePassword(
            ReadUsers users, SignInGate gate, PasswordHasher hasher, ReadCompanyWords companyWords, RecordAudit audit) {
        this.users = users;
        this.gate = gate;
        this.hasher = hasher;
        this.companyWords = companyWords;
        this.audit = audit;
    }

    /**
     * Sets the new password and ends every other session of the user; the answer is what the session at hand keeps from
     * now on, the second step that was shown in it included. Where the new password is in force already, this is a retry and nothing changes. Refuses like
     * {@link SignIn#signIn}, and with {@link AccessRefusal.WeakPassword} a new one that is the old one.
     *
     * @param  here the session at hand; null for none
     */
    public SignedIn change(
            UserId id,
            char[] old,
            NewPassword wanted,
            String address,
            @Nullable String browser,
            @Nullable SessionId here) {
        User user = users.user(id);
        wanted.requireOther(old);
        wanted.requireUnlike(new Username(user.username()), user.name(), companyWords.words());
        Candidate candidate = gate.admit(user.username(), address, browser);
        Optional<SignedIn> changed;
        try {
            if (hasher.matches(wanted.characters(), candidate.hash(), PasswordHasher.Caller.user(id))) {
                changed = gate.complete(candidate, "password.change", Optional.empty());
            } else if (hasher.matches(old, candidate.hash(), PasswordHasher.Caller.user(id))) {
                changed = gate.completeChange(candidate, hasher.hash(wanted.characters()));
            } else {
                changed = Optional.empty();
            }
        } catch (AccessRefusal.Busy busy) {
            gate.withdraw(candidate);
            throw busy;
        }
        return changed.map(signedIn -> gate.keepingSecondStep(signedIn, here)).orElseThrow(() -> {
            audit.record(
                    AuditEvent.refused("password.change", id, user.username()).from(address));
            return new AccessRefusal.WrongCredentials();
        });
    }
}
