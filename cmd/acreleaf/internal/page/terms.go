package page

import "acreleaf/cmd/acreleaf/internal/config"

// Top is the part that is a whole page, as fragments of addresses have it (HTML Standard, "scroll to the fragment").
const Top = "top"

// readTerms reads the words by which an index leads to a page: a list for all of it, or one for each part.
func readTerms(t *config.Table) []Terms {
	if !t.IsTable("terms") {
		if words := t.List("terms"); len(words) > 0 {
			return []Terms{{Words: words}}
		}
		return nil
	}
	var all []Terms
	parts := t.Table("terms", "the terms of a page", nil)
	for _, part := range parts.Keys() {
		of := Terms{Part: config.Value{Text: part, Span: parts.KeySpan(part)}, Words: parts.List(part)}
		if part == Top {
			of.Part.Text = ""
		}
		all = append(all, of)
	}
	return all
}
