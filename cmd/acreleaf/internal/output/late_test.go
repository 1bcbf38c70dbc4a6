package output

import (
	"fmt"
	"strings"
	"testing"
)

// Somebody else puts a file into the site's folder while a press is at any of its calls: in a folder of the site, in a
// folder of its own, and where a new page must go. Whatever comes of the press, no such file is lost or changed.
func TestFilesThatAppearDuringAPress(t *testing.T) {
	carried, blocked := 0, 0
	for _, late := range []string{"public/late.txt", "public/guides/soil/late.txt", "public/mine/late.txt",
		"public/guides/new/deep/index.html", "public/manual/index.html"} {
		for _, s := range stages(t) {
			for at := 1; ; at++ {
				m := s.disk.clone()
				arrived := false
				m.before = func(call int, _ string) {
					if arrived = arrived || call == at; call != at || hasFile(m, "/office/"+late) {
						return // the site's own page is there already
					}
					m.plant(tree{late: "somebody else's"})
				}
				_, err := writerOn("/office/public", m).write(newSite, Mark{})
				if !arrived {
					break
				}
				when := fmt.Sprintf("%s, %s at call %d (%v)", s.name, late, at, err)
				where, name := whereIs(m, "somebody else's"), strings.TrimPrefix(late, "public/")
				switch {
				case where == "/office/"+late:
					carried++
				case where != "" && err != nil && strings.Contains(err.Error(), where):
					blocked++
				case where != "" || seen(m)[name] != s.after[name]:
					t.Fatalf("%s: it is in %q, and nobody says so", when, where)
				}
				if err != nil && !strings.Contains(err.Error(), "in the way") &&
					!strings.Contains(err.Error(), "The old site is in ") {
					t.Fatal(when)
				}
			}
		}
	}
	t.Logf("%d arrivals left or moved to the new site, %d with a place of which the press tells", carried, blocked)
	if carried < 500 || blocked == 0 {
		t.Error("those are too few")
	}
}

func hasFile(m *memory, name string) bool {
	for ; name != "/"; name = name[:max(1, strings.LastIndexByte(name, '/'))] {
		if n := m.names[name]; n != nil {
			return !n.dir
		}
	}
	return false
}

func whereIs(m *memory, content string) string {
	for name, n := range m.names {
		if string(n.content) == content {
			return name
		}
	}
	return ""
}
