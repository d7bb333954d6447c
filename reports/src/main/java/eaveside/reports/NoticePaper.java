package eaveside.reports;

import java.time.LocalDate;
import java.util.List;

/** A notice to a customer of what was seen on a visit, with photos. */
public record NoticePaper(
        Letterhead from,
        LocalDate written,
        LocalDate visited,
        List<String> customer,
        List<String> site,
        String greeting,
        List<Finding> findings,
        String closing) {
    /**
     * One thing that was seen.
     *
     * @param  title   what it is, such as "Cracked glass"
     * @param  urgency its severity, in a word
     * @param  location   where; may be empty
     * @param  trade   the licensed trade to call; may be empty
     * @param  caution what to keep in mind meanwhile; may be empty
     * @param  told    whether the customer was told on site
     */
    public record Finding(
            String title,
            String urgency,
            String location,
            String note,
            String trade,
            String caution,
            boolean told,
            List<Photo> photos) {
        public Finding {
            photos = List.copyOf(photos);
        }
    }

    /** A JPEG with the words under it, which also stand for it where it cannot be seen. */
    public static final class Photo {
        private final byte[] jpeg;
        private final String caption;

        public Photo(byte[] jpeg, String caption) {
            this.jpeg = jpeg.clone();
            this.caption = caption;
        }

        public byte[] jpeg() {
            return jpeg.clone();
        }

        public String caption() {
            return caption;
        }
    }

    public NoticePaper {
        customer = customer.stream().filter(line -> !line.isBlank()).toList();
        site = site.stream().filter(line -> !line.isBlank()).toList();
        findings = List.copyOf(findings);
    }
}
