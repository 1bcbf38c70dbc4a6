package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"acreleaf/cmd/check/internal/step"
)

// A handed is what is printed of a page of the demo.
type handed struct {
	Folder string         `json:"folder"`
	Page   string         `json:"page"`
	First  int            `json:"first"` // the cards of each exercise
	Last   int            `json:"last"`  // 0: as many as Cards has
	Paper  string         `json:"paper"`
	Side   int            `json:"side"`
	Cards  map[string]int `json:"cards,omitempty"` // how many each exercise has, in a comparison of all of them
}

// handouts are what is printed of the demo every day: the workshop as a leader of thirty prints it, the other ways, and
// a lesson.
var handouts = []handed{
	{Folder: "letter", Page: "report", First: 1, Last: 30, Paper: "letter", Side: 4},
	{Folder: "a4", Page: "report", First: 38, Last: 40, Paper: "a4", Side: 2},
	{Folder: "lesson", Page: "courses/feeding/arboles", First: 1, Last: 4, Paper: "letter", Side: 4},
}

// handout gives the step that prints handouts of the demo, has the HTML checker read their pages, and runs a test
// script that compares what is on paper with the live page. With -cards all exercises of the demo are printed, and
// nothing else.
func (b *bench) handout(script string) func(context.Context, *step.Record) error {
	return func(ctx context.Context, r *step.Record) error {
		list, site := handouts, b.site
		if err := b.copyContent(); err != nil {
			return err
		}
		if b.cards > 0 {
			var err error
			if list, err = b.raiseCards(ctx, r); err != nil {
				return err
			}
			site = filepath.Join(b.handed, "site")
		}
		if err := b.printHandouts(ctx, r, list); err != nil {
			return err
		}
		checker := filepath.Join(browserFolder, "node_modules/vnu-jar/build/dist/vnu.jar")
		if _, err := r.Command(ctx, step.Command{Args: []string{"java", "-Xss8m", "-XX:TieredStopAtLevel=1",
			"-XX:+UseSerialGC", "-jar", checker, "--errors-only", "--skip-non-html", b.handed}}); err != nil {
			return err
		}
		return b.node(ctx, r, script, "content", site)
	}
}

// copyContent copies the demo's content and gives it an address, since there is no QR code without one.
func (b *bench) copyContent() error {
	content := filepath.Join(b.handed, "content")
	if err := os.CopyFS(content, os.DirFS("content")); err != nil {
		return err
	}
	site, err := os.ReadFile(filepath.Join(content, "site.yaml"))
	if err != nil {
		return err
	}
	site = append(site, "address: https://sorrelflat.example.org/\n"...)
	return os.WriteFile(filepath.Join(content, "site.yaml"), site, 0o644)
}

// printHandouts prints them, and writes what the test script must know of them.
func (b *bench) printHandouts(ctx context.Context, r *step.Record, list []handed) error {
	for _, h := range list {
		args := []string{b.acreleaf, "handout", h.Page, "--from", filepath.Join(b.handed, "content"),
			"--to", filepath.Join(b.handed, h.Folder), "--paper", h.Paper, "--side", strconv.Itoa(h.Side)}
		if h.Last > 0 {
			args = append(args, fmt.Sprintf("--cards=%d-%d", h.First, h.Last))
		}
		if _, err := r.Command(ctx, step.Command{Args: args}); err != nil {
			return err
		}
	}
	text, err := json.Marshal(list)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(b.handed, "list.json"), text, 0o644)
}

// distinct is the line of a proof that counts the different cards of an exercise in a workshop or a lesson.
var distinct = regexp.MustCompile(`(?m)/((?:workshops|courses)/\S+)\.md, exercise (\S+): (\d+) different cards`)

// raiseCards lets each exercise have as many cards as are asked for, or all that there are, and presses that site.
func (b *bench) raiseCards(ctx context.Context, r *step.Record) ([]handed, error) {
	content := filepath.Join(b.handed, "content")
	out, err := r.Command(ctx, step.Command{Args: []string{b.acreleaf, "proof", "--from", content}})
	if err != nil {
		return nil, err
	}
	pages := map[string]map[string]int{}
	for _, found := range distinct.FindAllSubmatch(out, -1) {
		page, name := string(found[1]), string(found[2])
		count, _ := strconv.Atoi(string(found[3]))
		if pages[page] == nil {
			pages[page] = map[string]int{}
		}
		pages[page][name] = min(count, b.cards)
	}
	if len(pages) == 0 {
		return nil, fmt.Errorf("the proof of the demo counts no cards")
	}
	var list []handed
	for _, page := range slices.Sorted(maps.Keys(pages)) {
		file := filepath.Join(content, filepath.FromSlash(page)+".md")
		text, err := os.ReadFile(file)
		if err != nil {
			return nil, err
		}
		for name, cards := range pages[page] {
			fence := fmt.Appendf(nil, "```exercise %s\n", name)
			text = bytes.Replace(text, fence, fmt.Appendf(fence, "cards: %d\n", cards), 1)
		}
		if err := os.WriteFile(file, text, 0o644); err != nil {
			return nil, err
		}
		list = append(list, handed{Folder: strings.ReplaceAll(page, "/", "-"), Page: page, First: 1,
			Paper: "letter", Side: 4, Cards: pages[page]})
	}
	_, err = r.Command(ctx, step.Command{Args: []string{b.acreleaf, "press", "--from", content,
		"--to", filepath.Join(b.handed, "site")}})
	return list, err
}
