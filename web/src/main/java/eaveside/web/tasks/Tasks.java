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
import eaveside.access.Username;
import eaveside.demo.DemoClock;
import eaveside.demo.DemoUser;
import eaveside.demo.LoadDemoCompany;
import eaveside.kernel.KernelRefusal;
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
    private final FoundCompany foundCompany;
    private final AddUser addUser;
    private final RecoverOwner recoverOwner;
    private final IssueToken issueToken;
    private final ReadUsers readUsers;
    private final GeneratePassword generatePassword;
    private final LoadDemoCompany loadDemoCompany;
    private final Books books;
    private final Clock clock;

    @Inject
    public Tasks(
            FoundCompany foundCompany,
            AddUser addUser,
            RecoverOwner recoverOwner,
            IssueToken issueToken,
            ReadUsers readUsers,
            GeneratePassword generatePassword,
            LoadDemoCompany loadDemoCompany,
            Books books,
            Clock clock) {
        this.foundCompany = foundCompany;
        this.addUser = addUser;
        this.recoverOwner = recoverOwner;
        this.issueToken = issueToken;
        this.readUsers = readUsers;
        this.generatePassword = generatePassword;
        this.loadDemoCompany = loadDemoCompany;
        this.books = books;
        this.clock = clock;
    }

    /** Does the task and returns what the person at the terminal is told. */
    String perform(Properties task) {
        return switch (required(task, "task")) {
            case "found" -> found(task);
            case "token" -> token(task);
            case "recover" -> recover(task);
            case "demo" -> demo();
            default -> throw new TaskRefusal.Unknown(required(task, "task"));
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
            throw new TaskRefusal.HasUsers();
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
        var issued = issueToken.issue(
                new NewToken(TokenId.next(), user.id(), required(task, "label"), days(required(task, "days")), null));
        return "Token of " + username + " until " + issued.expires() + ", shown only now:\n" + issued.secret();
    }

    private static int days(String text) {
        // Anything else is beyond what the token itself allows, and refused there.
        return text.matches("\\d{1,4}") ? Integer.parseInt(text) : 0;
    }

    private String recover(Properties task) {
        var password = generatePassword.generate();
        var owner = recoverOwner.recover(new Username(required(task, "username")), new NewPassword(password));
        return "New password of " + owner.username() + ": " + password + "\nChange it after signing in.";
    }

    /** The demo company with its history; answers the usernames, for they are known only now. */
    private String demo() {
        var usernames = DemoClock.inHistory(loadDemoCompany::load);
        return usernames.stream().map(Tasks::line).collect(Collectors.joining("\n"));
    }

    private static String line(DemoUser username) {
        return "%-11s %-16s username %-6s password %s"
                .formatted(
                        username.role().name().toLowerCase(Locale.ROOT),
                        username.name(),
                        username.username(),
                        username.password());
    }

    private static String required(Properties task, String key) {
        var value = task.getProperty(key);
        if (value == null || value.isBlank()) {
            throw new TaskRefusal.Missing(key);
        }
        return value.strip();
    }
}
