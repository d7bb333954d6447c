package eaveside.web.tasks;

import eaveside.access.AddUser;
import eaveside.access.GeneratePassword;
import eaveside.access.IssueToken;
import eaveside.access.NewPassword;
import eaveside.access.NewToken;
import eaveside.access.ReadUsers;
import eaveside.access.RecoverOwner;
import eaveside.access.Role;
import eaveside.access.TokenId;
import eaveside.access.TokenScope;
import eaveside.access.Username;
import eaveside.demo.DemoClock;
import eaveside.demo.LoadDemoCompany;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Refusal;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.ledger.Company;
import eaveside.ledger.FoundCompany;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Properties;
import java.util.stream.Collectors;

/** The tasks of the command line, each by the use cases that do it. */
@Dependent
public class Tasks {
    @Inject
    FoundCompany foundCompany;

    @Inject
    AddUser addUser;

    @Inject
    RecoverOwner recoverOwner;

    @Inject
    IssueToken issueToken;

    @Inject
    ReadUsers readUsers;

    @Inject
    GeneratePassword generatePassword;

    @Inject
    LoadDemoCompany loadDemoCompany;

    @Inject
    Books books;

    @Inject
    Clock clock;

    /** Does the task and returns what the person at the terminal is told. */
    String perform(Properties task) {
        var name = required(task, "task");
        return switch (name) {
            case "found" -> found(task);
            case "token" -> token(task);
            case "recover" -> recover(task);
            case "demo" -> demo();
            default -> throw new TaskRefusal(Refusal.Type.MALFORMED, "There is no task " + name);
        };
    }

    /** The company with its first owner. Everything is checked before anything is written. */
    private String found(Properties task) {
        var owner = new AddUser.NewUser(
                UserId.next(),
                new Username(required(task, "owner.username")),
                required(task, "owner.name"),
                Role.OWNER,
                new NewPassword(required(task, "owner.password")),
                null);
        if (!books.areFounded()) {
            foundCompany.found(company(task));
        }
        if (readUsers.areThereAny()) {
            throw new TaskRefusal(Refusal.Type.CONFLICT, "This company has users already; an owner adds further ones");
        }
        addUser.add(owner);
        return "The books of " + books.company().name() + " are open; sign in as "
                + owner.username().value();
    }

    private Company company(Properties task) {
        var zone = required(task, "company.zone");
        var country = required(task, "company.country").toUpperCase(Locale.ROOT);
        return new Company(
                required(task, "company.name"),
                new Company.Address("", "", "", "", country),
                "",
                "",
                "",
                required(task, "company.currency").toUpperCase(Locale.ROOT),
                zone,
                country.equals("US") ? Company.Measures.US : Company.Measures.METRIC,
                firstOfMonth(zone));
    }

    private LocalDate firstOfMonth(String zone) {
        var instant = clock.instant();
        // An unknown zone is refused with its name by the company itself.
        return (ZoneId.getAvailableZoneIds().contains(zone)
                        ? instant.atZone(ZoneId.of(zone))
                        : instant.atZone(clock.getZone()))
                .toLocalDate()
                .withDayOfMonth(1);
    }

    private String token(Properties task) {
        var username = required(task, "username");
        var user = readUsers
                .byUsername(username)
                .orElseThrow(() -> new KernelRefusal.NotFound("user", username).namedBy("username"));
        var issued = issueToken.issue(new NewToken(
                TokenId.next(),
                user.id(),
                required(task, "label"),
                TokenScope.valueOf(required(task, "scope")),
                days(required(task, "days")),
                null));
        return "Token of " + username + " until " + issued.expires() + ", shown only now:\n" + issued.secret();
    }

    private static int days(String text) {
        // Anything else is beyond what the token itself allows, and refused there.
        return text.matches("\\d{1,4}") ? Integer.parseInt(text) : 0;
    }

    private String recover(Properties task) {
        var password = generatePassword.generate();
        var owner = recoverOwner.recover(new Username(required(task, "username")), new NewPassword(password));
        return "New password of " + owner.username() + ": " + password
                + "\nChange it after signing in. Sessions, tokens, passkeys and the authenticator app of this user have ended.";
    }

    /** The demo company with its history; answers the usernames, for they are known only now. */
    private String demo() {
        return DemoClock.inHistory(loadDemoCompany::load).stream()
                .map(user -> "%-11s %-16s username %-6s password %s"
                        .formatted(
                                user.role().name().toLowerCase(Locale.ROOT),
                                user.name(),
                                user.username(),
                                user.password()))
                .collect(Collectors.joining("\n"));
    }

    private static String required(Properties task, String key) {
        var value = task.getProperty(key);
        if (value == null || value.isBlank()) {
            throw new TaskRefusal(Refusal.Type.MALFORMED, "Nothing was given for " + key);
        }
        return value.strip();
    }
}
