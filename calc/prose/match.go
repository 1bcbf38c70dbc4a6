package prose

// match finds the longest run of words at a place that a table has, and gives it as the table writes it, "" for none,
// with what it stands for. Words may be joined by spaces or by a dash, and a point may be after one that is cut short.
func (table wordTable[V]) match(text string, at int) (found string, value V, to int) {
	var nothing V
	words := ""
	for t := next(text, at); t.kind == word; {
		tried := t.text
		v, known := table[words+tried]
		if !known && len(t.text) > 1 {
			tried = t.lower()
			v, known = table[words+tried]
		}
		if !known {
			break
		}
		words += tried
		if v != nothing {
			found, value, to = words, v, t.to
		}
		joint := next(text, t.to)
		switch {
		case joint.hangs():
			if t = next(text, joint.to); t.spaced {
				return found, value, to
			}
		case words == acre.name:
			return found, value, to // "12 ac in walnuts" are no acre-inches
		case joint.text == "." && !joint.spaced: // "fl. oz."
			if t = next(text, joint.to); t.text != t.lower() {
				return found, value, to
			}
		default:
			t = joint
		}
		words += " "
	}
	return found, value, to
}
