package eaveside.access;

import eaveside.access.internal.PasswordHasher;
import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Check;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import org.jspecify.annotations.Nullable;

/** Lets a person in: an owner, someone of the office, or a technician. */
@Shared
public class AddUser {
    private final Users users;
    private final PasswordHasher hasher;
    private final ReadCompanyWords companyWords;
    private final RecordAudit audit;

    @Inject
    public AddUser(Users users, PasswordHasher hasher, ReadCompanyWords companyWords, RecordAudit audit) {
        this.users = users;
        this.hasher = hasher;
        this.companyWords = companyWords;
        this.audit = audit;
    }

    /**
     * Who comes.
     *
     * @param  id made by the client
     * @param  password the user has to choose another at the first sign-in, unless it was typed at the command line
     * @param  by       null from the command line, as for the first owner
     */
    public record NewUser(
            UserId id,
            Username username,
            String name,
            Role role,
            NewPassword password,
            @Nullable UserId by) {
        public NewUser {
            Check check = new Check();
            name = check.required("name", name, 100);
            String known = name;
            check.value(
                    () -> {
                        password.requireUnlike(username, known);
                        return password;
                    },
                    password);
            check.done();
        }
    }

    /** Refuses a username that is taken, and an id that is another user's; the same again is a retry. */
    @Transactional
    public User add(NewUser asked) {
        asked.password().requireUnlike(asked.username(), asked.name(), companyWords.words());
        String hash = hasher.hash(asked.password().characters());
        boolean given = asked.by() != null;
        if (users.insertIfFree(asked.id(), asked.username(), asked.name(), asked.role(), hash, given)) {
            audit.done(
                    AuditEvent.done("user.added", asked.by(), asked.username().value())
                            .with(asked.role().name()));
            return users.required(asked.id()).toUser();
        }
        UserRow before = users.find(asked.id());
        if (before == null) {
            throw new KernelRefusal.Taken("user", "username", asked.username().value());
        }
        User user = before.toUser();
        if (!user.saysTheSameAs(new User(asked.id(), asked.username().value(), asked.name(), asked.role(), true, 0))
                || !hasher.matches(asked.password().characters(), before.passwordHash())) {
            throw new KernelRefusal.IdTaken("user", asked.id(), user.name());
        }
        return user;
    }
}
