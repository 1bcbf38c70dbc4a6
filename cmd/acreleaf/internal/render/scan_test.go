package render_test

import (
	"fmt"
	"strings"
	"testing"
)

// A tag is a start or end tag as a browser would read it.
type tag struct {
	name       string // "/p" for an end tag
	attributes []attribute
}

type attribute struct{ name, value string }

func (t tag) value(name string) (string, bool) {
	for _, a := range t.attributes {
		if a.name == name {
			return a.value, true
		}
	}
	return "", false
}

// scan takes HTML of ours apart: every attribute must be quoted or bare, so the reader can be small and strict.
// The text between tags comes back with the tags out; that of script is left out.
func scan(t testing.TB, html []byte) (tags []tag, texts []string) {
	t.Helper()
	rest := string(html)
	for {
		before, after, found := strings.Cut(rest, "<")
		if last := len(tags) - 1; last < 0 || tags[last].name != "script" {
			texts = append(texts, before)
		}
		if !found {
			return tags, texts
		}
		one, tail, err := readTag(after)
		if err != nil {
			t.Fatalf("%v: <%.80s", err, after)
		}
		tags, rest = append(tags, one), tail
	}
}

func readTag(s string) (one tag, rest string, err error) {
	end := strings.IndexAny(s, " >\n")
	if end <= 0 {
		return one, "", fmt.Errorf("a < that starts no tag")
	}
	one.name, s = s[:end], s[end:]
	for {
		s = strings.TrimLeft(s, " \n")
		if strings.HasPrefix(s, ">") {
			return one, s[1:], nil
		}
		end := strings.IndexAny(s, "= >\n\"'<")
		if end <= 0 {
			return one, "", fmt.Errorf("an attribute without a name")
		}
		a := attribute{name: s[:end]}
		s = s[end:]
		if strings.HasPrefix(s, `="`) {
			value, after, closed := strings.Cut(s[2:], `"`)
			if !closed {
				return one, "", fmt.Errorf("the attribute %s is not closed", a.name)
			}
			a.value, s = value, after
		}
		one.attributes = append(one.attributes, a)
	}
}
