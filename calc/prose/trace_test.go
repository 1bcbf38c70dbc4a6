package prose

import (
	"os"
	"strings"
	"testing"
)

// The table has each reason to let a number go, and the sentences of both languages.
func TestTrace(t *testing.T) {
	table, err := os.ReadFile("testdata/trace.txt")
	if err != nil {
		t.Fatal(err)
	}
	told := map[string]bool{}
	for line := range strings.Lines(string(table)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.SplitN(strings.TrimSpace(line), " | ", 3)
		if len(parts) != 3 {
			t.Fatalf("%q has %d parts", line, len(parts))
		}
		var got []string
		for _, step := range Trace(parts[1], For(parts[0])) {
			if name, sentence, letGo := strings.Cut(step, "): "); letGo {
				_, reason, _ := strings.Cut(name, "(")
				told[reason] = true
				step = name + ")"
				if sentence == "" {
					t.Errorf("%q: %s is not explained", parts[1], reason)
				}
			}
			got = append(got, step)
		}
		if got := strings.Join(got, "; "); got != parts[2] {
			t.Errorf("%s: %q\n got %s\nwant %s", parts[0], parts[1], got, parts[2])
		}
	}
	for why, r := range reasons {
		if reason(why) > asNothing && (r.name == "" || r.sentence == "" || !told[r.name]) {
			t.Errorf("reason %d (%q) has no name, no sentence or no row in the table", why, r.name)
		}
	}
}
