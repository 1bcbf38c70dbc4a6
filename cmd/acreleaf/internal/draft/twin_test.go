package draft

import (
	"bytes"
	"maps"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// demo is the demo content without its Spanish pages, which is the second language of its site.
func demo(t *testing.T) fstest.MapFS {
	t.Helper()
	content := load(t, filepath.Join("..", "..", "..", "..", "content"))
	maps.DeleteFunc(content, func(_ string, f *fstest.MapFile) bool {
		metadata, _, _ := bytes.Cut(f.Data, []byte("\n---\n"))
		return bytes.Contains(metadata, []byte("\nlanguage: es\n"))
	})
	reviewed := regexp.MustCompile(`(?m)^reviewed: .*$`)
	changed := regexp.MustCompile(`(?m)^  2026-11-\d\d:`)
	site := content["site.yaml"] // whose words of the index lead to Spanish pages
	site.Data, _, _ = bytes.Cut(site.Data, []byte("\nsee:\n"))
	for _, f := range content {
		f.Data = reviewed.ReplaceAll(f.Data, []byte("reviewed: 2026-11-02"))
		f.Data = changed.ReplaceAll(f.Data, []byte("  2026-11-01:"))
	}
	return content
}

// The twin of every page of the demo site can be pressed as it stands, beside its original and beside each other.
func TestTwinOfEveryPage(t *testing.T) {
	content := demo(t)
	names := slices.Sorted(maps.Keys(content))
	twins := 0
	for _, name := range names {
		if stem, isPage := strings.CutSuffix(name, ".md"); isPage {
			twin := stem + "-es.md"
			ask(t, content, Request{Page: twin, Translates: path.Base(name)})
			twins++
		}
	}
	unwritten := 0
	for _, id := range faultless(t, content) {
		if id == "text-unwritten" {
			unwritten++
		} else if strings.HasPrefix(id, "translation") {
			t.Errorf("a fresh twin brings the advice %s", id)
		}
	}
	if twins < 20 || unwritten != twins {
		t.Errorf("%d of %d twins say that they are to be translated", unwritten, twins)
	}
}

const original = "\uFEFF---\r\n" + `title: "Frost: the night after"
summary: >-
  When to look
  at the buds.
reviewed: 2026-10-01
review-every: 24 months
changes:
  2026-10-01: 'The scale of "dead" buds.'
  2025-10-01: Written.
crop: young walnuts
# A remark.
season: bud break
---

Look **at** the buds, as [the end](#the-end) says.
See [soil](soil.md), [water](water.md) and [a part](soil.md#x).

- ` + "`Code` first" + `
- [12](worked:a.reported) ppm of what?

| bud | 12 |
| --- | --- |
| dead | 3 |

` + "```worksheet a\ntitle: 'The well''s'\ncalculation: nitrate-basis\nof: water\nreported: 12 ppm NO3\n```" + `

> **CAUTION** Cold hands slip.

![A bud](bud.svg)

## The end

` + "```calculation own\nanswer: out\n```" + `

Done.

` + "```calculation other\nanswer: out\n```" + `
At once.
`

const translated = `---
title: "POR TRADUCIR – Frost: the night after"
summary: "POR TRADUCIR – When to look at the buds."
# El día en que alguien comparó esta página con frost.md. Cuando esté hecho, quite el #:
# reviewed: 2026-11-02
review-every: 24 months
changes:
  2026-10-01: "POR TRADUCIR – The scale of \"dead\" buds."
  2025-10-01: "POR TRADUCIR – Written."
crop: "POR TRADUCIR – young walnuts"
# A remark.
season: "POR TRADUCIR – bud break"
---

POR TRADUCIR – Look **at** the buds, as [the end](#the-end) says.
See [soil](suelo.md), [water](water.md) and [a part](soil.md#x).

- POR TRADUCIR – ` + "`Code` first" + `
- POR TRADUCIR – [12](worked:a.reported) ppm of what?

| POR TRADUCIR – bud | 12 |
| --- | --- |
| POR TRADUCIR – dead | 3 |

` + "```worksheet a\ntitle: 'POR TRADUCIR – The well''s'\ncalculation: nitrate-basis\n" +
	"of: water\nreported: 12 ppm NO3\n```" + `

> **CAUTION** POR TRADUCIR – Cold hands slip.

![POR TRADUCIR – A bud](bud.svg)

## POR TRADUCIR – The end {#the-end}

POR TRADUCIR – Done.

POR TRADUCIR – At once.
`

// Each text of a twin is marked in its place, and nothing else of the page is touched but what cannot be twice.
func TestTwinMarksEachText(t *testing.T) {
	content := sample(t)
	for ending, text := range map[string]string{"unix": original, "windows": strings.ReplaceAll(original, "\n", "\r\n")} {
		delete(content, "guides/helada.md")
		content["guides/frost.md"] = &fstest.MapFile{Data: []byte(strings.ReplaceAll(text, "\r\r", "\r"))}
		want := strings.Replace(translated, "---\n", "---\nlanguage: es\ntranslates: frost.md\n", 1)
		if got := ask(t, content, Request{Page: "guides/helada.md", Translates: "frost.md"}); got != want {
			t.Errorf("%s:\n%s\nand not\n%s", ending, got, want)
		}
	}
}

// A language that the original states is replaced, and not stated twice.
func TestTwinStatesItsLanguage(t *testing.T) {
	text := ask(t, sample(t), Request{Page: "guides/agua.md", Translates: "guides/water.md"})
	if strings.Count(text, "language:") != 1 ||
		!strings.Contains(text, "\nlanguage: es\ntranslates: water.md\n") || strings.Contains(text, "\nreviewed:") {
		t.Error(text)
	}
}
