package eaveside.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class TokensIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static User owner;

    @BeforeAll
    static void owner() {
        owner = AccessFixture.add(bench, Role.OWNER);
    }

    private static NewToken token(User user, int days) {
        return new NewToken(TokenId.next(), user.id(), "nightly export", TokenScope.READ, days, owner.id());
    }

    private static IssueToken.Issued issue(User user, int days) {
        return bench.get(IssueToken.class).issue(token(user, days));
    }

    private static User authenticate(IssueToken.Issued token) {
        return bench.get(AuthenticateToken.class).authenticate(token.secret()).user();
    }

    @Test
    void a_token_acts_as_its_user_with_the_role_of_now() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        IssueToken.Issued token = issue(user, 30);
        assertEquals(user, authenticate(token));
        bench.get(ChangeUser.class).change(user.with(Role.OFFICE, true), owner.id());
        assertEquals(Role.OFFICE, authenticate(token).role());
    }

    @Test
    void a_token_is_good_for_what_it_was_issued_for() {
        for (TokenScope scope : TokenScope.values()) {
            NewToken asked = new NewToken(TokenId.next(), owner.id(), "scoped", scope, 30, owner.id());
            String secret = bench.get(IssueToken.class).issue(asked).secret();
            Admitted who = bench.get(AuthenticateToken.class).authenticate(secret);
            assertEquals(scope, who.scope());
            assertEquals(scope, bench.get(ReadTokens.class).token(asked.id()).scope());
        }
        assertTrue(TokenScope.ADMINISTER.includes(TokenScope.READ));
        assertTrue(TokenScope.READ.includes(TokenScope.READ));
        assertFalse(TokenScope.READ.includes(TokenScope.WRITE));
        assertFalse(TokenScope.WRITE.includes(TokenScope.ADMINISTER));
    }

    @Test
    void only_a_hash_is_kept() {
        IssueToken.Issued token = issue(owner, 30);
        assertEquals(
                0L, bench.value("select count(*) from api_token t where t::text like '%' || ? || '%'", token.secret()));
        assertEquals(
                0L,
                bench.value("select count(*) from audit_event e where e::text like '%' || ? || '%'", token.secret()));
        assertEquals(
                bench.value("select encode(sha256(convert_to(?, 'UTF8')), 'hex')", token.secret()),
                bench.value(
                        "select hash from api_token where id = ?", token.id().value()));
        assertFalse(token.toString().contains(token.secret()));
    }

    @Test
    void a_token_expires_to_the_moment() {
        IssueToken.Issued token = issue(owner, 1);
        bench.clock().forward(Duration.ofDays(1).minusMillis(1));
        assertEquals(owner, authenticate(token));
        bench.clock().forward(Duration.ofMillis(1));
        assertThrows(AccessRefusal.BadToken.class, () -> authenticate(token));
        assertFalse(bench.get(ReadTokens.class)
                .token(token.id())
                .isInForce(bench.clock().instant()));
    }

    @Test
    void a_revoked_token_opens_nothing_any_more() throws SQLException {
        IssueToken.Issued token = issue(owner, 30);
        RevokeToken revoke = bench.get(RevokeToken.class);
        revoke.revoke(token.id(), owner.id());
        revoke.revoke(token.id(), null);
        assertThrows(AccessRefusal.BadToken.class, () -> authenticate(token));
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event where action = 'token.revoked' and subject = ?",
                        token.id().toString()));
        assertThrows(KernelRefusal.NotFound.class, () -> revoke.revoke(TokenId.next(), null));
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication("update api_token set revoked_at = null, revoked_by = null"));
        assertTrue(refused.getMessage().contains("stays revoked"), refused.getMessage());
        for (String sql : List.of(
                "update api_token set expires_at = expires_at + interval '1 day'",
                "update api_token set hash = repeat('0', 64)",
                "delete from api_token")) {
            SQLException denied = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(denied.getMessage().contains("permission denied"), sql + ": " + denied.getMessage());
        }
    }

    @Test
    void other_texts_are_no_tokens() {
        AuthenticateToken authenticate = bench.get(AuthenticateToken.class);
        for (String text : List.of("", "eaveside_", "\0", "é", "x".repeat(10_000))) {
            assertThrows(AccessRefusal.BadToken.class, () -> authenticate.authenticate(text));
        }
    }

    @Test
    void a_token_is_shown_once() {
        IssueToken issue = bench.get(IssueToken.class);
        NewToken asked = token(owner, 30);
        IssueToken.Issued first = issue.issue(asked);
        assertThrows(AccessRefusal.AlreadyShown.class, () -> issue.issue(asked));
        assertThrows(
                KernelRefusal.IdTaken.class,
                () -> issue.issue(new NewToken(asked.id(), owner.id(), "other", TokenScope.READ, 30, owner.id())));
        assertEquals(owner, authenticate(first));
        assertEquals(
                "nightly export",
                bench.get(ReadTokens.class).of(owner.id()).stream()
                        .filter(t -> t.id().equals(asked.id()))
                        .findFirst()
                        .orElseThrow()
                        .label());
    }

    @Test
    void neither_a_stranger_nor_a_deactivated_user_gets_a_token() {
        User gone = AccessFixture.add(bench, Role.TECHNICIAN);
        bench.get(DeactivateUser.class).deactivate(gone.id(), owner.id());
        assertThrows(KernelRefusal.NotActive.class, () -> issue(gone, 30));
        IssueToken issue = bench.get(IssueToken.class);
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> issue.issue(new NewToken(TokenId.next(), UserId.next(), "x", TokenScope.READ, 30, null)));
        assertThrows(KernelRefusal.OutOfRange.class, () -> token(owner, 0));
        assertThrows(KernelRefusal.OutOfRange.class, () -> token(owner, NewToken.LONGEST_DAYS + 1));
        issue(owner, NewToken.LONGEST_DAYS);
    }
}
