package render_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"
)

// TestNoInlineStyleOrScript holds every page to its own security policy.
func TestNoInlineStyleOrScript(t *testing.T) {
	for name, html := range pages(t) {
		tags, _ := scan(t, html)
		data := []string{"application/json", "application/ld+json"}
		for _, one := range tags {
			if one.name == "style" {
				t.Errorf("%s has a style element", name)
			}
			_, file := one.value("src")
			if kind, _ := one.value("type"); one.name == "script" && !file && !slices.Contains(data, kind) {
				t.Errorf("%s has a script in the page", name)
			}
			for _, a := range one.attributes {
				if a.name == "style" || strings.HasPrefix(a.name, "on") {
					t.Errorf("%s: <%s> has the attribute %s", name, one.name, a.name)
				}
			}
		}
	}
}

// TestHead holds the order at the top of every page: the character set, then the policy, before anything is loaded.
func TestHead(t *testing.T) {
	for name, html := range pages(t) {
		tags, _ := scan(t, html)
		if len(tags) < 5 {
			t.Fatalf("%s is no page", name)
		}
		if charset, _ := tags[3].value("charset"); charset != "utf-8" {
			t.Errorf("%s does not start with its character set", name)
		}
		policy, _ := tags[4].value("content")
		for _, part := range []string{
			"default-src 'none'", "script-src 'self' 'wasm-unsafe-eval'", "style-src 'self'", "base-uri 'none'",
			"form-action 'none'", "require-trusted-types-for 'script'", "trusted-types offline",
		} {
			if !strings.Contains(policy, part) {
				t.Errorf("%s: the policy %q lacks %q", name, policy, part)
			}
		}
		if bytes.Contains(html, []byte("canonical")) || bytes.Contains(html, []byte("og:")) {
			t.Errorf("%s guesses an absolute address", name)
		}
	}
}

// TestReferences holds that ids are unique and that every reference to an id leads to one.
func TestReferences(t *testing.T) {
	for name, html := range pages(t) {
		tags, _ := scan(t, html)
		ids := map[string]bool{}
		for _, one := range tags {
			id, has := one.value("id")
			if has && ids[id] {
				t.Errorf("%s has the id %q twice", name, id)
			}
			ids[id] = true
		}
		for _, one := range tags {
			for _, by := range []string{"for", "aria-labelledby", "aria-describedby", "data-unit-for"} {
				value, _ := one.value(by)
				for _, id := range strings.Fields(value) {
					if !ids[id] {
						t.Errorf("%s: %s leads to %q, which is not there", name, by, id)
					}
				}
			}
			if href, _ := one.value("href"); strings.HasPrefix(href, "#") && !ids[href[1:]] {
				t.Errorf("%s: the link to %s leads nowhere", name, href)
			}
		}
	}
}

// TestFields holds what the script reads of every field.
func TestFields(t *testing.T) {
	tags, _ := scan(t, pages(t)["guides/soil/index.html"])
	fields := map[string]int{}
	for _, one := range tags {
		if kind, _ := one.value("type"); one.name != "input" || kind == "radio" {
			continue // a radio button is of the switch between units
		}
		id, _ := one.value("id")
		fields[id]++
		for _, name := range []string{"data-cell", "value", "data-low"} {
			if _, has := one.value(name); !has {
				t.Errorf("the field %s lacks %s", id, name)
			}
		}
	}
	faults := bytes.Count(pages(t)["guides/soil/index.html"], []byte(`<p class="fault" hidden>`))
	if faults != len(fields) {
		t.Errorf("%d fields have %d sentences for their faults", len(fields), faults)
	}
	if len(fields) != 8 {
		t.Errorf("%d fields in the fixture, want 8: %v", len(fields), fields)
	}
}

// TestFrameKeepsItsMark holds that a site whose facts look like the frame's own marks is refused, not garbled.
func TestFrameKeepsItsMark(t *testing.T) {
	facts := site()
	facts.Office = "Blank9begins office"
	if err := failNew(facts); err == nil {
		t.Error("a site with the frame's mark in its name was taken")
	}
	facts.Office = "Sorrel Flat"
	if err := failNew(facts); err != nil {
		t.Error(err)
	}
}
