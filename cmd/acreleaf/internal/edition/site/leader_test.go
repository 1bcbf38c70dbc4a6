package site_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/proof"
)

const ledWorkshop = `---
title: An hour
summary: People work a card.
---

For those who take part.

## Theirs

` + "```exercise soil\ncalculation: soil-nitrogen\nnitrate: 4 to 24 ppm NO3-N, every 1\ndepth: 6, 12, 18, 24 in\n" +
	"story: The report says {nitrate} in the top {depth}.\nask: nitrogen\nminutes: 8\n```\n\n" +
	"````leader\n## Mine\n\nLet them [grumble](../home.md) at first.\n\n- Bring quinces.\n````\n"

// pressedWorkshop gives the files of a site of one workshop.
func pressedWorkshop(t *testing.T, workshop string) map[string][]byte {
	t.Helper()
	content := fstest.MapFS{
		"site.yaml":         {Data: []byte("office: Test Row Orchard Office\naddress: https://row.example.org/\n")},
		"home.md":           {Data: []byte("---\ntitle: Test Row\nsummary: Guides for a row of trees.\n---\n")},
		"workshops/hour.md": {Data: []byte(workshop)},
	}
	files := make(chan output.File, 1000)
	_, said := book.Make(book.Options{Content: content, Name: "content"}, site.New, func(f output.File) error {
		files <- f
		return nil
	})
	close(files)
	if message.HasFault(said) {
		t.Fatal(said)
	}
	all := map[string][]byte{}
	for f := range files {
		all[f.Path] = f.Bytes
	}
	return all
}

// What only the leader should have in front of them is in no byte of what those who take part are sent, and no page
// leads to it.
func TestLeaderHasAPageOfTheirOwn(t *testing.T) {
	files := pressedWorkshop(t, ledWorkshop)
	led := files["workshops/hour/leader/index.html"]
	for _, want := range []string{"grumble", "quinces", `href="../../../"`, `id="mine"`, `content="noindex"`,
		`class="wall"`,
		`class="tally"`, `data-minutes="8"`, `href="../"`} {
		if !bytes.Contains(led, []byte(want)) {
			t.Errorf("the leader's page lacks %s", want)
		}
	}
	for _, unwanted := range []string{"For those who take part", `rel="canonical"`, `id="theirs"`} {
		if bytes.Contains(led, []byte(unwanted)) {
			t.Errorf("the leader's page has %s", unwanted)
		}
	}
	for path, text := range files {
		if path == "workshops/hour/leader/index.html" || strings.HasPrefix(path, "assets/") {
			continue
		}
		for _, secret := range []string{"grumble", "quinces", "mine", "leader/"} {
			if bytes.Contains(text, []byte(secret)) {
				t.Errorf("%s has %q of the leader's page", path, secret)
			}
		}
	}
}

// Notes alone are a page without a script of its own, and a workshop with neither notes nor exercises has no page for
// its leader.
func TestLeadersPageFollowsFromTheWorkshop(t *testing.T) {
	start, rest, _ := strings.Cut(ledWorkshop, "```exercise")
	_, notes, _ := strings.Cut(rest, "````leader")
	led := pressedWorkshop(t, start+"````leader"+notes)["workshops/hour/leader/index.html"]
	scripts := regexp.MustCompile("<script[^>]*>").FindAllString(string(led), -1)
	if !bytes.Contains(led, []byte("quinces")) || len(scripts) != 2 ||
		!strings.Contains(scripts[0], "/offline.") || !strings.Contains(scripts[1], "/find.") {
		t.Error("notes without exercises are not a page of text alone")
	}
	if pressedWorkshop(t, start)["workshops/hour/leader/index.html"] != nil {
		t.Error("a workshop without notes and exercises has a page for its leader")
	}
}

// A file of the content folder cannot take the place of the leader's page.
func TestFileInThePlaceOfTheLeader(t *testing.T) {
	content := fstest.MapFS{
		"site.yaml":         {Data: []byte("office: Test Row Orchard Office\n")},
		"home.md":           {Data: []byte("---\ntitle: Test Row\nsummary: Guides for a row of trees.\n---\n")},
		"workshops/hour.md": {Data: []byte(ledWorkshop + "\n[Notes](hour/leader/index.html)\n")},

		"workshops/hour/leader/index.html": {Data: []byte("<p>Notes.</p>")},
	}
	said := book.Check(book.Options{Content: content, Name: "content"}, site.New, proof.Rules{}).Messages
	if len(said) != 1 || said[0].ID != "file-kind" {
		t.Errorf("%+v", said)
	}
}
