package eaveside.web.settings;

import eaveside.access.GeneratePassword;
import eaveside.access.ReadTokens;
import eaveside.access.ReadTokens.Token;
import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.TokenId;
import eaveside.access.User;
import eaveside.kernel.UserId;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Fills the page of a person with the person's tokens. */
@Dependent
public class UserPages {
    private static final String USUAL_DAYS = "90";

    private final ReadUsers readUsers;
    private final ReadTokens readTokens;
    private final GeneratePassword generatePassword;
    private final Viewer viewer;
    private final Clock clock;

    @Inject
    public UserPages(
            ReadUsers readUsers, ReadTokens readTokens, GeneratePassword generatePassword, Viewer viewer, Clock clock) {
        this.readUsers = readUsers;
        this.readTokens = readTokens;
        this.generatePassword = generatePassword;
        this.viewer = viewer;
        this.clock = clock;
    }

    /**
     * One person.
     *
     * @param  password made up for the reset that this page offers; worth nothing until it is sent
     * @param  tokenId  for the token that this page offers to issue
     */
    public record UserPage(
            User user,
            List<Token> tokens,
            Instant now,
            Map<String, String> roles,
            String password,
            TokenId tokenId,
            Fields fields)
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
        ReadUsers.Versioned user = readUsers.versioned(id);
        return page(
                user.user(),
                Fields.showing(Map.of(
                        "version",
                        String.valueOf(user.version()),
                        "name",
                        user.user().name(),
                        "role",
                        user.user().role().name(),
                        "days",
                        USUAL_DAYS)));
    }

    /** After a form of the page was refused; the forms that were not sent show what is stored. */
    UserPage of(UserId id, Fields fields) {
        ReadUsers.Versioned user = readUsers.versioned(id);
        Map<String, String> unsent = new HashMap<>();
        unsent.put("version", String.valueOf(user.version()));
        unsent.put("name", user.user().name());
        unsent.put("role", user.user().role().name());
        unsent.put("days", USUAL_DAYS);
        return page(user.user(), fields.completedBy(unsent));
    }

    private UserPage page(User user, Fields fields) {
        return new UserPage(
                user,
                readTokens.of(user.id()),
                clock.instant(),
                roles(viewer.view()),
                generatePassword.generate(),
                TokenId.next(),
                fields);
    }

    static Map<String, String> roles(View view) {
        Map<String, String> roles = new LinkedHashMap<>();
        for (Role role : Role.values()) {
            roles.put(role.name(), view.t("settings.role", role));
        }
        return roles;
    }
}
