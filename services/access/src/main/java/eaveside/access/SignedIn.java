package eaveside.access;

/**
 * What a session keeps of a sign-in, to show to {@link ResumeSession} at each request.
 *
 * @param  credentials counts the password's changes: a session older than the newest change has ended
 */
public record SignedIn(User user, int credentials) {}
