package main

import (
	"context"
	"os"
	"path/filepath"

	"acreleaf/cmd/check/internal/step"
)

// handouts are what is printed of the demo's workshop, by folder: as a leader of thirty prints it, and the other ways.
var handouts = map[string][]string{
	"letter": {"--cards=1-30"},
	"a4":     {"--cards=38-40", "--paper=a4", "--side=2"},
}

// handout gives the step that prints the handout of the demo's workshop, has the HTML checker read its pages, and runs
// a test script that compares what is on paper with the live page.
func (b *bench) handout(script string) func(context.Context, *step.Record) error {
	return func(ctx context.Context, r *step.Record) error {
		if err := b.printHandouts(ctx, r); err != nil {
			return err
		}
		checker := filepath.Join(browserFolder, "node_modules/vnu-jar/build/dist/vnu.jar")
		if _, err := r.Command(ctx, step.Command{Args: []string{"java", "-Xss8m", "-XX:TieredStopAtLevel=1",
			"-XX:+UseSerialGC", "-jar", checker, "--errors-only", "--skip-non-html", b.handed}}); err != nil {
			return err
		}
		return b.node(ctx, r, script, "content", b.site)
	}
}

// printHandouts prints from the demo's content with an address, since there is no QR code without one.
func (b *bench) printHandouts(ctx context.Context, r *step.Record) error {
	content := filepath.Join(b.handed, "content")
	if err := os.CopyFS(content, os.DirFS("content")); err != nil {
		return err
	}
	site, err := os.ReadFile(filepath.Join(content, "site.yaml"))
	if err != nil {
		return err
	}
	site = append(site, "address: https://sorrelflat.example.org/\n"...)
	if err := os.WriteFile(filepath.Join(content, "site.yaml"), site, 0o644); err != nil {
		return err
	}
	for name, options := range handouts {
		args := append([]string{b.acreleaf, "handout", "report", "--from", content, "--to", filepath.Join(b.handed, name)},
			options...)
		if _, err := r.Command(ctx, step.Command{Args: args}); err != nil {
			return err
		}
	}
	return nil
}
