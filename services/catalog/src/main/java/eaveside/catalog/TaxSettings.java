package eaveside.catalog;

import eaveside.catalog.internal.CatalogQueries;
import eaveside.catalog.internal.TaxSettingRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;

/** Reads the owner's tax settings. */
@Shared
public class TaxSettings {
    private final CatalogQueries queries;

    @Inject
    public TaxSettings(CatalogQueries queries) {
        this.queries = queries;
    }

    /** What is in force under the code on that day; refuses an unknown code, and a day before its first setting. */
    @Transactional
    public TaxSetting on(TaxCode code, LocalDate date) {
        List<TaxSettingRow> settings = queries.taxSettingsOf(code.value());
        if (settings.isEmpty()) {
            throw unknown(code);
        }
        return settings.stream()
                .filter(row -> !row.from().isAfter(date))
                .findFirst()
                .orElseThrow(() -> new CatalogRefusal.NoTaxOn(code, date))
                .toTaxSetting();
    }

    static KernelRefusal unknown(TaxCode code) {
        return new KernelRefusal.NotFound("tax code", code).namedBy("taxCode", "Set its tax first");
    }

    /** Every setting that is, was or will be in force: by code, the newest day first. */
    @Transactional
    public List<TaxSetting> all() {
        return queries.taxSettings().stream().map(TaxSettingRow::toTaxSetting).toList();
    }
}
