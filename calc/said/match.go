package said

// match finds the longest run of up to three words at a place that a table has, and gives it as the table writes it,
// "" for none. Words may be joined by spaces or by a dash.
func match[V any](text string, at int, table map[string]V) (found string, to int) {
	t := next(text, at)
	if t.kind != word {
		return "", at
	}
	words := ""
	for count := 0; count < 3 && t.kind == word; count++ {
		if words != "" {
			words += " "
		}
		tried := words + t.text
		if _, known := table[tried]; !known && len(t.text) > 1 {
			tried = words + t.lower()
		}
		if _, known := table[tried]; known {
			found, to = tried, t.to
		}
		words = tried
		dash := next(text, t.to)
		switch {
		case dash.isDash() && !dash.spaced:
			if t = next(text, dash.to); t.spaced {
				return found, to
			}
		case tried == "ac":
			return found, to // "12 ac in walnuts" are no acre-inches
		default:
			t = dash
		}
	}
	return found, to
}
