package eaveside.access.internal;

import com.yubico.webauthn.CredentialRepository;
import com.yubico.webauthn.RegisteredCredential;
import com.yubico.webauthn.data.ByteArray;
import com.yubico.webauthn.data.PublicKeyCredentialDescriptor;
import eaveside.kernel.UserId;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** The passkeys that were made for one host, as the library asks for them. */
final class StoredCredentials implements CredentialRepository {
    private static final int UUID_BYTES = 16;

    private final AccessQueries queries;
    private final String host;

    StoredCredentials(AccessQueries queries, String host) {
        this.queries = queries;
        this.host = host;
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
                .filter(row -> row.host.equals(host))
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
                .filter(row -> row.host.equals(host))
                .map(row -> RegisteredCredential.builder()
                        .credentialId(credentialId)
                        .userHandle(handle(row.userId))
                        .publicKeyCose(new ByteArray(row.publicKey))
                        .signatureCount(row.signCount)
                        .build())
                .collect(Collectors.toSet());
    }
}
