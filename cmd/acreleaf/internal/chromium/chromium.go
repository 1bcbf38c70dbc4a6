// Package chromium prints a page as a PDF with the Chromium of this computer, where there is one.
//
// It owns the names of Chromium, and how it is started: with no window, with settings of its own that are
// gone afterwards, and for a limited time. It must not know what is in a page.
package chromium

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// names are what Chromium and the browsers made from it are called. The first is its engine without windows, which
// starts soonest.
var names = []string{"chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "google-chrome-stable",
	"chrome", "microsoft-edge", "msedge"}

// Find gives the place of a Chromium on the PATH; "" if there is none.
func Find() string {
	for _, name := range names {
		if found, err := exec.LookPath(name); err == nil {
			return found
		}
	}
	return ""
}

// longest is how long a page may take. Three hundred cards take about five seconds on a slow laptop.
const longest = 90 * time.Second

// PDF gives a page as a tagged PDF, on the paper that its style asks for.
func PDF(browser string, page []byte) (pdf []byte, err error) {
	folder, err := os.MkdirTemp("", "acreleaf-pdf-")
	if err != nil {
		return nil, err
	}
	defer func() { _ = os.RemoveAll(folder) }() // Chromium may still be writing into its settings
	from, to := filepath.Join(folder, "page.html"), filepath.Join(folder, "page.pdf")
	if err := os.WriteFile(from, page, 0o600); err != nil {
		return nil, err
	}
	if err := run(browser, filepath.Join(folder, "settings"), from, to); err != nil {
		return nil, err
	}
	pdf, err = os.ReadFile(to)
	if err != nil || !bytes.HasPrefix(pdf, []byte("%PDF-")) {
		return nil, errors.New("it wrote no PDF")
	}
	return pdf, nil
}

func run(browser, settings, from, to string) error {
	ctx, cancel := context.WithTimeout(context.Background(), longest)
	defer cancel()
	args := []string{"--headless", "--disable-gpu", "--no-first-run", "--user-data-dir=" + settings,
		"--no-pdf-header-footer", "--print-to-pdf=" + to}
	if os.Geteuid() == 0 {
		args = append(args, "--no-sandbox") // in it Chromium does not start for root; the page is ours, without a script
	}
	c := exec.CommandContext(ctx, browser, append(args, address(from))...)
	c.WaitDelay = time.Second
	said, err := c.CombinedOutput()
	switch {
	case ctx.Err() != nil:
		return fmt.Errorf("it was not done after %.0f seconds", longest.Seconds())
	case err != nil:
		return fmt.Errorf("%w%s", err, lastLine(said))
	}
	return nil
}

// address is that of a file, for a browser.
func address(file string) string {
	path := filepath.ToSlash(file)
	if !strings.HasPrefix(path, "/") { // a drive comes first
		path = "/" + path
	}
	return (&url.URL{Scheme: "file", Path: path}).String()
}

// lastLine is the last line that a program printed, with what parts it from the text before.
func lastLine(said []byte) string {
	lines := strings.Split(strings.TrimSpace(string(said)), "\n")
	if last := strings.TrimSpace(lines[len(lines)-1]); last != "" {
		return ": " + last
	}
	return ""
}
