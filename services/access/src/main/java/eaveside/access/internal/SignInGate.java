package eaveside.access.internal;

import eaveside.access.AccessRefusal;
import eaveside.access.AuditEvent;
import eaveside.access.RecordAudit;
import eaveside.access.SessionId;
import eaveside.access.SignedIn;
import eaveside.access.Site;
import eaveside.access.Username;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The steps of a password check that touch the database, each a transaction of its own. An attempt counts as a failure
 * from its admission on and is taken back when it succeeds: thus a hundred attempts at once are not a hundred guesses.
 */
@Shared
public class SignInGate {
    private static final String HALF = "by password, the second step is to come";

    private final EntityManager entities;
    private final AccessQueries queries;
    private final PasswordHasher hasher;
    private final Browsers browsers;
    private final AppCodes codes;
    private final Passkeys passkeys;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public SignInGate(
            EntityManager entities,
            AccessQueries queries,
            PasswordHasher hasher,
            Browsers browsers,
            AppCodes codes,
            Passkeys passkeys,
            RecordAudit audit,
            Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.hasher = hasher;
        this.browsers = browsers;
        this.codes = codes;
        this.passkeys = passkeys;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * An admitted attempt.
     *
     * @param  user        null for a username that nobody has
     * @param  hash        to compare with; for an unknown username one that no password matches, at the same cost
     * @param  credentials of the user at the time of admission
     * @param  browser     the digest of the browser's secret, where that user has signed in with it before
     */
    public record Candidate(
            String username,
            String address,
            @Nullable UserId user,
            String hash,
            int credentials,
            @Nullable String browser) {
        /** What a failure counts against. Of a known browser nothing else, so that nobody makes it wait from elsewhere. */
        List<FailureKey> counted() {
            return user != null && browser != null
                    ? List.of(FailureKey.browser(user, browser))
                    : List.of(FailureKey.address(address), FailureKey.username(username));
        }

        public boolean isKnown() {
            return user != null;
        }

        /** In whose turn the password is looked at. */
        public PasswordHasher.Caller caller() {
            return user != null && browser != null
                    ? PasswordHasher.Caller.user(user)
                    : PasswordHasher.Caller.from(address);
        }

        /** Never the hash. */
        @Override
        public String toString() {
            return "attempt of " + (user == null ? "an unknown username" : user) + " from " + address;
        }
    }

    /**
     * Lets the attempt through and counts it, or refuses it with {@link AccessRefusal.TooSoon} and counts nothing.
     *
     * @param  browser the secret by which the browser may be known; null for none
     */
    @Transactional(TxType.REQUIRES_NEW)
    public Candidate admit(String username, String address, @Nullable String browser) {
        Candidate candidate = candidate(username, address, browser);
        Instant now = Moments.asKept(clock.instant());
        List<FailureRow> counted =
                candidate.counted().stream().map(key -> locked(key, now)).toList();
        Instant until = counted.stream()
                .map(FailureRow::waitUntil)
                .max(Comparator.naturalOrder())
                .orElse(now);
        if (until.isAfter(now)) {
            throw new AccessRefusal.TooSoon(until, now);
        }
        counted.forEach(row -> row.count(now));
        forgetOld(now);
        return candidate;
    }

    /**
     * Lets a code be tried and counts it as wrong until {@link #completeCode}, or refuses it with {@link AccessRefusal.TooSoon}.
     *
     * @param  browser the secret by which the browser may be known; null for none
     */
    @Transactional(TxType.REQUIRES_NEW)
    public void admitCode(UserId user, @Nullable String browser) {
        Instant now = Moments.asKept(clock.instant());
        FailureRow row = locked(ofCodes(user, browser), now);
        if (row.waitUntil().isAfter(now)) {
            throw new AccessRefusal.TooSoon(row.waitUntil(), now);
        }
        row.count(now);
    }

    /** The user where the code of their app is right; it is not taken again. */
    @Transactional(TxType.REQUIRES_NEW)
    public Optional<SignedIn> completeCode(UserId user, String code, String address, @Nullable String browser) {
        Optional<SignedIn> signedIn = codes.take(user, code);
        signedIn.ifPresent(right -> {
            entities.remove(locked(ofCodes(user, browser), Moments.asKept(clock.instant())));
            audit.done(AuditEvent.done("sign-in.code", user, right.user().username())
                    .from(address));
        });
        return signedIn;
    }

    /** Whoever the passkey is of; what was asked is used up whatever the answer is worth. */
    @Transactional(value = TxType.REQUIRES_NEW, dontRollbackOn = AccessRefusal.BadPasskey.class)
    public SignedIn completePasskey(Site site, String name, String credential, @Nullable UserId user, String address) {
        return passkeys.show(site, name, credential, user, address);
    }

    /**
     * Counts a passkey that was not good by its address. True while the address need not wait: what comes after that is not
     * told any more, since an audit log that strangers can make grow would fill the disk.
     */
    @Transactional(TxType.REQUIRES_NEW)
    public boolean countBadPasskey(String address) {
        Instant now = Moments.asKept(clock.instant());
        FailureRow row = locked(FailureKey.passkeys(address), now);
        if (row.waitUntil().isAfter(now)) {
            return false;
        }
        row.count(now);
        return true;
    }

    private FailureKey ofCodes(UserId user, @Nullable String browser) {
        return browsers.knownBySecondStep(user, browser)
                .map(hash -> FailureKey.code(user, hash))
                .orElseGet(() -> FailureKey.code(user));
    }

    /** Forgets the wrong codes of an app that another takes the place of, as far as they make everybody wait. */
    @Transactional(TxType.MANDATORY)
    public void forgetCodes(UserId user) {
        entities.remove(locked(FailureKey.code(user), Moments.asKept(clock.instant())));
    }

    /** Where the user has nothing left to show beside the password, no browser is one in which it was shown. */
    @Transactional(TxType.MANDATORY)
    public void secondStepTaken(UserId user) {
        if (!owesSecondStep(user)) {
            browsers.forgetSecondSteps(user);
        }
    }

    private Candidate candidate(String username, String address, @Nullable String browser) {
        return Username.typed(username)
                .flatMap(
                        typed -> queries.usersByUsername(typed.value()).stream().findFirst())
                .map(user -> user.toCandidate(
                        address, browsers.known(user.toUser().id(), browser).orElse(null)))
                .orElseGet(() -> new Candidate(username, address, null, hasher.decoy(), 0, null));
    }

    /**
     * The password was right. Nobody where the user was deactivated, or got another password, while it was checked.
     *
     * @param  action   what it was checked for, for the audit log
     * @param  stronger a new hash of the same password, where the cost has risen since it was made
     */
    @Transactional(TxType.REQUIRES_NEW)
    public Optional<SignedIn> complete(Candidate candidate, String action, Optional<String> stronger) {
        UserRow row = stillAdmitted(candidate);
        if (row == null) {
            return Optional.empty();
        }
        stronger.ifPresent(row::strengthen);
        AuditEvent event = AuditEvent.done(action, candidate.user(), candidate.username());
        succeed(
                candidate,
                action.equals("sign-in") && owesSecondStep(row.toUser().id()) ? event.with(HALF) : event);
        return Optional.of(row.toSignedIn());
    }

    private boolean owesSecondStep(UserId user) {
        return codes.areSetUp(user) || !passkeys.of(user).isEmpty();
    }

    /** Like {@link #complete}, and sets another password. */
    @Transactional(TxType.REQUIRES_NEW)
    public Optional<SignedIn> completeChange(Candidate candidate, String newHash) {
        UserRow row = stillAdmitted(candidate);
        if (row == null) {
            return Optional.empty();
        }
        row.setPassword(newHash);
        succeed(candidate, AuditEvent.done("password.change", candidate.user(), candidate.username()));
        return Optional.of(row.toSignedIn());
    }

    /** Strong where the second step was shown in that session of the same user. */
    @Transactional(TxType.REQUIRES_NEW)
    public SignedIn keepingSecondStep(SignedIn signedIn, @Nullable SessionId here) {
        SessionRow row = here == null ? null : entities.find(SessionRow.class, here.value());
        boolean shown = row != null && row.userId.equals(signedIn.user().id()) && row.secondAt != null;
        return shown ? new SignedIn(signedIn.user(), signedIn.credentials(), true) : signedIn;
    }

    /** The password was never looked at. */
    @Transactional(TxType.REQUIRES_NEW)
    public void withdraw(Candidate candidate) {
        Instant now = Moments.asKept(clock.instant());
        candidate.counted().forEach(key -> locked(key, now).takeBack(now));
    }

    /** Forgets the failures of a username that got a new password. */
    @Transactional(TxType.MANDATORY)
    public void forget(String username) {
        entities.remove(locked(FailureKey.username(username), clock.instant()));
    }

    private @Nullable UserRow stillAdmitted(Candidate candidate) {
        UserId id = candidate.user();
        UserRow row = id == null ? null : entities.find(UserRow.class, id.value(), LockModeType.PESSIMISTIC_WRITE);
        return row != null && row.admits(candidate.credentials()) ? row : null;
    }

    /** An address takes back this one attempt only: one good password of its own does not clear a guesser's slate. */
    private void succeed(Candidate candidate, AuditEvent event) {
        Instant now = Moments.asKept(clock.instant());
        for (FailureKey key : candidate.counted()) {
            FailureRow row = locked(key, now);
            if (key.type() == FailureType.ADDRESS) {
                row.takeBack(now);
            } else {
                entities.remove(row);
            }
        }
        audit.done(event.from(candidate.address()));
    }

    private FailureRow locked(FailureKey key, Instant now) {
        entities.createNativeQuery("insert into sign_in_failure (type, subject, failures, last_at, wait_until) "
                        + "values (:type, :subject, 0, :now, :now) on conflict (type, subject) "
                        + "do update set failures = sign_in_failure.failures")
                .setParameter("type", key.type().name())
                .setParameter("subject", key.subject())
                .setParameter("now", now)
                .executeUpdate();
        return entities.find(FailureRow.class, key);
    }

    /** After this attempt's own locks, and past those of others: so it never waits and cannot deadlock. */
    private void forgetOld(Instant now) {
        // What was just counted has to be in the table before the table is asked what is old.
        entities.flush();
        entities.createNativeQuery("delete from sign_in_failure where (type, subject) in (select type, subject "
                        + "from sign_in_failure where last_at < :horizon limit 100 for update skip locked)")
                .setParameter("horizon", now.minus(FailureRow.REMEMBERED))
                .executeUpdate();
    }
}
