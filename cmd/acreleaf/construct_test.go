package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/construct"
)

// The manual shows how each kind of block is written, on the page that the table names.
func TestManualShowsEveryConstruct(t *testing.T) {
	for k := range construct.All() {
		name := filepath.Join("..", "..", "content", "manual", k.Row().Manual+".md")
		text, err := os.ReadFile(name)
		if err != nil || !strings.Contains(string(text), "\n```"+k.String()) {
			t.Errorf("%s does not show how a %s is written (%v)", name, k, err)
		}
	}
}
