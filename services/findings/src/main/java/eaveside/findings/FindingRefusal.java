package eaveside.findings;

import eaveside.kernel.Refusal;

/** What the findings module refuses. */
public abstract sealed class FindingRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private FindingRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    /** A finding names a photo that has not been stored, or that belongs to another visit. */
    public static final class PhotoNotOfVisit extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public PhotoNotOfVisit(String id) {
            super(Type.RULE, "The photo " + id + " has not been stored for this visit", "photos");
        }
    }

    public static final class AlreadyClosed extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyClosed(String id) {
            super(Type.CONFLICT, "The finding " + id + " is closed and takes no further action");
        }
    }

    /** The sheet behind the finding was reversed. */
    public static final class Withdrawn extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public Withdrawn(String id) {
            super(Type.CONFLICT, "The finding " + id + " was withdrawn when its job sheet was reversed");
        }
    }

    public static final class PhotoTooLarge extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public PhotoTooLarge(long bytes, long most) {
            super(
                    Type.RULE,
                    "The photo has " + bytes + " bytes; at most " + most + " are taken (" + most / (1024 * 1024)
                            + " MB)",
                    "photo");
        }
    }

    public static final class TooManyPixels extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public TooManyPixels(long width, long height, long most, long mostAside) {
            super(
                    Type.RULE,
                    "The photo is " + width + " × " + height + " pixels; at most " + most / 1_000_000
                            + " million in all and " + mostAside + " a side are taken",
                    "photo");
        }
    }

    /** The file is something else than a JPEG or PNG, whatever its name says. */
    public static final class UnsupportedPicture extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public UnsupportedPicture(String type) {
            super(Type.RULE, "The file is " + type + "; only JPEG and PNG pictures are taken", "photo");
        }
    }

    /** It says that it is a JPEG or PNG, and cannot be read as one. */
    public static final class DamagedPicture extends FindingRefusal {
        private static final long serialVersionUID = 1;

        public DamagedPicture(String why) {
            super(Type.RULE, "The picture cannot be read: " + why, "photo");
        }
    }
}
