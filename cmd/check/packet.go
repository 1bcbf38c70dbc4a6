package main

import (
	"context"
	"os"
	"path/filepath"

	"acreleaf/cmd/check/internal/step"
)

// packet makes the packets of the demo, and one that is made alone, and runs the test script that opens them from the
// disk.
func (b *bench) packet(ctx context.Context, r *step.Record) error {
	all, alone := filepath.Join(b.packets, "all"), filepath.Join(b.packets, "alone")
	for _, args := range [][]string{{"--to", all}, {"guides/soil.md", "--to", alone}} {
		if _, err := r.Command(ctx, step.Command{Args: append([]string{b.acreleaf, "packet"}, args...)}); err != nil {
			return err
		}
	}
	for _, name := range []string{"guides/soil.html", "guides/plan.html", "courses/feeding/trees.html",
		"workshops/report.html", "home.html", "site.html", "site.zip"} {
		info, err := os.Stat(filepath.Join(all, name))
		if err != nil {
			return err
		}
		r.Note("  %-34s %7.1f kB", name, kilobytes(int(info.Size())))
	}
	return b.browser("packet.mjs")(ctx, r)
}
