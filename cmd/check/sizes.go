package main

import (
	"bytes"
	"context"
	"encoding/hex"
	"errors"
	"fmt"
	"path"
	"regexp"
	"strings"

	"github.com/andybalholm/brotli"

	"acreleaf/cmd/check/internal/pressed"
	"acreleaf/cmd/check/internal/step"
)

// The limits on the wire, after brotli at its best, in bytes; 1 kB is 1000 bytes. Style sheets are files of their own
// that a reader's browser keeps, so the limit of a page is for its HTML, and the sum is shown beside it.
const (
	mostHTML   = 13_000
	mostStyle  = 10_000 // all sheets of one page
	mostScript = 9_000  // with the words of a language
	mostRanges = 3_000  // the script that works ranges, which is loaded once a page is live
	mostAfter  = 5_000  // the script for what comes after, loaded then too, with the words of a language
	mostPaper  = 4_500  // the script that takes a page along, a second later still, with the words of a language
	mostModule = 1_500

	mostPractice  = 7_000  // the script that only a page with exercises loads, with the words of a language
	mostWall      = 8_000  // the script of the leader's page, in the place of theirs
	mostLanguage  = 500    // the script that takes the language of a first visit
	mostBlocks    = 5_600  // either script for blocks, with the words of a language and the facts of a block
	mostBlockHTML = 18_000 // the page about one block: a form, and the work of eight worksheets
	mostDrawing   = 6_000  // the script that draws pictures, with the rules of all of them
	mostCourse    = 6_000  // the script of courses and lessons, with the words of a language

	// What a page loads when all else of it is there, and what a browser then runs beside it.
	mostOffline = 2_500 // the script that keeps pages on the device, with the words of a language
	mostWorker  = 2_500 // the worker that answers from there
	mostFind    = 1_500 // the script that finds a word in the index of terms, with the words of a language
)

// sizes prints what the parts of a guide weigh on the wire, and fails when one is over its limit.
func (b *bench) sizes(_ context.Context, r *step.Record) error {
	site, err := pressed.Read(b.site)
	if err != nil {
		return err
	}
	w := &weighing{record: r}
	styles := w.styles(site)
	w.scripts(site.Ending(".js"))
	guides := site.Guides()
	if len(guides) == 0 {
		w.faults = append(w.faults, errors.New("the site has no guides"))
	}
	for _, guide := range guides {
		html := w.page(guide)
		r.Note("  %-34s %6.2f kB", "  with its style", kilobytes(html+styles.of(guide)))
		block, err := guide.Block()
		if err != nil {
			return err
		}
		if block != nil {
			w.one(guide.Name()+" module", block.Module, mostModule)
		}
	}
	for _, f := range site.Ending(".html") {
		if bytes.Contains(f.Bytes, []byte(`id="known"`)) {
			w.one(path.Dir(f.Path)+" HTML", f.Bytes, mostBlockHTML)
		}
	}
	for _, page := range site.Exercising() {
		block, err := page.Block()
		if err != nil {
			return err
		}
		if block == nil {
			w.faults = append(w.faults, fmt.Errorf("%s has exercises and no module", page.Name()))
			continue
		}
		html := bytes.Replace(page.Bytes, hex.AppendEncode(nil, block.Module), nil, 1)
		w.one(page.Name()+" HTML without module", html, mostHTML)
		w.one(page.Name()+" module", block.Module, mostModule)
	}
	return errors.Join(w.faults...)
}

// drawings are the pictures of a page that numbers draw. They are not counted with the page.
var drawings = regexp.MustCompile(`(?s)<figure class="drawing".*?</figure>\n`)

// page weighs a guide without the pictures that numbers draw, and notes what those add.
func (w *weighing) page(guide pressed.File) int {
	bare := drawings.ReplaceAll(guide.Bytes, nil)
	html := w.one(guide.Name()+" HTML", bare, mostHTML)
	if len(bare) < len(guide.Bytes) {
		w.record.Note("  %-34s %6.2f kB", "  with its pictures", kilobytes(compressed(guide.Bytes)))
	}
	return html
}

// A weighing notes sizes and keeps those over their limit.
type weighing struct {
	record *step.Record
	faults []error
}

// sheets are the sizes of style sheets by the names of their files.
type sheets map[string]int

var styleSheet = regexp.MustCompile(`<link rel="stylesheet" href="([^"]+)"`)

// of is what the style of a page weighs.
func (s sheets) of(page pressed.File) int {
	sum := 0
	for _, found := range styleSheet.FindAllSubmatch(page.Bytes, -1) {
		sum += s[path.Base(string(found[1]))]
	}
	return sum
}

// styles weighs the style sheets, and judges the page that has the most of them.
func (w *weighing) styles(site pressed.Site) sheets {
	s := sheets{}
	for _, f := range site.Ending(".css") {
		s[path.Base(f.Path)] = compressed(f.Bytes)
		w.record.Note("  %-34s %6.2f kB", "style "+path.Base(f.Path), kilobytes(s[path.Base(f.Path)]))
	}
	most, of := 0, ""
	for _, page := range site.Ending(".html") {
		if size := s.of(page); size > most {
			most, of = size, page.Name()
		}
	}
	if most == 0 {
		w.faults = append(w.faults, errors.New("the pages have no style"))
	}
	w.note("style of "+of, most, mostStyle)
	return s
}

func (w *weighing) one(name string, text []byte, most int) int {
	size := compressed(text)
	w.note(name, size, most)
	return size
}

func (w *weighing) note(name string, size, most int) {
	w.record.Note("  %-34s %6.2f kB of %4.1f", name, kilobytes(size), kilobytes(most))
	if size > most {
		w.faults = append(w.faults, fmt.Errorf("%s is %d bytes after brotli, and the limit is %d", name, size, most))
	}
}

func kilobytes(n int) float64 { return float64(n) / 1000 }

// compressed is how many bytes a text has after brotli 11.
func compressed(text []byte) int {
	var out bytes.Buffer
	w := brotli.NewWriterLevel(&out, brotli.BestCompression)
	// Writing to a buffer has no error to give.
	w.Write(text)
	w.Close()
	return out.Len()
}

// scripts weighs each script alone: a page loads one of each kind, in its language.
func (w *weighing) scripts(files []pressed.File) {
	limits := map[string]int{"page": mostScript, "ranges": mostRanges, "after": mostAfter, "paper": mostPaper,
		"practice": mostPractice, "wall": mostWall, "course": mostCourse, "block": mostBlocks,
		"blocks": mostBlocks, "drawing": mostDrawing,
		"language": mostLanguage, "offline": mostOffline, "worker": mostWorker, "find": mostFind}
	found := map[string]bool{}
	for _, f := range files {
		kind, _, _ := strings.Cut(path.Base(f.Path), ".")
		found[kind] = true
		if limits[kind] == 0 {
			w.faults = append(w.faults, fmt.Errorf("%s is a script without a limit", f.Path))
			continue
		}
		w.one("script "+path.Base(f.Path), f.Bytes, limits[kind])
	}
	for kind := range limits {
		if !found[kind] {
			w.faults = append(w.faults, fmt.Errorf("the site has no script %q", kind))
		}
	}
}
