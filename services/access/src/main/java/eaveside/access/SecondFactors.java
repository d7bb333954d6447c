package eaveside.access;

import java.util.List;

/**
 * What a user can show beside the password.
 *
 * @param  app whether an authenticator app is set up
 */
public record SecondFactors(List<Passkey> passkeys, boolean app) {
    public SecondFactors {
        passkeys = List.copyOf(passkeys);
    }

    public boolean areThereAny() {
        return app || !passkeys.isEmpty();
    }
}
