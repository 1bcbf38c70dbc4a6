package config

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/reading"
)

// readingLimits reads how hard the texts of each language may be.
func readingLimits(t *Table) map[string]float64 {
	inside := t.Table("reading", "the table of reading limits", reading.Languages())
	if inside == nil {
		return nil
	}
	limits := map[string]float64{}
	for _, language := range inside.Keys() {
		limit, ok := inside.Number(language)
		if !ok {
			continue
		}
		m := reading.For(language)
		if limit <= 0 || limit > m.Most {
			inside.Fault(language, "reading-limit",
				fmt.Sprintf("%g is not a limit of the %s", limit, m.Name),
				fmt.Sprintf("type a number above 0 and up to %g, as in \"%s: %g\"", m.Most, language, m.Limit))
			continue
		}
		limits[language] = limit
	}
	return limits
}
