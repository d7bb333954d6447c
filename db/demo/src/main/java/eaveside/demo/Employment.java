package eaveside.demo;

import eaveside.access.AddUser;
import eaveside.access.ChangePassword;
import eaveside.access.GeneratePassword;
import eaveside.access.NewPassword;
import eaveside.access.Role;
import eaveside.access.Username;
import eaveside.kernel.UserId;
import eaveside.ledger.Company;
import eaveside.ledger.FoundCompany;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Founds the company and lets its people in. */
@Dependent
class Employment {
    static final String ZONE = "America/Denver";
    static final String TOWN = "Tansyford";
    static final String ZIP_CODE = "00042";

    private final FoundCompany foundCompany;
    private final AddUser addUser;
    private final ChangePassword changePassword;
    private final GeneratePassword generatePassword;

    @Inject
    Employment(
            FoundCompany foundCompany,
            AddUser addUser,
            ChangePassword changePassword,
            GeneratePassword generatePassword) {
        this.foundCompany = foundCompany;
        this.addUser = addUser;
        this.changePassword = changePassword;
        this.generatePassword = generatePassword;
    }

    void found(LocalDate booksFrom) {
        foundCompany.found(new Company(
                "Tansy Ridge Exterior Care",
                new Company.Address("3 Depot Street", TOWN, "QX", ZIP_CODE, "US"),
                "office@tansyridge.example.com",
                "555-0100",
                "",
                "USD",
                ZONE,
                Company.Measures.US,
                booksFrom));
    }

    Staff employ() {
        List<DemoUser> usernames = new ArrayList<>();
        UserId owner = add("edda", "Edda Thornby", Role.OWNER, null, usernames);
        UserId linus = add("linus", "Linus Marlet", Role.OFFICE, owner, usernames);
        UserId petra = add("petra", "Petra Quayle", Role.OFFICE, owner, usernames);
        UserId bram = add("bram", "Bram Osterly", Role.TECHNICIAN, owner, usernames);
        UserId nell = add("nell", "Nell Harrowick", Role.TECHNICIAN, owner, usernames);
        UserId tobin = add("tobin", "Tobin Sedgely", Role.TECHNICIAN, owner, usernames);
        UserId ivy = add("ivy", "Ivy Castellow", Role.TECHNICIAN, owner, usernames);
        return new Staff(owner, List.of(linus, petra), List.of(List.of(bram, nell), List.of(tobin, ivy)), usernames);
    }

    private UserId add(String username, String name, Role role, @Nullable UserId by, List<DemoUser> usernames) {
        UserId id = UserId.next();
        String password = generatePassword.generate();
        addUser.add(new AddUser.NewUser(id, new Username(username), name, role, new NewPassword(password), by));
        usernames.add(new DemoUser(role, name, username, by == null ? password : chosen(id, password)));
        return id;
    }

    /** Whoever was let in by somebody else has chosen a password since. */
    private String chosen(UserId id, String given) {
        String password = generatePassword.generate();
        changePassword.change(id, given.toCharArray(), new NewPassword(password), "", null, null);
        return password;
    }
}
