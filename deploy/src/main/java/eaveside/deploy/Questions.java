package eaveside.deploy;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.time.ZoneId;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** Asks for the company and its first owner, at a terminal or line by line from a script's input. */
final class Questions {
    private static final int SHORTEST_PASSWORD = 15;

    private final PrintStream terminal;
    private final @Nullable Console console;
    private final BufferedReader input;

    Questions(PrintStream terminal) {
        this.terminal = terminal;
        var present = System.console();
        console = present != null && present.isTerminal() ? present : null;
        input = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
    }

    /** The task that founds the company. */
    Map<String, String> found() {
        terminal.println("There is no company here yet. A few questions, then its books are open.");
        var task = new LinkedHashMap<String, String>();
        task.put("task", "found");
        task.put("company.name", ask("Name of the company", null));
        task.put("company.country", ask("Country, two letters", defaultCountry(), Questions::isCountry));
        task.put("company.currency", ask("Currency, three letters (stays for good)", "USD", Questions::isCurrency));
        task.put(
                "company.zone",
                ask(
                        "Time zone, such as America/Chicago",
                        ZoneId.systemDefault().getId(),
                        ZoneId.getAvailableZoneIds()::contains));
        task.put("owner.name", ask("Your name", null));
        task.put("owner.username", ask("Your username", "owner"));
        task.put("owner.password", password());
        return task;
    }

    private static String defaultCountry() {
        var country = Locale.getDefault().getCountry();
        return country.isEmpty() ? "US" : country;
    }

    private static boolean isCountry(String code) {
        return Locale.getISOCountries(Locale.IsoCountryCode.PART1_ALPHA2).contains(code.toUpperCase(Locale.ROOT));
    }

    private static boolean isCurrency(String code) {
        return Currency.getAvailableCurrencies().stream()
                .anyMatch(currency -> currency.getCurrencyCode().equals(code.toUpperCase(Locale.ROOT)));
    }

    /** What cannot be is asked again at once: the rest is looked at by the application, once all is answered. */
    private String ask(String question, String proposal, Predicate<String> possible) {
        while (true) {
            var answer = ask(question, proposal);
            if (possible.test(answer)) {
                return answer;
            }
            terminal.println(answer + " is not known.");
        }
    }

    private String ask(String question, @Nullable String proposal) {
        while (true) {
            terminal.print(question + (proposal == null ? ": " : " [" + proposal + "]: "));
            terminal.flush();
            var answer = line().strip();
            if (!answer.isEmpty()) {
                return answer;
            }
            if (proposal != null) {
                return proposal;
            }
        }
    }

    private String password() {
        while (true) {
            var first = secret("Your password, at least " + SHORTEST_PASSWORD + " characters: ");
            if (first.codePointCount(0, first.length()) < SHORTEST_PASSWORD) {
                terminal.println("That is too short.");
                continue;
            }
            if (first.equals(secret("Once more: "))) {
                return first;
            }
            terminal.println("The two are not the same.");
        }
    }

    private String secret(String question) {
        if (console == null) {
            terminal.print(question);
            terminal.flush();
            return line();
        }
        char[] typed = console.readPassword("%s", question);
        if (typed == null) {
            throw new Failure("No answer, so no company");
        }
        return new String(typed);
    }

    private String line() {
        try {
            var line = input.readLine();
            if (line == null) {
                throw new Failure("No answer, so no company");
            }
            return line;
        } catch (IOException e) {
            throw new Failure("Cannot read the answer: " + e.getMessage(), e);
        }
    }
}
