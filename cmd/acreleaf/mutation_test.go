package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// A change is one slip made on purpose in a page of the demo site.
type change struct {
	page, from, to string
	at             int    // where the figure's text begins
	old, new       string // what is written there, and what takes its place
}

var (
	demoFigure = regexp.MustCompile(`\[([^\]\[]+)\]\((worked|source):[^)]*\)`)
	demoBlock  = regexp.MustCompile("(?m)^```(?:reckoner|exercise)[\\s\\S]*?^```$")
	numberText = regexp.MustCompile(`\d[\d,]*(?:\.\d+)?`)
)

// demo gives the files of the demo site.
func demo(t *testing.T) map[string][]byte {
	t.Helper()
	folder := filepath.Join("..", "..", "content")
	files := map[string][]byte{}
	err := fs.WalkDir(os.DirFS(folder), ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		files[name], err = os.ReadFile(filepath.Join(folder, filepath.FromSlash(name)))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// changes makes every change of every figure in the prose: of is what to write in place of a figure's text.
func changes(files map[string][]byte, of func(text string) []string) []change {
	var list []change
	for name, text := range files {
		if filepath.Ext(name) != ".md" {
			continue
		}
		prose := withoutBlocks(text)
		for _, at := range demoFigure.FindAllSubmatchIndex(prose, -1) {
			from := string(text[at[2]:at[3]])
			for _, to := range of(from) {
				list = append(list, change{name, from, to, at[2], from, to})
			}
		}
	}
	return list
}

func blank(block []byte) []byte { return bytes.Repeat([]byte{' '}, len(block)) }

// withoutBlocks blanks what is between fences, but for examples and passages, whose text is part of the page.
func withoutBlocks(text []byte) []byte {
	var prose []byte
	open := 0 // backticks of the open fence
	for line := range bytes.Lines(text) {
		word := bytes.TrimLeft(line, "`")
		fence := len(line) - len(word)
		begins := open == 0 && fence >= 3 && !bytes.HasPrefix(word, []byte("example")) &&
			!bytes.HasPrefix(word, []byte("passage"))
		ends := open > 0 && fence >= open && len(bytes.TrimSpace(word)) == 0
		switch {
		case begins && len(bytes.TrimSpace(word)) > 0:
			open = fence
		case ends:
			open = 0
		}
		if open > 0 || begins || ends {
			line = append(blank(line[:len(line)-1]), '\n')
		}
		prose = append(prose, line...)
	}
	return prose
}

// oneOff moves each number of a figure by one in its last written place, up and down, one at a time.
func oneOff(text string) []string {
	var list []string
	for _, at := range numberText.FindAllStringIndex(text, -1) {
		if at[0] > 0 && unitWord.MatchString(text[at[0]-1:at[0]]) {
			continue // the 3 of NO3
		}
		number := strings.ReplaceAll(text[at[0]:at[1]], ",", "")
		_, fraction, _ := strings.Cut(number, ".")
		digits, err := strconv.Atoi(strings.ReplaceAll(number, ".", ""))
		if err != nil {
			panic(err)
		}
		for _, by := range []int{1, -1} {
			moved := fmt.Sprintf("%0*d", len(fraction)+1, digits+by)
			if digits+by < 0 {
				moved = "-" + fmt.Sprintf("%0*d", len(fraction)+1, -digits-by)
			}
			if fraction != "" {
				point := len(moved) - len(fraction)
				moved = moved[:point] + "." + moved[point:]
			}
			list = append(list, text[:at[0]]+moved+text[at[1]:])
		}
	}
	return list
}

// siblings are units that are read as each other.
var siblings = [][2]string{{"lb", "oz"}, {"oz", "lb"}, {"in", "ft"}, {"ft", "in"}, {"ft2", "in2"}, {"ac", "tree"},
	{"tree", "ac"}, {"trees", "emitters"}, {"gal", "L"}, {"ppm", "ppb"}, {"mg", "g"}, {"NO3-N", "NO3"}, {"NO3", "NO3-N"},
	{"min", "h"}, {"h", "min"}, {"days", "weeks"}, {"weeks", "days"}, {"ton", "lb"}, {"%", "ppm"}}

var unitWord = regexp.MustCompile(`[A-Za-z%][A-Za-z0-9-]*|%`)

// swapped puts a sibling in the place of each unit of a figure, one at a time. Nothing is nothing in any unit.
func swapped(text string) []string {
	var list []string
	if strings.HasPrefix(text, "0 ") && !strings.HasPrefix(text, "0 to ") {
		return nil
	}
	for _, at := range unitWord.FindAllStringIndex(text, -1) {
		for _, s := range siblings {
			if text[at[0]:at[1]] == s[0] {
				list = append(list, text[:at[0]]+s[1]+text[at[1]:])
			}
		}
	}
	return list
}

// substances can all be said of a mass; one of them may be right.
var substances = []string{"N", "NO3", "product", "K2O", "K", "lime", "kernels"}

var massUnit = regexp.MustCompile(`^[^a-z]*(?:to [0-9.,]+ )?(?:lb|oz)\b`)

// ofAnother says of a mass that it is of each substance, where it does not say so yet.
func ofAnother(text string) []string {
	var list []string
	if unit := massUnit.FindString(text); unit != "" {
		for _, substance := range substances {
			list = append(list, unit+" "+substance+text[len(unit):])
		}
	}
	return list
}

// found proves every change and gives those that were not found. A figure is compared with the worksheets and sources
// of its page, never with another figure: one proof has a change of every second figure of a page, and finds nothing in
// those between, which are as they were.
func found(t *testing.T, files map[string][]byte, list []change) (missed []change) {
	t.Helper()
	var wait sync.WaitGroup
	var lock sync.Mutex
	work := make(chan []change)
	for range runtime.GOMAXPROCS(0) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for together := range work {
				passed, others := proved(files, together)
				lock.Lock()
				missed = append(missed, passed...)
				for _, m := range others {
					t.Errorf("%s: a figure that was not changed is at fault: %s", together[0].page, m.Text)
				}
				lock.Unlock()
			}
		}()
	}
	for _, together := range batches(list) {
		work <- together
	}
	close(work)
	wait.Wait()
	slices.SortFunc(missed, func(a, b change) int { return strings.Compare(a.page+a.from+a.to, b.page+b.from+b.to) })
	return missed
}

// batches parts the changes into those that are proved at once: the first change of every second figure of a page, then
// its second, and so on.
func batches(list []change) (all [][]change) {
	type batch struct {
		page          string
		second, round int
	}
	at := map[batch]int{}
	figure, round := 0, 0
	for i, c := range list {
		switch {
		case i == 0 || list[i-1].page != c.page:
			figure, round = 0, 0
		case list[i-1].at != c.at:
			figure, round = figure+1, 0
		default:
			round++
		}
		b := batch{c.page, figure % 2, round}
		if _, begun := at[b]; !begun {
			at[b] = len(all)
			all = append(all, nil)
		}
		all[at[b]] = append(all[at[b]], c)
	}
	return all
}

// proved proves a page with some changes, and with all that the site's pages share. It gives the changes that were not
// found, and the messages about other figures.
func proved(files map[string][]byte, together []change) (missed []change, others message.List) {
	content := fstest.MapFS{}
	for name, text := range files {
		if filepath.Ext(name) == ".yaml" || name == "home.md" {
			content[name] = &fstest.MapFile{Data: text}
		}
	}
	page := together[0].page
	// No figure depends on these blocks, and their cells and cards take the most time.
	before := demoBlock.ReplaceAllFunc(files[page], blank)
	var text []byte
	end, changed := 0, map[int]change{}
	for _, c := range together {
		text = append(text, before[end:c.at]...)
		changed[len(text)] = c
		text, end = append(text, c.new...), c.at+len(c.old)
	}
	content[page] = &fstest.MapFile{Data: append(text, before[end:]...)}
	found := map[int]bool{}
	for _, m := range book.Check(book.Options{Content: content, Name: "content"}, site.New, proof.Rules{}).Messages {
		if m.Level != message.Fault || !strings.HasPrefix(m.ID, "figure-") {
			continue
		}
		found[m.Span.Start] = true
		if _, own := changed[m.Span.Start]; !own {
			others = append(others, m)
		}
	}
	for at, c := range changed {
		if !found[at] {
			missed = append(missed, c)
		}
	}
	return missed, others
}

// The figures that are changed are all that the demo site has, no fewer.
func TestEveryFigureIsChanged(t *testing.T) {
	files := demo(t)
	one := changes(files, func(text string) []string { return []string{text} })
	content := fstest.MapFS{}
	for name, text := range files {
		content[name] = &fstest.MapFile{Data: text}
	}
	checked := book.Check(book.Options{Content: content, Name: "content"}, site.New, proof.Rules{})
	if len(one) != checked.Worked+checked.Sourced || len(checked.Messages) > 0 {
		t.Errorf("%d figures are changed; the site has %d worked and %d sourced, and %d messages", len(one),
			checked.Worked, checked.Sourced, len(checked.Messages))
	}
}

// A figure of the demo site that is off by one in its last written place is found, every one.
func TestFiguresOffByOne(t *testing.T) {
	files := demo(t)
	list := changes(files, oneOff)
	for _, c := range found(t, files, list) {
		t.Errorf("%s: %s was not found in the place of %s", c.page, c.to, c.from)
	}
	if len(list) < 250 {
		t.Errorf("only %d changes were made", len(list))
	}
	t.Logf("%d of %d numbers off by one were found", len(list), len(list))
}

// A unit of the demo site that is read as its sibling is found, every one.
func TestUnitsSwapped(t *testing.T) {
	files := demo(t)
	list := changes(files, swapped)
	for _, c := range found(t, files, list) {
		t.Errorf("%s: %s was not found in the place of %s", c.page, c.to, c.from)
	}
	if len(list) < 150 {
		t.Errorf("only %d changes were made", len(list))
	}
	t.Logf("%d of %d swapped units were found", len(list), len(list))
}

// Of the substances that a mass may be said to be of, one at most is right: nitrogen, its nitrate and a product are
// never taken for each other. So it is whether the substance is said in the figure or in words after it.
func TestSubstancesSwapped(t *testing.T) {
	files := demo(t)
	list := changes(files, ofAnother)
	right := map[string][]string{}
	for _, c := range found(t, files, list) {
		at := fmt.Sprint(c.page, c.at)
		right[at] = append(right[at], c.to)
	}
	for at, those := range right {
		if len(those) > 1 {
			t.Errorf("%s: all of these are taken: %v", at, those)
		}
	}
	figures := len(list) / len(substances)
	if figures < 60 || len(right) < figures/2 {
		t.Errorf("of %d masses, %d are of a substance of the list", figures, len(right))
	}
	t.Logf("%d wrong substances of %d masses were found", len(list)-len(right), figures)
}

// inSpanish finds the language in the metadata of a page.
var inSpanish = regexp.MustCompile(`\A---\n(?:[^-].*\n)*language: es\n`)

// What is said in words after a figure counts like its own unit.
func TestWordsBehindFigures(t *testing.T) {
	files := demo(t)
	for _, words := range []map[string]string{
		{"en": " of nitrate", "es": " de nitrato"},
		{"en": " an acre a tree", "es": " por acre por árbol"},
		{"en": " per tree per acre", "es": " por árbol por acre"},
	} {
		var list []change
		for _, c := range changes(files, func(text string) []string {
			if massUnit.MatchString(text) {
				return []string{text}
			}
			return nil
		}) {
			behind := words["en"]
			if inSpanish.Match(files[c.page]) {
				behind = words["es"]
			}
			figure, _, _ := strings.Cut(string(files[c.page][c.at:]), ")")
			c.to, c.old, c.new = c.from+behind, figure+")", figure+")"+behind+" "
			list = append(list, c)
		}
		for _, c := range found(t, files, list) {
			t.Errorf("%s: %s was not found", c.page, c.to)
		}
		if len(list) < 60 {
			t.Errorf("only %d changes were made", len(list))
		}
		t.Logf("%d of %d figures with%q behind them were found", len(list), len(list), words["en"])
	}
}
