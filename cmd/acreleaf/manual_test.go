package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/andybalholm/brotli"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// The demo site, and in it the manual.
var (
	demoFolder   = filepath.Join("..", "..", "content")
	manualFolder = filepath.Join(demoFolder, "manual")
)

// A manualPage is a page of the manual that is made from what the program has.
type manualPage struct {
	name, title, summary string
	order                int
	body                 string
}

// file is the page as it is kept.
func (p *manualPage) file() []byte {
	return fmt.Appendf(nil, `---
# Made by: go test ./cmd/acreleaf -run TestManual -update
title: %q
summary: %q
language: en
reviewed: 2026-11-25
review-every: 24 months
order: %d
---

%s
`, p.title, p.summary, p.order, strings.TrimSpace(p.body))
}

// TestManual makes the pages of the manual that list what the program has, and compares those that are kept with them.
func TestManual(t *testing.T) {
	pages := append([]*manualPage{commandPage(t), calculationPage(), unitsPage()}, messagePages(t)...)
	quoteFigures(t, pages)
	made := map[string]bool{}
	for _, p := range pages {
		name := filepath.Join(manualFolder, p.name+".md")
		made[p.name+".md"] = true
		kept, err := os.ReadFile(name)
		switch want := p.file(); {
		case err == nil && bytes.Equal(kept, want):
		case !*update:
			t.Errorf("%s is not what the program has: run go test ./cmd/acreleaf -run TestManual -update", p.name)
		default:
			if err := os.WriteFile(name, want, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	dropStale(t, made)
}

// dropStale finds made pages that nothing makes any more.
func dropStale(t *testing.T, made map[string]bool) {
	for name, text := range manualTexts(t) {
		if made[name] || !strings.Contains(text, "\n# Made by: go test") {
			continue
		}
		if !*update {
			t.Errorf("%s is made by nothing any more: run go test ./cmd/acreleaf -run TestManual -update", name)
		} else if err := os.Remove(filepath.Join(manualFolder, name)); err != nil {
			t.Fatal(err)
		}
	}
}

// manualTexts are the pages of the manual by name.
func manualTexts(t *testing.T) map[string]string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(manualFolder, "*.md"))
	if err != nil || len(names) == 0 {
		t.Fatal("no manual", err)
	}
	texts := map[string]string{}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		texts[filepath.Base(name)] = string(text)
	}
	return texts
}

// quoteFigures sets the figures in the sentences of made pages as code. They are quoted from content that nobody acts
// on, so they are tied to nothing; a proof knows where they are.
func quoteFigures(t *testing.T, pages []*manualPage) {
	content := fstest.MapFS{"site.yaml": {Data: []byte(faultGround["site.yaml"])}}
	byName := map[string]*manualPage{}
	for _, p := range pages {
		content["manual/"+p.name+".md"] = &fstest.MapFile{Data: p.file()}
		byName["content/manual/"+p.name+".md"] = p
	}
	found := book.Check(book.Options{Content: content, Name: "content"}, site.New, proof.Rules{}).Messages
	message.Sort(found)
	for i := len(found) - 1; i >= 0; i-- { // from the last, so that the places before it stay
		m := found[i]
		p := byName[nameOf(m)]
		if m.ID != "figure-loose" || p == nil {
			continue
		}
		offset := len(p.file()) - len("\n") - len(strings.TrimSpace(p.body))
		body := strings.TrimSpace(p.body)
		from, to := m.Span.Start-offset, m.Span.End-offset
		if from < 0 {
			t.Fatalf("%s has a figure in its title or summary", p.name)
		}
		p.body = body[:from] + "`" + body[from:to] + "`" + body[to:]
	}
}

func nameOf(m message.Message) string {
	if m.Source == nil {
		return ""
	}
	return m.Source.Name
}

// mostManual is what a page of the manual may weigh on the wire, as a guide may.
const mostManual = 13_000 // bytes of brotli

func TestManualWeight(t *testing.T) {
	made, messages := book.NewMaker(book.Options{Content: os.DirFS(demoFolder), Name: "content"}, site.New).
		Make(book.Changes{})
	if made == nil {
		t.Fatalf("the demo site has a fault: %s", messages[0].Text)
	}
	pages := 0
	for _, f := range made.Files {
		if !strings.HasPrefix(f.Path, "manual/") || !strings.HasSuffix(f.Path, ".html") {
			continue
		}
		pages++
		// A page that is light enough when packed in a hurry is not packed with care too, which takes ten times as long.
		if packed(f.Bytes(), brotli.DefaultCompression) <= mostManual {
			continue
		}
		if size := packed(f.Bytes(), brotli.BestCompression); size > mostManual {
			t.Errorf("%s is %d bytes of brotli, more than %d", f.Path, size, mostManual)
		}
	}
	if pages < 10 {
		t.Errorf("the manual has only %d pages", pages)
	}
}

// packed is how many bytes a text has after brotli.
func packed(text []byte, level int) int {
	var out bytes.Buffer
	w := brotli.NewWriterLevel(&out, level)
	w.Write(text) // writing to a buffer has no error to give
	w.Close()
	return out.Len()
}

// What a page lists is the first cell of a row of a table, or the term of a definition; each name stands as code.
func TestManualNamesEverything(t *testing.T) {
	texts := manualTexts(t)
	for _, list := range manualLists(t) {
		if len(list.names) == 0 {
			t.Errorf("no %s were found", list.what)
		}
		text, there := texts[list.page]
		if !there {
			t.Errorf("there is no page %s for %s", list.page, list.what)
		}
		listed := entries(text)
		for _, name := range list.names {
			if !listed[name] {
				t.Errorf("%s does not say what %q among the %s is", list.page, name, list.what)
			}
		}
	}
}

// entries are the names that a page gives an entry of their own.
func entries(text string) map[string]bool {
	found := map[string]bool{}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		cells := strings.Split(line, "|")
		switch {
		case strings.HasPrefix(line, "| ") && len(cells) > 2:
			line = cells[1]
		case i+1 == len(lines) || !strings.HasPrefix(lines[i+1], ": "):
			continue
		}
		for j, piece := range strings.Split(line, "`") {
			if j%2 == 1 {
				found[piece] = true
			}
		}
	}
	return found
}
