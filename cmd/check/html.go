package main

import (
	"context"
	"path/filepath"

	"acreleaf/cmd/check/internal/pressed"
	"acreleaf/cmd/check/internal/step"
)

// The steps that read the pressed HTML and CSS with checkers from npm.

// vnu runs the Nu HTML checker over the pages and the style sheets, which it finds in the site's folder. Its schema
// needs a deep stack, and more of it the later Java compiles; for so short a run Java's first compiler takes half the
// time.
func (b *bench) vnu(ctx context.Context, r *step.Record) error {
	site, err := pressed.Read(b.site)
	if err != nil {
		return err
	}
	_, err = r.Command(ctx, step.Command{Args: []string{
		"java", "-Xss8m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC",
		"-jar", filepath.Join(browserFolder, "node_modules/vnu-jar/build/dist/vnu.jar"),
		"--errors-only", "--skip-non-html", "--also-check-css", b.site,
	}})
	r.Note("  %d pages, %d style sheets", len(site.Ending(".html")), len(site.Ending(".css")))
	return err
}

// htmlValidate runs html-validate over the pages. Four of its rules are set in browser/html-validate.json because
// they ask for what would do harm here: a hash on our own files, which a browser cannot check on a page opened from a
// disk; a submit button on forms that send nothing; a native element for a box that only scrolls; no white space at the
// ends of lines, which a listing of an author's own lines must keep.
func (b *bench) htmlValidate(ctx context.Context, r *step.Record) error {
	site, err := pressed.Read(b.site)
	if err != nil {
		return err
	}
	args := []string{
		"node", filepath.Join(browserFolder, "node_modules/html-validate/bin/html-validate.mjs"),
		"--config", filepath.Join(browserFolder, "html-validate.json"),
	}
	for _, f := range site.Ending(".html") {
		args = append(args, filepath.Join(b.site, filepath.FromSlash(f.Path)))
	}
	_, err = r.Command(ctx, step.Command{Args: args})
	return err
}
