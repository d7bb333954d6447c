package eaveside.web.margins;

import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRef;
import eaveside.ledger.AccountRole;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.ReadLedger;
import eaveside.margins.Figure;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The address of the entries behind a figure. */
public final class Opens {
    private final Map<AccountRole, AccountCode> codes;

    public Opens(Map<AccountRole, AccountCode> codes) {
        this.codes = Map.copyOf(codes);
    }

    static Opens of(ReadLedger readLedger) {
        return new Opens(readLedger.accountsInRoles());
    }

    public String link(Figure figure) {
        EntryFilter filter = figure.opens();
        List<String> query = new ArrayList<>();
        filter.accounts().forEach(account -> add(query, "account", code(account)));
        add(query, "from", filter.from());
        add(query, "to", filter.to());
        add(query, "line", filter.withoutServiceLine() ? "none" : filter.serviceLine());
        add(query, "visit", filter.visit());
        filter.customers().forEach(customer -> add(query, "customer", customer));
        add(query, "cost", filter.costType());
        if (filter.fromFindings()) {
            add(query, "found", "yes");
        }
        return "/books/entries?" + String.join("&", query);
    }

    private @Nullable Object code(AccountRef account) {
        return switch (account) {
            case AccountCode code -> code;
            case AccountRole role -> codes.get(role);
        };
    }

    private static void add(List<String> query, String name, @Nullable Object value) {
        if (value != null) {
            query.add(name + "=" + URLEncoder.encode(value.toString(), StandardCharsets.UTF_8));
        }
    }
}
