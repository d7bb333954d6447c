package eaveside.access.internal;

import eaveside.access.Role;
import eaveside.kernel.UserId;
import jakarta.persistence.EntityManager;
import jakarta.persistence.TypedQuery;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.processing.HQL;

/** Queries over users and tokens; the annotation processor checks them when it compiles. */
public interface AccessQueries {
    EntityManager entityManager();

    @HQL("from UserRow order by name, username")
    List<UserRow> users();

    @HQL("from UserRow where username = :username")
    List<UserRow> usersByUsername(String username);

    @HQL("from UserRow where id in :ids")
    List<UserRow> usersOf(List<UUID> ids);

    @HQL("from UserRow where role = :role and active order by name, username")
    List<UserRow> activeUsers(Role role);

    @HQL("from UserRow where role = :role and active order by id")
    TypedQuery<UserRow> lockableOwners(Role role);

    @HQL("select count(*) from UserRow")
    long countUsers();

    @HQL("select t from TokenRow t join UserRow u on u.id = t.userId "
            + "where t.hash = :hash and t.revokedAt is null and t.expiresAt > :now and u.active")
    List<TokenRow> tokensInForce(String hash, Instant now);

    @HQL("from SessionRow where hash = :hash")
    List<SessionRow> sessions(String hash);

    @HQL("from SessionRow where userId = :user and endedAt is null order by beganAt desc, id desc")
    List<SessionRow> sessionsOf(UserId user);

    @HQL("from PasskeyRow where userId = :user order by addedAt, id")
    List<PasskeyRow> passkeysOf(UserId user);

    @HQL("from PasskeyRow where credentialId = :credentialId")
    List<PasskeyRow> passkeys(byte[] credentialId);

    @HQL("from TokenRow where userId = :user order by issuedAt desc, id desc")
    List<TokenRow> tokensOf(UserId user);
}
