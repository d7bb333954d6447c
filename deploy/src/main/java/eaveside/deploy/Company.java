package eaveside.deploy;

import eaveside.schema.Schema;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;

/** One company's running Eaveside: its database and its web application, started and stopped together. */
final class Company implements AutoCloseable {
    private final DataFolder folder;
    private final PostgresServer postgres;
    private final WebServer web;

    private Company(DataFolder folder, PostgresServer postgres, WebServer web) {
        this.folder = folder;
        this.postgres = postgres;
        this.web = web;
    }

    /**
     * Starts everything in the data folder.
     *
     * @param demo whether an empty database is filled with the demo company
     */
    static Company start(DataFolder folder, String bind, int port, boolean demo) {
        var prepared = PreparedServer.current();
        folder.lock(WebServer.address(bind, port).toString());
        WebServer.checkFree(bind, port);
        // The launcher's own folder for temporary files, so that what a kill leaves behind goes at the next start.
        System.setProperty("java.io.tmpdir", DataFolder.fresh(folder.temp()).toString());
        var postgres = PostgresServer.start(prepared.postgres(), folder);
        try {
            migrate(folder, postgres);
            var web = WebServer.start(prepared, folder, bind, port, settings(folder, postgres, demo));
            return new Company(folder, postgres, web);
        } catch (RuntimeException e) {
            postgres.close();
            throw e;
        }
    }

    /** Brings roles, database and tables to this version; returns how many migrations ran. */
    static int migrate(DataFolder folder, PostgresServer postgres) {
        try {
            Schema.createRolesAndDatabase(
                    postgres.superuser(),
                    PostgresServer.DATABASE,
                    folder.password(Schema.OWNER),
                    folder.password(Schema.APPLICATION));
            return Schema.migrate(postgres.role(Schema.OWNER));
        } catch (SQLException e) {
            throw new Failure("Cannot set up the database: " + e.getMessage(), e);
        }
    }

    private static Map<String, String> settings(DataFolder folder, PostgresServer postgres, boolean demo) {
        var settings = new HashMap<String, String>();
        settings.put("eaveside.db.url", postgres.jdbcUrl());
        settings.put("eaveside.db.user", Schema.APPLICATION);
        settings.put("eaveside.db.password", folder.password(Schema.APPLICATION));
        settings.put("eaveside.demo", Boolean.toString(demo));
        settings.put("eaveside.demo.logins", folder.demoLogins().toString());
        return settings;
    }

    URI address() {
        return web.address();
    }

    /** Fetches a page of the application and returns the status. */
    int get(String path) {
        return web.get(path);
    }

    DataFolder folder() {
        return folder;
    }

    @Override
    public void close() {
        try {
            web.close();
        } finally {
            postgres.close();
            try {
                DataFolder.delete(folder.temp());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
