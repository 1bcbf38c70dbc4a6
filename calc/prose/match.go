package prose

import "strings"

// withStarts adds the starts of entries of several words to a table, with nothing for a value, so that match knows
// where to go on.
func withStarts[V comparable](table map[string]V) {
	var starts []string
	for words := range table {
		for at := strings.LastIndexByte(words, ' '); at > 0; at = strings.LastIndexByte(words[:at], ' ') {
			starts = append(starts, words[:at])
		}
	}
	for _, words := range starts {
		if _, known := table[words]; !known {
			var nothing V
			table[words] = nothing
		}
	}
}

// match finds the longest run of words at a place that a table has, and gives it as the table writes it, "" for none.
// Words may be joined by spaces or by a dash, and a point may stand after one that is cut short.
func match[V comparable](text string, at int, table map[string]V) (found string, to int) {
	var nothing V
	words := ""
	for t := next(text, at); t.kind == word; {
		tried := t.text
		value, known := table[words+tried]
		if !known && len(t.text) > 1 {
			tried = t.lower()
			value, known = table[words+tried]
		}
		if !known {
			break
		}
		tried = words + tried
		if value != nothing {
			found, to = tried, t.to
		}
		dash := next(text, t.to)
		switch {
		case dash.isDash() && !dash.spaced:
			if t = next(text, dash.to); t.spaced {
				return found, to
			}
		case tried == "ac":
			return found, to // "12 ac in walnuts" are no acre-inches
		case dash.text == "." && !dash.spaced: // "fl. oz."
			if t = next(text, dash.to); t.text != t.lower() {
				return found, to
			}
		default:
			t = dash
		}
		words = tried + " "
	}
	return found, to
}
