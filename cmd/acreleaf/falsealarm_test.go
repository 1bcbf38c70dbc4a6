package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// cleanDay is the day on which the clean texts are proofed: after the last of them was written.
var cleanDay = time.Date(2027, 11, 30, 0, 0, 0, 0, time.UTC)

// The demo site and five texts full of numbers that are no figures: dates, grades, counts, names, fractions. A
// proof finds no fault in them, and has nothing to say of a number.
func TestNoFalseAlarm(t *testing.T) {
	for folder, pages := range map[string]int{
		filepath.Join("..", "..", "content"):          14,
		filepath.Join("testdata", "clean", "english"): 4,
		filepath.Join("testdata", "clean", "spanish"): 3,
	} {
		options := book.Options{Content: os.DirFS(folder), Name: "content"}
		checked := book.Check(options, site.New, proof.Rules{Advice: true, Today: cleanDay})
		if checked.Pages < pages || checked.Worked == 0 || checked.Sourced == 0 {
			t.Errorf("%s: %d pages, %d worked and %d sourced figures were read", folder, checked.Pages, checked.Worked,
				checked.Sourced)
		}
		for _, m := range checked.Messages {
			if m.Level == message.Fault || strings.Contains(m.ID, "figure") {
				t.Errorf("%s: [%s] %s", m.Source.Name, m.ID, m.Text)
			}
		}
	}
}
