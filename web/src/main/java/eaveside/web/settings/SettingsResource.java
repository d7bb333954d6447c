package eaveside.web.settings;

import eaveside.access.AddUser;
import eaveside.access.ChangeUser;
import eaveside.access.GeneratePassword;
import eaveside.access.Login;
import eaveside.access.NewPassword;
import eaveside.access.ReadUsers;
import eaveside.access.ResetPassword;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.costing.CostRates;
import eaveside.costing.ReadCostRates;
import eaveside.costing.SetCostRates;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.ledger.Company;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.offerings.SetTax;
import eaveside.offerings.TaxCategory;
import eaveside.offerings.TaxCode;
import eaveside.offerings.TaxSetting;
import eaveside.offerings.TaxSettings;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.net.URI;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The owner's settings on one page, each with its form. */
@Path("/settings")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
public class SettingsResource {
    private final ReadUsers readUsers;
    private final AddUser addUser;
    private final ChangeUser changeUser;
    private final ResetPassword resetPassword;
    private final GeneratePassword generatePassword;
    private final ReadCostRates readCostRates;
    private final SetCostRates setCostRates;
    private final TaxSettings taxSettings;
    private final SetTax setTax;
    private final Catalogue catalogue;
    private final Books books;
    private final Viewer viewer;
    private final Trail trail;
    private final Names names;

    @Inject
    public SettingsResource(
            ReadUsers readUsers,
            AddUser addUser,
            ChangeUser changeUser,
            ResetPassword resetPassword,
            GeneratePassword generatePassword,
            ReadCostRates readCostRates,
            SetCostRates setCostRates,
            TaxSettings taxSettings,
            SetTax setTax,
            Catalogue catalogue,
            Books books,
            Viewer viewer,
            Trail trail,
            Names names) {
        this.readUsers = readUsers;
        this.addUser = addUser;
        this.changeUser = changeUser;
        this.resetPassword = resetPassword;
        this.generatePassword = generatePassword;
        this.readCostRates = readCostRates;
        this.setCostRates = setCostRates;
        this.taxSettings = taxSettings;
        this.setTax = setTax;
        this.catalogue = catalogue;
        this.books = books;
        this.viewer = viewer;
        this.trail = trail;
        this.names = names;
    }

    /** @param secret a new password with its login, shown this once; empty otherwise */
    public record SettingsPage(
            Company company,
            List<User> users,
            List<CostRates> rates,
            List<TaxSetting> taxes,
            List<Offering> offerings,
            Names names,
            Fields fields,
            String secret)
            implements Page {
        @Override
        public String template() {
            return "settings/settings.jte";
        }

        public Map<String, String> roles(View view) {
            Map<String, String> roles = new LinkedHashMap<>();
            for (Role role : Role.values()) {
                roles.put(role.name(), view.t("settings.role", role));
            }
            return roles;
        }

        public Map<String, String> categories(View view) {
            Map<String, String> categories = new LinkedHashMap<>();
            for (TaxCategory category : TaxCategory.values()) {
                categories.put(category.name(), view.t("settings.category", category));
            }
            return categories;
        }
    }

    @GET
    @Transactional
    public SettingsPage settings() {
        return page(
                Fields.showing(Map.of(
                        "id", UserId.next().toString(),
                        "from", books.today().toString(),
                        "taxFrom", books.today().toString())),
                "");
    }

    private SettingsPage page(Fields fields, String secret) {
        return new SettingsPage(
                books.company(),
                readUsers.all(),
                readCostRates.all(),
                taxSettings.all(),
                catalogue.offerings(),
                names,
                fields,
                secret);
    }

    @POST
    @Path("users")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response addUser(MultivaluedMap<String, String> form) {
        Fields fields = Fields.of(form);
        String name = fields.text("name");
        Role role = fields.choice("role", Role.class);
        Login login = fields.made("login", () -> new Login(fields.text("login")));
        UserId id = new UserId(fields.id("id"));
        String password = generatePassword.generate();
        boolean added = fields.run(() -> {
            if (login != null && role != null) {
                addUser.add(new AddUser.NewUser(id, login, name, role, new NewPassword(password), viewer.id()));
            }
        });
        return Response.status(fields.status())
                .entity(added ? page(Fields.empty(), fields.typed("login") + ": " + password) : page(fields, ""))
                .build();
    }

    @POST
    @Path("users/{id}/{change: deactivate|activate}")
    public Response changeUser(@PathParam("id") String id, @PathParam("change") String change) {
        ReadUsers.Versioned user = readUsers.versioned(UserId.of(id));
        Fields fields = Fields.empty();
        boolean changed = fields.run(() -> changeUser.change(new ChangeUser.Change(
                user.user().id(),
                user.version(),
                user.user().name(),
                user.user().role(),
                change.equals("activate"),
                viewer.id())));
        return changed
                ? Response.seeOther(URI.create("/settings?done=settings.saved")).build()
                : Response.status(fields.status()).entity(page(fields, "")).build();
    }

    @POST
    @Path("users/{id}/password")
    public Response resetPassword(@PathParam("id") String id) {
        User user = readUsers.user(UserId.of(id));
        String password = generatePassword.generate();
        resetPassword.reset(user.id(), new NewPassword(password), viewer.id());
        return Response.ok(page(Fields.empty(), user.login() + ": " + password)).build();
    }

    @POST
    @Path("rates")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response setRates(MultivaluedMap<String, String> form) {
        Fields fields = Fields.of(form);
        LocalDate from = fields.date("from", books.today());
        Money labour = fields.money("labourPerHour", books.currency());
        BigDecimal travel = fields.decimal("travelPerDistance");
        Money overhead = fields.money("overheadPerHour", books.currency());
        Unit distance = viewer.view().us() ? Unit.MILE : Unit.KILOMETRE;
        boolean set = fields.run(() -> setCostRates.set(
                new CostRates(from, labour, UnitPrice.perOne(books.currency(), travel, distance), overhead),
                viewer.id()));
        return saved(fields, set, "rates.set", from);
    }

    @POST
    @Path("taxes")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response setTax(MultivaluedMap<String, String> form) {
        Fields fields = Fields.of(form);
        String code = fields.text("code");
        TaxCategory category = fields.choice("category", TaxCategory.class);
        BigDecimal rate = fields.decimal("rate");
        LocalDate from = fields.date("taxFrom", books.today());
        boolean set = fields.run(() -> setTax.set(
                new TaxSetting(
                        new TaxCode(code),
                        category == null ? TaxCategory.O : category,
                        Percent.of(rate),
                        from,
                        fields.optional("exemptionReason")),
                viewer.id()));
        return saved(fields, set, "tax.set", code);
    }

    private Response saved(Fields fields, boolean went, String action, Object subject) {
        if (!went) {
            return Response.status(fields.status()).entity(page(fields, "")).build();
        }
        trail.done(action, subject);
        return Response.seeOther(URI.create("/settings?done=settings.saved")).build();
    }
}
