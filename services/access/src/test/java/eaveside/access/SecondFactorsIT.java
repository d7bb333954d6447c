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
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
        SessionId session = at(user);
        AppKey setting = app.begin(user.id(), session);
        app.confirm(user.id(), session, shown(setting));
        nextCode();
        return setting;
    }

    private static SessionId at(User user) {
        return bench.get(BeginSession.class)
                .begin(signIn(user), address(), "a browser", null)
                .id();
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
        assertThrows(AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), "000000", address(), null));
        String code = shown(setting);
        SignedIn strong = enter.enter(user.id(), code.substring(0, 3) + " " + code.substring(3), address(), null);
        assertTrue(strong.strong());
        assertNull(duty(AccessFixture.session(bench, strong), true));
        assertThrows(
                AccessRefusal.WrongCode.class,
                () -> enter.enter(user.id(), code, address(), null),
                "none is taken twice");
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
        assertThrows(AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), old, address(), null));
        String late = shown(setting);
        nextCode();
        enter.enter(user.id(), late, address(), null);
    }

    @Test
    void guessing_codes_waits_longer_each_time() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        AppKey setting = setUp(user);
        EnterCode enter = bench.get(EnterCode.class);
        for (int i = 0; i < 5; i++) {
            assertThrows(AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), "12345x", address(), null));
        }
        assertThrows(AccessRefusal.TooSoon.class, () -> enter.enter(user.id(), shown(setting), address(), null));
        bench.clock().forward(Duration.ofSeconds(2));
        enter.enter(user.id(), shown(setting), address(), null);
        assertEquals(
                5L,
                bench.value(
                        "select count(*) from audit_event where action = 'sign-in.code' and outcome = 'REFUSED' and user_id = ?",
                        user.id().value()));
    }

    @Test
    void codes_guessed_elsewhere_never_delay_a_browser_in_which_one_was_shown_before() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        AppKey setting = setUp(user);
        EnterCode enter = bench.get(EnterCode.class);
        SignIn signIn = bench.get(SignIn.class);
        BeginSession begin = bench.get(BeginSession.class);
        SignedIn both = enter.enter(user.id(), shown(setting), address(), null);
        String known = begin.begin(both, address(), "a browser", null).browser();
        // Somebody else has the password: known by that alone, and in so many browsers that older ones are forgotten.
        for (int i = 0; i < 25; i++) {
            bench.clock().forward(Duration.ofSeconds(1));
            begin.begin(signIn(user), address(), "a browser", null);
        }
        nextCode();
        String guesser = begin.begin(signIn(user), address(), "a browser", null).browser();
        for (int i = 0; i < 5; i++) {
            assertThrows(AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), "12345x", address(), guesser));
        }
        assertThrows(AccessRefusal.TooSoon.class, () -> enter.enter(user.id(), shown(setting), address(), guesser));
        assertThrows(AccessRefusal.TooSoon.class, () -> enter.enter(user.id(), shown(setting), address(), null));
        assertEquals(
                user,
                enter.enter(user.id(), shown(setting), address(), known).user(),
                "nor do many who know the password make it forgotten");
        assertEquals(
                user,
                signIn.signIn(user.username(), PASSWORD.toCharArray(), address(), known)
                        .user());
        for (int i = 0; i < 5; i++) {
            assertThrows(AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), "12345x", address(), known));
        }
        nextCode();
        assertThrows(AccessRefusal.WrongCode.class, () -> enter.enter(user.id(), "12345x", address(), known));
        assertThrows(
                AccessRefusal.TooSoon.class,
                () -> enter.enter(user.id(), shown(setting), address(), known),
                "it waits for its own slips");
    }

    @Test
    void whoever_has_nothing_to_show_beside_the_password_any_more_is_known_by_that_alone_again() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        AppKey setting = setUp(user);
        BeginSession begin = bench.get(BeginSession.class);
        EnterCode enter = bench.get(EnterCode.class);
        for (int i = 0; i < 20; i++) {
            nextCode();
            begin.begin(enter.enter(user.id(), shown(setting), address(), null), address(), "a browser", null);
        }
        String strong = "select count(*) from known_browser where second_step and user_id = ?";
        assertEquals(20L, bench.value(strong, user.id().value()));
        bench.get(SetUpApp.class).remove(user.id());
        assertEquals(0L, bench.value(strong, user.id().value()));
        String laptop = begin.begin(signIn(user), address(), "a browser", null).browser();
        nextCode();
        String phone = begin.begin(signIn(user), address(), "a browser", null).browser();
        nextCode();
        assertEquals(
                laptop,
                begin.begin(signIn(user), address(), "a browser", laptop).browser(),
                "neither makes the other forgotten");
        assertEquals(
                phone, begin.begin(signIn(user), address(), "a browser", phone).browser());
    }

    @Test
    void a_session_in_which_the_second_step_was_shown_keeps_it_with_another_password() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        AppKey setting = setUp(user);
        User other = AccessFixture.add(bench, Role.OFFICE);
        BeginSession begin = bench.get(BeginSession.class);
        SessionId half = at(user);
        SessionId both = begin.begin(
                        bench.get(EnterCode.class).enter(user.id(), shown(setting), address(), null),
                        address(),
                        "a browser",
                        null)
                .id();
        ChangePassword change = bench.get(ChangePassword.class);
        NewPassword wanted = new NewPassword(PASSWORD + " and more");
        assertFalse(change.change(user.id(), PASSWORD.toCharArray(), wanted, address(), null, half)
                .strong());
        SignedIn again = change.change(user.id(), PASSWORD.toCharArray(), wanted, address(), null, both);
        assertTrue(again.strong(), "the same again is a retry");
        assertNull(duty(AccessFixture.session(bench, again), true));
        assertFalse(
                change.change(other.id(), PASSWORD.toCharArray(), wanted, address(), null, both)
                        .strong(),
                "somebody else's");
    }

    /** Whoever asks and never answers pushes out only what they asked themselves. */
    @Test
    void a_network_has_fifty_open_questions_for_passkeys_at_most() {
        UsePasskey passkeys = bench.get(UsePasskey.class);
        Site site = new Site("https://eaveside.example.com");
        passkeys.ask(site, null, "203.0.113.77");
        long before = (Long) bench.value("select count(*) from passkey_question");
        for (int i = 0; i < 60; i++) {
            passkeys.ask(site, null, "203.0.113.78");
        }
        assertEquals(before + 50, bench.value("select count(*) from passkey_question"));
        User user = AccessFixture.add(bench, Role.OFFICE);
        passkeys.ask(site, user.id(), "203.0.113.78");
        assertEquals(before + 51, bench.value("select count(*) from passkey_question"));
    }

    /** RFC 4226, 4, R6: 160 bits are recommended; one base 32 letter has five. */
    @Test
    void keys_of_apps_are_160_bits_at_random() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        Set<String> keys = new HashSet<>();
        for (int i = 0; i < 40; i++) {
            Matcher key = Pattern.compile("secret=([A-Z2-7]{32})(&|$)")
                    .matcher(
                            bench.get(SetUpApp.class).begin(user.id(), at(user)).uri());
            assertTrue(key.find());
            assertTrue(keys.add(key.group(1)));
        }
        for (int place = 0; place < 32; place++) {
            int at = place;
            assertTrue(keys.stream().map(key -> key.charAt(at)).distinct().count() > 8, "at " + place);
        }
    }

    @Test
    void the_setting_up_of_an_app_belongs_to_the_session_that_gave_the_password_and_ends_by_itself() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        SetUpApp app = bench.get(SetUpApp.class);
        SessionId mine = at(user);
        SessionId other = at(user);
        AppKey key = app.begin(user.id(), mine);
        assertThrows(KernelRefusal.NotFound.class, () -> app.pending(user.id(), other));
        assertThrows(KernelRefusal.NotFound.class, () -> app.confirm(user.id(), other, shown(key)));
        bench.clock().forward(Duration.ofMinutes(10));
        assertThrows(KernelRefusal.NotFound.class, () -> app.pending(user.id(), mine));
        assertThrows(KernelRefusal.NotFound.class, () -> app.confirm(user.id(), mine, shown(key)));
        AppKey again = app.begin(user.id(), mine);
        assertTrue(app.confirm(user.id(), mine, shown(again)).strong());
    }

    @Test
    void what_no_browser_sends_as_a_passkey_is_refused() {
        UsePasskey passkeys = bench.get(UsePasskey.class);
        Site site = new Site("https://eaveside.example.com");
        String address = address();
        for (String credential : List.of(
                "null",
                "",
                "{}",
                "[]",
                "1",
                "\"x\"",
                "true",
                "{\"id\":null}",
                "{\"id\":1,\"type\":\"public-key\"}",
                "{\"type\":\"public-key\",\"id\":\"AA\",\"rawId\":\"AA\",\"response\":null,\"clientExtensionResults\":{}}",
                "{\"type\":\"public-key\",\"id\":\"AA\",\"response\":{\"authenticatorData\":\"AA\",\"clientDataJSON\":\"AA\","
                        + "\"signature\":\"AA\"},\"clientExtensionResults\":{}}",
                "[".repeat(5_000))) {
            PasskeyQuestion question = passkeys.ask(site, null, address());
            assertThrows(
                    AccessRefusal.BadPasskey.class,
                    () -> passkeys.show(site, question.name(), credential, null, address),
                    credential);
            User user = AccessFixture.add(bench, Role.OFFICE);
            AddPasskey add = bench.get(AddPasskey.class);
            PasskeyQuestion asked = add.ask(user.id(), site);
            assertThrows(
                    AccessRefusal.BadPasskey.class,
                    () -> add.add(user.id(), site, asked.name(), "A key", credential),
                    credential);
        }
        long told = (Long) bench.value(
                "select count(*) from audit_event where action = 'sign-in.passkey' and address = ?", address);
        assertTrue(told >= 10 && told <= 12, told + " lines");
        for (int i = 0; i < 20; i++) {
            assertThrows(AccessRefusal.BadPasskey.class, () -> passkeys.show(site, "never asked", "{}", null, address));
        }
        assertEquals(
                told,
                (Long) bench.value(
                        "select count(*) from audit_event where action = 'sign-in.passkey' and address = ?", address),
                "an address that guesses on fills no log");
        assertThrows(AccessRefusal.BadPasskey.class, () -> new Site("http://[").host());
        assertThrows(AccessRefusal.BadPasskey.class, () -> new Site("https://a b").host());
    }

    @Test
    void an_app_counts_once_it_has_shown_a_code() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        SetUpApp app = bench.get(SetUpApp.class);
        SessionId session = at(user);
        assertThrows(KernelRefusal.NotFound.class, () -> app.pending(user.id(), session));
        AppKey first = app.begin(user.id(), session);
        AppKey second = app.begin(user.id(), session);
        assertNotEquals(first.secret(), second.secret());
        assertEquals(second, app.pending(user.id(), session));
        assertTrue(second.secret().matches("[A-Z2-7]{32}"), "160 bits");
        assertFalse(second.toString().contains(second.secret()));
        assertThrows(AccessRefusal.WrongCode.class, () -> app.confirm(user.id(), session, shown(first)));
        assertNull(duty(AccessFixture.session(bench, signIn(user)), false));
        assertTrue(app.confirm(user.id(), session, shown(second)).strong());
        assertEquals(Duty.SECOND_FACTOR, duty(AccessFixture.session(bench, signIn(user)), false));
        assertThrows(AccessRefusal.AppSetUp.class, () -> app.begin(user.id(), session));
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
        int replaces = bench.get(ReadUsers.class).credentials(user.id());
        reset.reset(user.id(), replaces, owner.id());
        reset.reset(user.id(), replaces, owner.id());
        assertEquals(Optional.empty(), AccessFixture.resumed(bench, session), "sessions end with them");
        assertNull(duty(AccessFixture.session(bench, signIn(user)), false));
        setUp(user);
        assertThrows(
                AccessRefusal.CredentialsChanged.class,
                () -> reset.reset(user.id(), replaces, owner.id()),
                "the same again takes away nothing that came after it");
        assertTrue(bench.get(ReadSecondFactors.class).of(user.id()).areThereAny());
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
