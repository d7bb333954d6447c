package eaveside.access;

/**
 * Somebody whose password was right, to begin a session with ({@link BeginSession}).
 *
 * @param  strong      whether something beside the password was shown, or a passkey alone
 * @param  credentials counts the password's changes: a session older than the newest change has ended
 */
public record SignedIn(User user, int credentials, boolean strong) {}
