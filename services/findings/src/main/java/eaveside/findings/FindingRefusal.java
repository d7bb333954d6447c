package eaveside.findings;

import eaveside.kernel.Refusal;

/** What the findings module refuses. */
public abstract sealed class FindingRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private FindingRefusal(Kind kind, String message, String... fields) {
        super(kind, message, fields);
    }

    public static final class NoSuchFinding extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchFinding(String id) {
            super(Kind.NOT_FOUND, "There is no finding " + id);
        }
    }

    public static final class NoSuchKind extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchKind(String code) {
            super(Kind.NOT_FOUND, "There is no kind of finding " + code);
        }
    }

    public static final class BadPageKey extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public BadPageKey() {
            super(Kind.MALFORMED, "This is not the key of a page of this list", "after");
        }
    }

    public static final class NoSuchPhoto extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchPhoto(String id) {
            super(Kind.NOT_FOUND, "There is no photo " + id);
        }
    }

    /** A finding names a photo that has not been stored, or that belongs to another visit. */
    public static final class PhotoNotOfVisit extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public PhotoNotOfVisit(String id) {
            super(Kind.RULE, "The photo " + id + " has not been stored for this visit", "photos");
        }
    }

    public static final class TooManyPhotos extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public TooManyPhotos(int photos, int most) {
            super(Kind.RULE, "A finding shows at most " + most + " photos, not " + photos, "photos");
        }
    }

    /** A finding shows the photo, so that it cannot be discarded. */
    public static final class PhotoInUse extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public PhotoInUse(String id) {
            super(Kind.CONFLICT, "The photo " + id + " belongs to a finding and stays with it");
        }
    }

    public static final class UnknownKind extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public UnknownKind(String code) {
            super(Kind.RULE, "There is no kind of finding '" + code + "'", "kind");
        }
    }

    public static final class UnknownSeverity extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public UnknownSeverity(String code) {
            super(Kind.RULE, "There is no severity '" + code + "'", "severity");
        }
    }

    public static final class BadCode extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public BadCode(String field, String code) {
            super(
                    Kind.RULE,
                    "'" + code + "' is no code: capital letters, digits and underscores, 40 at most, a letter first",
                    field);
        }
    }

    /** Another kind already bears the name. */
    public static final class NameTaken extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public NameTaken(String name) {
            super(Kind.CONFLICT, "There is another kind of finding named '" + name + "'", "name");
        }
    }

    /** Somebody else saved the kind since the editor saw it. */
    public static final class KindChanged extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public KindChanged(String code, int seen, int now) {
            super(Kind.CONFLICT, "The kind " + code + " was changed meanwhile: version " + now + ", not " + seen);
        }
    }

    /** One id, two contents. */
    public static final class IdTaken extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public IdTaken(String what, String id) {
            super(Kind.CONFLICT, "The id " + id + " was already used for another " + what);
        }
    }

    public static final class AlreadyClosed extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyClosed(String id) {
            super(Kind.CONFLICT, "The finding " + id + " is closed and takes no further answer");
        }
    }

    /** The sheet behind the finding was reversed. */
    public static final class Withdrawn extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public Withdrawn(String id) {
            super(Kind.CONFLICT, "The finding " + id + " was withdrawn when its visit sheet was reversed");
        }
    }

    public static final class PhotoTooLarge extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public PhotoTooLarge(long bytes, long most) {
            super(
                    Kind.RULE,
                    "The photo has " + bytes + " bytes; at most " + most + " are taken (" + most / (1024 * 1024)
                            + " MB)",
                    "photo");
        }
    }

    public static final class TooManyPixels extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public TooManyPixels(long width, long height, long most, long mostAside) {
            super(
                    Kind.RULE,
                    "The photo is " + width + " × " + height + " pixels; at most " + most / 1_000_000
                            + " million in all and " + mostAside + " a side are taken",
                    "photo");
        }
    }

    /** The file is something else than a JPEG or PNG, whatever its name says. */
    public static final class UnsupportedPicture extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public UnsupportedPicture(String kind) {
            super(Kind.RULE, "The file is " + kind + "; only JPEG and PNG pictures are taken", "photo");
        }
    }

    /** It says that it is a JPEG or PNG, and cannot be read as one. */
    public static final class DamagedPicture extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public DamagedPicture(String why) {
            super(Kind.RULE, "The picture cannot be read: " + why, "photo");
        }
    }
}
