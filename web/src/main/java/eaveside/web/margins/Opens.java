package eaveside.web.margins;

import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRef;
import eaveside.ledger.AccountRole;
import eaveside.ledger.EntryFilter;
import eaveside.margins.Figure;
import eaveside.web.Link;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The addresses of the entries behind figures. */
public record Opens(Map<AccountRole, AccountCode> codes) {
    public String link(Figure figure) {
        EntryFilter filter = figure.opens();
        Link link = new Link("/books/entries");
        filter.accounts().forEach(account -> link.with("account", code(account)));
        link.with("from", filter.from())
                .with("to", filter.to())
                .with("line", filter.withoutServiceLine() ? "none" : filter.serviceLine())
                .with("visit", filter.visit());
        filter.customers().forEach(customer -> link.with("customer", customer));
        return link.with("cost", filter.costType())
                .with("found", filter.fromFindings() ? "yes" : null)
                .toString();
    }

    private @Nullable Object code(AccountRef account) {
        return switch (account) {
            case AccountCode code -> code;
            case AccountRole role -> codes.get(role);
        };
    }
}
