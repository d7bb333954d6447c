package eaveside.visits;

import eaveside.kernel.Default;
import eaveside.kernel.SentSheetId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;

/** @param  note what came of it; may be empty */
public record Acknowledgment(SentSheetId sheet, @Default String note, UserId by) {
    public Acknowledgment {
        note = Texts.optional("note", note, 2000);
    }
}
