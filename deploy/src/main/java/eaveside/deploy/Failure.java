package eaveside.deploy;

/** Why a command could not do its work, in one line for the person at the terminal. */
final class Failure extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Failure(String line) {
        super(line);
    }

    Failure(String line, Throwable cause) {
        super(line, cause);
    }
}
