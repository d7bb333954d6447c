package eaveside.access;

import eaveside.access.internal.AppCodes;
import eaveside.access.internal.Passkeys;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** What users can show beside their passwords. */
@Shared
public class ReadSecondFactors {
    private final Passkeys passkeys;
    private final AppCodes codes;

    @Inject
    public ReadSecondFactors(Passkeys passkeys, AppCodes codes) {
        this.passkeys = passkeys;
        this.codes = codes;
    }

    @Transactional
    public SecondFactors of(UserId user) {
        return new SecondFactors(passkeys.of(user), codes.areSetUp(user));
    }
}
