package eaveside.web.settings;

import eaveside.access.AccessRefusal;
import eaveside.access.ConfirmPassword;
import eaveside.kernel.KernelRefusal;
import eaveside.web.entrance.Credential;
import eaveside.web.forms.Fields;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;

/**
 * Asks whoever is signed in for their password once more, by the field {@code password} of a form: before a way in is made that
 * stays when the browser in front of them is closed.
 */
@RequestScoped
public class OwnPassword {
    @Inject
    Viewer viewer;

    @Inject
    ConfirmPassword confirmPassword;

    /** Refuses what is not their password, by the field's name, and guesses that come too soon. */
    void require(Fields fields, HttpServletRequest request) {
        String typed = fields.typed("password");
        try {
            if (typed.isEmpty()) {
                throw new AccessRefusal.WrongCredentials();
            }
            confirmPassword.confirm(
                    viewer.id(), typed.toCharArray(), request.getRemoteAddr(), Credential.Kept.BROWSER.in(request));
        } catch (AccessRefusal.WrongCredentials refusal) {
            throw new KernelRefusal.Unfit("password", "{field} is wrong. Type it again");
        }
    }
}
