package eaveside.access.internal;

import com.nulabinc.zxcvbn.Zxcvbn;
import eaveside.kernel.Decision;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Semaphore;
import java.util.stream.Stream;

/**
 * Whether a password is easily guessed, by the words, names, dates, repetitions and neighboring keys that it is made of
 * (the estimate of Wheeler, "zxcvbn: Low-Budget Password Strength Estimation", USENIX Security 2016). NIST SP 800-63B-4, 3.1.1.2 asks
 * for a list of common values, of words of the service and of its user; here such words cost next to nothing in the estimate.
 */
@Decision
public final class PasswordStrength {
    /** Guesses, as a power of ten, that the source calls very unguessable (its score of 4). */
    private static final double FEWEST = 10;

    /** In characters; more than twice as long as one has to be. */
    private static final int MEASURED = 40;

    /** What anybody would try first where this program runs. */
    private static final List<String> OF_THE_TRADE = List.of(
            "eaveside",
            "window",
            "windows",
            "cleaning",
            "cleaner",
            "windowcleaning",
            "skylight",
            "skylights",
            "roof",
            "roofs",
            "gutter",
            "gutters",
            "solar",
            "array",
            "panel",
            "panels",
            "exterior",
            "exteriorcleaning",
            "ladder",
            "squeegee",
            "purewater",
            "invoice",
            "invoices",
            "company",
            "office",
            "technician",
            "owner");

    /** Built once: it reads word lists. */
    private static final class Estimate {
        private static final Zxcvbn ZXCVBN = new Zxcvbn();

        /** Half of the cores: it takes a third of a second at worst, and whoever asks for it again and again waits for it. */
        private static final Semaphore TURN =
                new Semaphore(Math.max(1, Runtime.getRuntime().availableProcessors() / 2), true);
    }

    /** So few letters beside what is known are a welcome, a season, or a name. */
    private static final int FEWEST_OF_ONES_OWN = 8;

    private PasswordStrength() {}

    /**
     * Whether it is little more than known words, such as {@code Roof cleaning 2026!}. The estimate takes what stands between words for as
     * hard as a letter, so that known words with blanks between them would pass.
     */
    private static boolean isMadeOf(Collection<String> known, String password) {
        String own = password.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}]+", "");
        int theirs = 0;
        for (String word : known.stream()
                .sorted(Comparator.comparingInt(String::length).reversed())
                .toList()) {
            String without = own.replace(word, "");
            theirs += (own.length() - without.length()) / word.length();
            own = without;
        }
        return theirs > 1 && own.length() < FEWEST_OF_ONES_OWN;
    }

    /** @param  words of the company and of the user, which a guesser knows */
    public static boolean isEasilyGuessed(String password, Collection<String> words) {
        List<String> known = new ArrayList<>(OF_THE_TRADE);
        words.stream()
                .map(word -> word.toLowerCase(Locale.ROOT))
                .flatMap(word ->
                        Stream.concat(Stream.of(word, word.replaceAll("\\W+", "")), Stream.of(word.split("\\W+"))))
                .filter(word -> word.length() > 2)
                .forEach(known::add);
        return isMadeOf(known, password) || guesses(password, known) < FEWEST;
    }

    /** Of its beginning: the estimate looks for ever more ways to read the signs of a long password, and what they say is said long before. */
    private static double guesses(String password, List<String> known) {
        String beginning = password.substring(0, Math.min(password.length(), MEASURED));
        Estimate.TURN.acquireUninterruptibly();
        try {
            return Estimate.ZXCVBN.measure(beginning, known).getGuessesLog10();
        } finally {
            Estimate.TURN.release();
        }
    }
}
