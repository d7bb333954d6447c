package eaveside.demo;

import eaveside.kernel.UserId;
import java.util.List;

/**
 * The demo company's people.
 *
 * @param  crews who drives with which van, the lead technician first
 */
record Staff(UserId owner, List<UserId> office, List<List<UserId>> crews, List<DemoUser> usernames) {
    Staff {
        office = List.copyOf(office);
        crews = List.copyOf(crews);
        usernames = List.copyOf(usernames);
    }

    /** The one who quotes and books. */
    UserId scheduler() {
        return office.getFirst();
    }

    /** The one who bills, follows up on payments and keeps the books. */
    UserId biller() {
        return office.getLast();
    }
}
