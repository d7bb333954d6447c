package eaveside.customers;

import eaveside.customers.internal.HitSearch;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Finds a few customers, sites and contacts for the search that stands on every page. */
@Shared
public class FindCustomerHits {
    private final HitSearch search;

    @Inject
    public FindCustomerHits(HitSearch search) {
        this.search = search;
    }

    /**
     * The best hits for beginnings of words, in any order, accents and capitals aside; for a phone number in any writing;
     * and, where nothing is spelled like that, for what comes close.
     *
     * @param  most of each kind, 1 to 50
     */
    @Transactional
    public CustomerHits search(String text, int most) {
        return search.search(text, most);
    }
}
