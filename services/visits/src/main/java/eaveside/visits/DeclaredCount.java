package eaveside.visits;

import eaveside.kernel.DocumentId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import java.time.LocalDate;

/** A count difference that came with a sheet; the count document holds its value. */
public record DeclaredCount(DocumentId sheet, VisitId visit, UserId by, LocalDate date, JobSheet.Declared declared) {}
