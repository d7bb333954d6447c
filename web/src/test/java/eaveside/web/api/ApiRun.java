package eaveside.web.api;

import eaveside.schema.BooksProof;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * One company's work sent through the whole interface for scripts in one go, in an order that never changes. It runs once
 * for all tests that look at what was sent and answered; its server is stopped then.
 */
public final class ApiRun {
    private static final class Shared {
        private static final ApiRun ONE = new ApiRun(1);
    }

    private final World world;
    private final Map<String, String> parts = new LinkedHashMap<>();
    private final List<BooksProof.Result> proofs;

    /** @param  atOnce how many of each change are sent at the same time, all alike */
    ApiRun(int atOnce) {
        world = new World(atOnce);
        send(People::users);
        send(Setup::settings);
        send(Goods::stock);
        send(Sold::services);
        send(Clients::customers);
        send(Sold::prices);
        send(Sold::quotes);
        send(Moves::movements);
        send(Visits::visits);
        send(Seen::findings);
        send(Billing::invoices);
        send(Paying::payments);
        send(Ledger::books);
        send(Ledger::audit);
        send(Access::all);
        try (var connection = world.server().database().asOwner().getConnection()) {
            proofs = BooksProof.run(connection);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        world.server().stop();
    }

    /** An area that cannot go on is a surprise; what comes after it is sent all the same. */
    private void send(Function<World, Map<String, String>> area) {
        try {
            parts.putAll(area.apply(world));
        } catch (IllegalStateException e) {
            world.surprises().add(String.valueOf(e.getMessage()));
        }
    }

    /** The first call sends it all. */
    public static ApiRun shared() {
        return Shared.ONE;
    }

    /** Everything that was sent to an operation and answered. */
    public List<World.Exchange> exchanges() {
        return world.exchanges();
    }

    /** What was written of each part, by the name of its file. */
    Map<String, String> parts() {
        return parts;
    }

    List<String> surprises() {
        return world.surprises();
    }

    /** See {@link World#unlike}. */
    List<String> unlike() {
        return world.unlike();
    }

    /** See {@link World#spoiled}. */
    Set<String> spoiled() {
        return world.spoiled();
    }

    /** See {@link World#untold}. */
    List<String> untold() {
        return world.untold();
    }

    List<BooksProof.Result> proofs() {
        return proofs;
    }
}
