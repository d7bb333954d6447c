package eaveside.access;

import eaveside.access.internal.AccessQueries;
import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The people of the company, the deactivated ones included. */
@Shared
public class ReadUsers {
    private final Users users;
    private final AccessQueries queries;

    @Inject
    public ReadUsers(Users users, AccessQueries queries) {
        this.users = users;
        this.queries = queries;
    }

    /** Refuses an unknown id with {@link eaveside.kernel.KernelRefusal.NotFound}. */
    @Transactional
    public User user(UserId id) {
        return users.required(id).toUser();
    }

    /** The user of the username, typed in whatever case. */
    @Transactional
    public Optional<User> byUsername(String username) {
        return Username.typed(username)
                .flatMap(
                        typed -> queries.usersByUsername(typed.value()).stream().findFirst())
                .map(UserRow::toUser);
    }

    /** By name. */
    @Transactional
    public List<User> all() {
        return queries.users().stream().map(UserRow::toUser).toList();
    }

    /** Counts up whenever sessions of the user end as a whole: with another password, a reset, a deactivation. */
    @Transactional
    public int credentials(UserId id) {
        return users.required(id).credentials();
    }

    /** The active technicians, by name. */
    @Transactional
    public List<User> technicians() {
        return queries.activeUsers(Role.TECHNICIAN).stream()
                .map(UserRow::toUser)
                .toList();
    }

    /** Refuses an unknown id. */
    @Transactional
    public String nameOf(UserId id) {
        return user(id).name();
    }

    /** The names of those that exist, in one question to the database. */
    @Transactional
    public Map<UserId, String> namesOf(Collection<UserId> ids) {
        if (ids.isEmpty()) {
            return Map.of();
        }
        return queries.usersOf(ids.stream().map(UserId::value).distinct().toList()).stream()
                .map(UserRow::toUser)
                .collect(Collectors.toUnmodifiableMap(User::id, User::name));
    }

    /** Whether anybody has been added yet: before, the command line asks for the first owner. */
    @Transactional
    public boolean areThereAny() {
        return queries.countUsers() > 0;
    }
}
