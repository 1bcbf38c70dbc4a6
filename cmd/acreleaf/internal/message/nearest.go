package message

import "strings"

// Nearest finds the known name that was most likely meant: at most one slip in three characters, where a slip is a
// character too many, too few, changed, or two swapped. Capitals, spaces and underscores count as small letters and
// hyphens. A name that starts a known one, or is started by it, also counts. Equal finds go by the alphabet, so the
// answer does not depend on the order of known.
func Nearest(name string, known []string) (string, bool) {
	asked := []rune(fold(name))
	if len(asked) == 0 || len(asked) > maxName {
		return "", false
	}
	best, bestSlips := "", maxName
	for _, k := range known {
		candidate := []rune(fold(k))
		slips := slipsBetween(asked, candidate)
		if slips > allowed(asked, candidate) {
			continue
		}
		if slips < bestSlips || slips == bestSlips && k < best {
			best, bestSlips = k, slips
		}
	}
	return best, bestSlips < maxName
}

// maxName bounds the work for a hostile name: nobody meant a known name with so many characters.
const maxName = 64

func fold(name string) string {
	return strings.NewReplacer("_", "-", " ", "-").Replace(strings.ToLower(strings.TrimSpace(name)))
}

func allowed(asked, candidate []rune) int {
	shorter, longer := string(asked), string(candidate)
	if len(shorter) > len(longer) {
		shorter, longer = longer, shorter
	}
	if len(shorter) >= 3 && strings.HasPrefix(longer, shorter) {
		return len(longer)
	}
	return max(1, max(len(asked), len(candidate))/3)
}

// slipsBetween is the optimal string alignment distance.
func slipsBetween(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		for j := range b {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			row[j+1] = min(last[j]+cost, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
