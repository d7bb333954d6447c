package eaveside.access.internal;

import com.yubico.webauthn.AssertionRequest;
import com.yubico.webauthn.AssertionResult;
import com.yubico.webauthn.CredentialRepository;
import com.yubico.webauthn.FinishAssertionOptions;
import com.yubico.webauthn.FinishRegistrationOptions;
import com.yubico.webauthn.RegisteredCredential;
import com.yubico.webauthn.RegistrationResult;
import com.yubico.webauthn.RelyingParty;
import com.yubico.webauthn.StartAssertionOptions;
import com.yubico.webauthn.StartRegistrationOptions;
import com.yubico.webauthn.data.AuthenticatorSelectionCriteria;
import com.yubico.webauthn.data.ByteArray;
import com.yubico.webauthn.data.PublicKeyCredential;
import com.yubico.webauthn.data.PublicKeyCredentialCreationOptions;
import com.yubico.webauthn.data.PublicKeyCredentialDescriptor;
import com.yubico.webauthn.data.RelyingPartyIdentity;
import com.yubico.webauthn.data.ResidentKeyRequirement;
import com.yubico.webauthn.data.UserIdentity;
import com.yubico.webauthn.data.UserVerificationRequirement;
import com.yubico.webauthn.exception.AssertionFailedException;
import com.yubico.webauthn.exception.RegistrationFailedException;
import eaveside.access.AccessRefusal;
import eaveside.access.AuditEvent;
import eaveside.access.Passkey;
import eaveside.access.PasskeyId;
import eaveside.access.PasskeyQuestion;
import eaveside.access.RecordAudit;
import eaveside.access.SignedIn;
import eaveside.access.Site;
import eaveside.access.User;
import eaveside.kernel.Digest;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Network;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Asks browsers for passkeys and judges their answers (Web Authentication Level 2, sections 7.1 and 7.2, by the library). */
@Shared
public class Passkeys {
    private static final String NOT_GOOD = "This passkey is not good here. Try another, or the password";

    private static final Duration TIME_TO_ANSWER = Duration.ofMinutes(5);

    /** Of one user; more than the devices that somebody has. */
    private static final int MOST = 20;

    /** Of one network or user at a time: an office signs in together, and a few come to nothing. */
    private static final int MOST_QUESTIONS = 50;

    private final EntityManager entities;
    private final AccessQueries queries;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public Passkeys(EntityManager entities, AccessQueries queries, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.audit = audit;
        this.clock = clock;
    }

    public PasskeyQuestion askToMake(User user, Site site) {
        try {
            PublicKeyCredentialCreationOptions options = party(site)
                    .startRegistration(StartRegistrationOptions.builder()
                            .user(UserIdentity.builder()
                                    .name(user.username())
                                    .displayName(user.name())
                                    .id(StoredCredentials.handle(user.id()))
                                    .build())
                            .authenticatorSelection(AuthenticatorSelectionCriteria.builder()
                                    .residentKey(ResidentKeyRequirement.REQUIRED)
                                    .userVerification(UserVerificationRequirement.REQUIRED)
                                    .build())
                            .timeout(TIME_TO_ANSWER.toMillis())
                            .build());
            return new PasskeyQuestion(
                    keep(options.toJson(), user.id(), user.id().toString()), options.toCredentialsCreateJson());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    public SignedIn make(User user, Site site, String name, String label, String credential) {
        String question = taken(name, user.id());
        try {
            RegistrationResult made = made(
                    site,
                    FinishRegistrationOptions.builder()
                            .request(PublicKeyCredentialCreationOptions.fromJson(question))
                            .response(read(PublicKeyCredential::parseRegistrationResponseJson, credential))
                            .build());
            if (queries.passkeysOf(user.id()).size() >= MOST) {
                throw new AccessRefusal.BadPasskey("There are " + MOST + " passkeys already. Remove one first");
            }
            PasskeyRow row = new PasskeyRow();
            row.id = PasskeyId.next().value();
            row.userId = user.id();
            row.label = label;
            row.host = site.host();
            row.origin = site.origin();
            row.credentialId = made.getKeyId().getId().getBytes();
            row.publicKey = made.getPublicKeyCose().getBytes();
            row.signCount = made.getSignatureCount();
            row.addedAt = Moments.asKept(clock.instant());
            entities.persist(row);
            entities.flush();
            return entities.find(UserRow.class, user.id().value()).toStronglySignedIn();
        } catch (IOException | RegistrationFailedException | IllegalArgumentException e) {
            throw new AccessRefusal.BadPasskey("The passkey was not made for this. Try again");
        }
    }

    /** Whatever the library throws at a key that no device makes, or at a proof of it that it has no part for. */
    private RegistrationResult made(Site site, FinishRegistrationOptions answer)
            throws IOException, RegistrationFailedException {
        try {
            return party(site).finishRegistration(answer);
        } catch (RuntimeException | LinkageError e) {
            throw new IOException(e);
        }
    }

    public PasskeyQuestion askToShow(Site site, @Nullable UserId user, String address) {
        try {
            var options = StartAssertionOptions.builder()
                    .userVerification(UserVerificationRequirement.REQUIRED)
                    .timeout(TIME_TO_ANSWER.toMillis());
            if (user != null) {
                options.userHandle(StoredCredentials.handle(user));
            }
            AssertionRequest request = party(site).startAssertion(options.build());
            return new PasskeyQuestion(
                    keep(request.toJson(), user, user == null ? Network.of(address) : user.toString()),
                    request.toCredentialsGetJson());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whoever it is of; the question is used up whatever the answer is worth. */
    SignedIn show(Site site, String name, String credential, @Nullable UserId user, String address) {
        String question = taken(name, user);
        try {
            AssertionResult result = party(site)
                    .finishAssertion(FinishAssertionOptions.builder()
                            .request(AssertionRequest.fromJson(question))
                            .response(read(PublicKeyCredential::parseAssertionResponseJson, credential))
                            .build());
            PasskeyRow row = queries.passkeys(
                            result.getCredential().getCredentialId().getBytes())
                    .getFirst();
            UserRow signedIn = entities.find(UserRow.class, row.userId.value(), LockModeType.PESSIMISTIC_WRITE);
            if (!result.isSuccess() || !signedIn.active || user != null && !user.equals(row.userId)) {
                throw new AccessRefusal.BadPasskey(NOT_GOOD);
            }
            row.signCount = result.getSignatureCount();
            row.usedAt = Moments.asKept(clock.instant());
            audit.done(AuditEvent.done("sign-in.passkey", row.userId, signedIn.username)
                    .with(row.label)
                    .from(address));
            return signedIn.toStronglySignedIn();
        } catch (IOException | AssertionFailedException | IllegalArgumentException e) {
            throw new AccessRefusal.BadPasskey(NOT_GOOD);
        }
    }

    public List<Passkey> of(UserId user) {
        return queries.passkeysOf(user).stream().map(PasskeyRow::toPasskey).toList();
    }

    /** By what label it was known. */
    public String remove(PasskeyId id, UserId user) {
        PasskeyRow row = entities.find(PasskeyRow.class, id.value(), LockModeType.PESSIMISTIC_WRITE);
        if (row == null || !row.userId.equals(user)) {
            throw new KernelRefusal.NotFound("passkey", id);
        }
        entities.remove(row);
        return row.label;
    }

    /** Whether there were any. */
    public boolean removeAll(UserId user) {
        List<PasskeyRow> rows = queries.passkeysOf(user);
        rows.forEach(entities::remove);
        return !rows.isEmpty();
    }

    private interface Reader<T> {
        @Nullable
        T read(String credential) throws IOException;
    }

    /** What the browser sent; whatever the library makes of what no browser sends, it is not good. */
    private static <T> T read(Reader<T> reader, String credential) throws IOException {
        T read;
        try {
            read = reader.read(credential);
        } catch (RuntimeException e) {
            throw new IOException(e);
        }
        if (read == null) {
            throw new IOException("nothing was sent");
        }
        return read;
    }

    private RelyingParty party(Site site) {
        return RelyingParty.builder()
                .identity(RelyingPartyIdentity.builder()
                        .id(site.host())
                        .name("Eaveside")
                        .build())
                .credentialRepository(new StoredCredentials(queries, site.origin()))
                .origins(Set.of(site.origin()))
                .build();
    }

    /** @param  asker of whom no more than {@link #MOST_QUESTIONS} are open */
    private String keep(String question, @Nullable UserId user, String asker) {
        String name = Secrets.random();
        entities.createNativeQuery("insert into passkey_question (hash, user_id, question, asked_at, asker) "
                        + "values (:hash, cast(:user as uuid), :question, :now, :asker)")
                .setParameter("asker", Digest.sha256(asker))
                .setParameter("hash", Digest.sha256(name))
                .setParameter("user", user == null ? null : user.toString())
                .setParameter("question", question)
                .setParameter("now", Moments.asKept(clock.instant()))
                .executeUpdate();
        entities.createNativeQuery("delete from passkey_question where hash in (select hash from passkey_question "
                        + "where asked_at < :horizon limit 100 for update skip locked)")
                .setParameter("horizon", Moments.asKept(clock.instant()).minus(TIME_TO_ANSWER))
                .executeUpdate();
        entities.createNativeQuery("delete from passkey_question where hash in (select hash from passkey_question "
                        + "where asker = :asker order by asked_at desc, hash offset " + MOST_QUESTIONS
                        + " for update skip locked)")
                .setParameter("asker", Digest.sha256(asker))
                .executeUpdate();
        return name;
    }

    /** The question of that name, which was asked of that user not long ago, and is answered once. */
    private String taken(String name, @Nullable UserId user) {
        List<?> found = entities.createNativeQuery(
                        "delete from passkey_question where hash = :hash and asked_at > :horizon "
                                + "and user_id is not distinct from cast(:user as uuid) returning question",
                        String.class)
                .setParameter("hash", Digest.sha256(name))
                .setParameter("horizon", Moments.asKept(clock.instant()).minus(TIME_TO_ANSWER))
                .setParameter("user", user == null ? null : user.toString())
                .getResultList();
        if (found.isEmpty()) {
            throw new AccessRefusal.BadPasskey("That took too long. Try again");
        }
        return (String) found.getFirst();
    }

    /**
     * The passkeys that were made where they are asked for, as the library asks for them. The host alone is not enough: a request says
     * itself what its host is, and what runs at another port of it could pass on what a browser has shown there.
     */
    private static final class StoredCredentials implements CredentialRepository {
        private static final int UUID_BYTES = 16;

        private final AccessQueries queries;
        private final String origin;

        StoredCredentials(AccessQueries queries, String origin) {
            this.queries = queries;
            this.origin = origin;
        }

        /** What a device knows a user by: the id, which says nothing about them (Web Authentication Level 3, 14.6.1). */
        static ByteArray handle(UserId user) {
            return new ByteArray(ByteBuffer.allocate(UUID_BYTES)
                    .putLong(user.value().getMostSignificantBits())
                    .putLong(user.value().getLeastSignificantBits())
                    .array());
        }

        private static Optional<UserId> user(ByteArray handle) {
            if (handle.size() != UUID_BYTES) {
                return Optional.empty();
            }
            ByteBuffer bytes = ByteBuffer.wrap(handle.getBytes());
            return Optional.of(new UserId(new UUID(bytes.getLong(), bytes.getLong())));
        }

        private Optional<UserRow> byUsername(String username) {
            return queries.usersByUsername(username).stream().findFirst();
        }

        @Override
        public Set<PublicKeyCredentialDescriptor> getCredentialIdsForUsername(String username) {
            return byUsername(username).map(user -> queries.passkeysOf(new UserId(user.id))).orElse(List.of()).stream()
                    .filter(row -> row.origin.equals(origin))
                    .map(row -> PublicKeyCredentialDescriptor.builder()
                            .id(new ByteArray(row.credentialId))
                            .build())
                    .collect(Collectors.toSet());
        }

        @Override
        public Optional<ByteArray> getUserHandleForUsername(String username) {
            return byUsername(username).map(user -> handle(new UserId(user.id)));
        }

        @Override
        public Optional<String> getUsernameForUserHandle(ByteArray handle) {
            return user(handle)
                    .flatMap(id -> queries.usersOf(List.of(id.value())).stream().findFirst())
                    .map(user -> user.username);
        }

        @Override
        public Optional<RegisteredCredential> lookup(ByteArray credentialId, ByteArray userHandle) {
            return lookupAll(credentialId).stream()
                    .filter(credential -> credential.getUserHandle().equals(userHandle))
                    .findFirst();
        }

        @Override
        public Set<RegisteredCredential> lookupAll(ByteArray credentialId) {
            return queries.passkeys(credentialId.getBytes()).stream()
                    .filter(row -> row.origin.equals(origin))
                    .map(row -> RegisteredCredential.builder()
                            .credentialId(credentialId)
                            .userHandle(handle(row.userId))
                            .publicKeyCose(new ByteArray(row.publicKey))
                            .signatureCount(row.signCount)
                            .build())
                    .collect(Collectors.toSet());
        }
    }
}
