package eaveside.web.books;

import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.sql.SQLException;
import java.time.YearMonth;

/** A company whose books begin a month before the one that it was founded in, so that there is a month to close. */
final class EarlierBooks {
    private EarlierBooks() {}

    /** Makes them begin then; the month. */
    static YearMonth begin(Server server, Visitor owner) throws SQLException {
        String today = Visitor.page(owner.get("books")).select("#to").attr("value");
        YearMonth month = YearMonth.parse(today.substring(0, 7)).minusMonths(1);
        try (var connection = server.database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("alter table company disable trigger company_keeps_currency");
            statement.execute("update company set books_from = '" + month.atDay(1) + "'");
            statement.execute("alter table company enable trigger company_keeps_currency");
            connection.commit();
        }
        return month;
    }
}
