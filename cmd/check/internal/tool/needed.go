package tool

import (
	"context"
	"fmt"
	"strconv"
	"strings"
)

// The tools of the checks. What is not here comes with Go itself or is in go.mod.
var (
	Compiler = Tool{
		Name: "gcc", Debian: []string{"gcc", "libc6-dev"},
		For: "run the Go tests with the race detector",
	}
	Wabt = Tool{
		Name: "wasm-validate", Debian: []string{"wabt"},
		For: "check the WebAssembly modules",
	}
	Java = Tool{
		Name: "java", Debian: []string{"default-jre-headless"},
		For: "run the checkers of HTML and of books",
	}
	EPUBCheck = Tool{
		Name: "epubcheck", Debian: []string{"epubcheck"},
		For: "check the books",
	}
	// Rhino runs the script that gives all books to one process of the checker.
	Rhino = Tool{
		Name: "rhino", Debian: []string{"rhino"},
		For: "check the books in one run",
	}
	Node = Tool{
		Name: "node", Debian: []string{"nodejs"},
		For:    "run html-validate and the browser tests",
		Note:   "Version 20.19 or later is needed; Debian has one since release 13.",
		Enough: nodeEnough,
	}
	NPM = Tool{
		Name: "npm", Debian: []string{"npm"},
		For: "fetch the checkers that the lock file in cmd/check/browser names",
	}
	Poppler = Tool{
		Name: "pdftotext", Debian: []string{"poppler-utils"},
		For: "read the PDF files of a handout",
	}
	ZBar = Tool{
		Name: "zbarimg", Debian: []string{"zbar-tools"},
		For: "read the QR codes of printed cards",
	}
	// Chromium is the browser's engine without its windows, which took most of the time of a new tab. It brings a font
	// along: on a bare machine there is none, and text without one has no width.
	Chromium = Tool{
		Name: "chromium-headless-shell", Debian: []string{"chromium-headless-shell", "fonts-dejavu-core"},
		For: "open the pressed site in a real browser",
	}
)

// All is every tool, in the order in which they are looked for.
func All() []Tool {
	return []Tool{Compiler, Wabt, Java, EPUBCheck, Rhino, Node, NPM, Poppler, ZBar, Chromium}
}

// The oldest Node that the packages in the lock file accept.
const nodeMajor, nodeMinor = 20, 19

// nodeEnough asks Node for its version: html-validate 10.17.0 wants 20.19 at least.
func nodeEnough(ctx context.Context, m Machine) error {
	printed, err := m.Run(ctx, "", "node", "--version")
	if err != nil {
		return fmt.Errorf("node --version does not run: %w", err)
	}
	version := strings.TrimPrefix(strings.TrimSpace(string(printed)), "v")
	parts := strings.Split(version, ".")
	if len(parts) < 2 {
		return fmt.Errorf("node --version gave %q, which is no version", version)
	}
	major, errMajor := strconv.Atoi(parts[0])
	minor, errMinor := strconv.Atoi(parts[1])
	if errMajor != nil || errMinor != nil {
		return fmt.Errorf("node --version gave %q, which is no version", version)
	}
	if major < nodeMajor || major == nodeMajor && minor < nodeMinor {
		return fmt.Errorf("node is version %s, and %d.%d or later is needed", version, nodeMajor, nodeMinor)
	}
	return nil
}
