package eaveside.web.settings;

import eaveside.access.GeneratePassword;
import eaveside.access.NewToken;
import eaveside.access.ReadTokens;
import eaveside.access.ReadUsers;
import eaveside.access.Token;
import eaveside.access.TokenId;
import eaveside.access.User;
import eaveside.kernel.UserId;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/** Fills the page of a user with the user's tokens. */
@Dependent
public class UserForms {
    private static final String USUAL_DAYS = "90";

    @Inject
    ReadUsers readUsers;

    @Inject
    ReadTokens readTokens;

    @Inject
    GeneratePassword generatePassword;

    @Inject
    Viewer viewer;

    @Inject
    Clock clock;

    /**
     * One user.
     *
     * @param  user     as stored
     * @param  password made up for the reset that this page offers; worth nothing until it is sent
     * @param  reset    what is wrong with a password that was sent
     */
    public record UserPage(
            User user,
            List<Token> tokens,
            Instant now,
            String password,
            Form<User> form,
            Form<NewToken> token,
            Fields reset)
            implements Page {
        @Override
        public String template() {
            return "settings/user.jte";
        }

        /** Never the password. */
        @Override
        public String toString() {
            return "page of " + user.username();
        }
    }

    UserPage of(UserId id) {
        return page(id, stored(id), fresh(), Fields.empty());
    }

    UserPage withUser(UserId id, Form<User> form) {
        return page(id, form, fresh(), Fields.empty());
    }

    UserPage withToken(UserId id, Form<NewToken> token) {
        return page(id, stored(id), token, Fields.empty());
    }

    UserPage withReset(UserId id, Fields reset) {
        return page(id, stored(id), fresh(), reset);
    }

    Form<User> stored(UserId id) {
        return viewer.form(readUsers.user(id));
    }

    private Form<NewToken> fresh() {
        return viewer.form(NewToken.class, Map.of("id", TokenId.next().toString(), "days", USUAL_DAYS));
    }

    private UserPage page(UserId id, Form<User> form, Form<NewToken> token, Fields reset) {
        return new UserPage(
                readUsers.user(id),
                readTokens.of(id),
                clock.instant(),
                generatePassword.generate(),
                form.labeled("settings.users"),
                token.labeled("settings.tokens"),
                reset.labeled("settings.users", "user"));
    }
}
