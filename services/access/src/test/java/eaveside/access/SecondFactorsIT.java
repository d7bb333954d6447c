package eaveside.access;

import static eaveside.access.AccessFixture.PASSWORD;
import static eaveside.access.AccessFixture.address;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.bastiaanjansen.otp.TOTPGenerator;
import eaveside.kernel.KernelRefusal;
import eaveside.testing.Bench;
import java.net.URI;
import java.net.URISyntaxException;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The codes of authenticator apps as the second step. Passkeys need a browser: see PasskeysBrowserIT. */
class SecondFactorsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static User owner;

    @BeforeAll
    static void owner() {
        owner = AccessFixture.add(bench, Role.OWNER);
    }

    /** What the app on the phone shows at that time. */
    private static String shown(AppKey setting) {
        try {
            return TOTPGenerator.fromURI(new URI(setting.uri()))
                    .at(bench.clock().instant());
        } catch (URISyntaxException e) {
            throw new AssertionError(e);
        }
    }

    private static void nextCode() {
        bench.clock().forward(Duration.ofSeconds(30));
    }

    private static AppKey setUp(User user) {
        SetUpApp app = bench.get(SetUpApp.class);
        AppKey setting = app.begin(user.id());
        app.confirm(user.id(), shown(setting));
        nextCode();
        return setting;
    }

    private static SignedIn signIn(User user) {
        return AccessFixture.signIn(bench, user.username(), PASSWORD, address());
    }

    private static @Nullable Duty duty(String session, boolean ownersNeedTwo) {
        return bench.get(ResumeSession.class)
                .resume(session, ownersNeedTwo)
                .orElseThrow()
                .duty();
    }

    @Test
    void with_an_app_set_up_the_password_is_half_a_sign_in() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        String before = AccessFixture.session(bench, signIn(user));
        AppKey setting = setUp(user);
        assertEquals(Duty.SECOND_FACTOR, duty(before, false), "an older session owes the code too");
        String half = AccessFixture.session(bench, signIn(user));
        assertEquals(Duty.SECOND_FACTOR, duty(half, false));
        EnterCode enter = bench.get(EnterCode.class);
        assertThrows(AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), "000000", address()));
        String code = shown(setting);
        SignedIn strong = enter.enter(user.id(), code.substring(0, 3) + " " + code.substring(3), address());
        assertTrue(strong.strong());
        assertNull(duty(AccessFixture.session(bench, strong), true));
        assertThrows(
                AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), code, address()), "none is taken twice");
        bench.clock().forward(Duration.ofMinutes(11));
        assertTrue(bench.get(ResumeSession.class).resume(half, false).isEmpty(), "half a sign-in lasts ten minutes");
    }

    /** RFC 6238, 5.2: at most one step of delay. */
    @Test
    void a_code_is_good_for_its_step_and_one_beside_it() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        AppKey setting = setUp(user);
        EnterCode enter = bench.get(EnterCode.class);
        String old = shown(setting);
        nextCode();
        nextCode();
        assertThrows(AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), old, address()));
        String late = shown(setting);
        nextCode();
        enter.enter(user.id(), late, address());
    }

    @Test
    void guessing_codes_waits_longer_each_time() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        AppKey setting = setUp(user);
        EnterCode enter = bench.get(EnterCode.class);
        for (int i = 0; i < 5; i++) {
            assertThrows(AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), "12345x", address()));
        }
        assertThrows(AccessRefusal.TooSoon.class, () -> enter.enter(user.id(), shown(setting), address()));
        bench.clock().forward(Duration.ofSeconds(2));
        enter.enter(user.id(), shown(setting), address());
        assertEquals(
                5L,
                bench.value(
                        "select count(*) from audit_event where action = 'sign-in.code' and outcome = 'REFUSED' and user_id = ?",
                        user.id().value()));
    }

    @Test
    void an_app_counts_once_it_has_shown_a_code() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        SetUpApp app = bench.get(SetUpApp.class);
        assertThrows(KernelRefusal.NotFound.class, () -> app.pending(user.id()));
        AppKey first = app.begin(user.id());
        AppKey second = app.begin(user.id());
        assertNotEquals(first.secret(), second.secret());
        assertEquals(second, app.pending(user.id()));
        assertTrue(second.secret().matches("[A-Z2-7]{32}"), "160 bits");
        assertFalse(second.toString().contains(second.secret()));
        assertThrows(AccessRefusal.WrongCode.class, () -> app.confirm(user.id(), shown(first)));
        assertNull(duty(AccessFixture.session(bench, signIn(user)), false));
        assertTrue(app.confirm(user.id(), shown(second)).strong());
        assertEquals(Duty.SECOND_FACTOR, duty(AccessFixture.session(bench, signIn(user)), false));
        assertThrows(AccessRefusal.AppSetUp.class, () -> app.begin(user.id()));
        assertTrue(bench.get(ReadSecondFactors.class).of(user.id()).areThereAny());
        app.remove(user.id());
        app.remove(user.id());
        assertNull(duty(AccessFixture.session(bench, signIn(user)), false));
    }

    @Test
    void owners_need_two_where_the_address_can_be_reached_by_others() {
        String session = AccessFixture.session(bench, signIn(owner));
        assertEquals(Duty.SET_UP_SECOND_FACTOR, duty(session, true));
        assertNull(duty(session, false));
        String office = AccessFixture.session(bench, signIn(AccessFixture.add(bench, Role.OFFICE)));
        assertNull(duty(office, true));
    }

    @Test
    void what_was_lost_is_reset_by_the_owner_or_the_command_line() {
        User user = AccessFixture.add(bench, Role.OWNER);
        setUp(user);
        String session = AccessFixture.session(bench, signIn(user));
        ResetSecondFactors reset = bench.get(ResetSecondFactors.class);
        reset.reset(user.id(), owner.id());
        reset.reset(user.id(), owner.id());
        assertEquals(Optional.empty(), AccessFixture.resumed(bench, session), "sessions end with them");
        assertNull(duty(AccessFixture.session(bench, signIn(user)), false));
        setUp(user);
        bench.get(RecoverOwner.class).recover(new Username(user.username()), new NewPassword(PASSWORD));
        assertFalse(bench.get(ReadSecondFactors.class).of(user.id()).areThereAny());
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event where action = 'second-factors.reset' and subject = ?",
                        user.username()));
    }

    @Test
    void a_password_is_asked_for_once_more() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        ConfirmPassword confirm = bench.get(ConfirmPassword.class);
        confirm.confirm(user.id(), PASSWORD.toCharArray(), address(), null);
        for (int i = 0; i < 3; i++) {
            assertThrows(
                    AccessRefusal.WrongCredentials.class,
                    () -> confirm.confirm(user.id(), "not the password".toCharArray(), address(), null));
        }
        assertThrows(
                AccessRefusal.TooSoon.class, () -> confirm.confirm(user.id(), PASSWORD.toCharArray(), address(), null));
    }
}
