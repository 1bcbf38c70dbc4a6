package main

import (
	"path/filepath"

	"acreleaf/cmd/check/internal/step"
	"acreleaf/cmd/check/internal/tool"
)

// browserFolder holds the Node scripts and the lock file of the checkers.
const browserFolder = "cmd/check/browser"

// packages is the name, among the tools, of what npm installs from the lock file.
const packages = "npm packages"

// A bench is where the steps put what later steps read. All of it lies in one temporary folder.
type bench struct {
	acreleaf string // the built program
	answers  string // the built program that runs it again and again
	marks    string // the built program that marks the exercises of a content folder
	parity   string // the built program cmd/check/parity
	site     string // the pressed site
	modules  string // what cmd/check/parity writes
	numbers  string // a folder with the page's number text as one module
	more     string // content with the guides of the checks, and
	moreSite string // the site pressed from it
	handed   string // content with an address, and the handouts of it
	crossed  string // the program built for every kind of computer
	bare     string // the program, and nothing else
	books    string // the books of the demo
	blocks   int    // how many random blocks are tried, each shown by guides; 0 for the usual
	cards    int    // of each exercise of the demo so many are compared with paper; 0 for a sample
	raced    string // what the race detector is given in the place of the bundler
	packets  string // its packets: all of them, and one that was made alone
	kills    string // sites whose presses are killed
	aside    string // home and temporary folder of a press, which must stay empty
}

func newBench(dir string) *bench {
	in := func(name string) string { return filepath.Join(dir, name) }
	return &bench{
		acreleaf: in("acreleaf"), answers: in("answers"), marks: in("marks"), parity: in("parity"), site: in("site"),
		modules: in("modules"), numbers: in("numbers"), more: in("more"), moreSite: in("more-site"),
		aside: in("aside"), handed: in("handed"),
		crossed: in("crossed"), bare: in("bare"), books: in("books"), packets: in("packets"), kills: in("kills"),
		raced: in("raced"),
	}
}

// Steps that call the Go tool run one at a time: two would compile the same packages twice. What presses uses the home
// and the temporary folder of a press, in which nothing else may be written meanwhile.
const (
	goTool  = "the Go tool"
	presses = "presses"
)

// steps is every step, in the order in which they start when they can: what others need and the quick ones first, and
// of the rest the long ones. Steps that take time by the clock are alone, at the end.
func (b *bench) steps() []step.Step {
	wasm, java, node := tool.Wabt.Name, tool.Java.Name, tool.Node.Name
	browser := []string{tool.Chromium.Name, node, tool.NPM.Name, packages}
	checkers := []string{node, tool.NPM.Name, packages}
	return []step.Step{
		{Name: "gofmt", Run: format},
		{Name: "press", Group: goTool, Run: b.press},
		{Name: "types", Tools: checkers, Run: types},
		{Name: "number text", Group: goTool, Run: b.numberText},
		{Name: "vet", Group: goTool, Run: vet},
		{Name: "go.mod", Group: goTool, Run: goModules},
		{Name: "staticcheck", Group: goTool, Run: staticcheck},
		{Name: "material", Group: goTool, After: []string{"press"}, Run: b.material},
		{Name: "go test", Group: goTool, Tools: []string{wasm}, Run: goTest},
		{Name: "races", Group: goTool, Tools: []string{tool.Compiler.Name}, Run: b.races},
		{Name: "cross", Group: goTool, Run: b.cross},
		{Name: "empty folder", After: []string{"press"}, Run: b.empty},
		{Name: "press again", Group: presses, After: []string{"press"}, Run: b.again},
		{Name: "press paused", Group: presses, After: []string{"press"}, Run: b.paused},
		{Name: "press killed", Group: presses, After: []string{"press"}, Run: b.killed},
		{Name: "press more", Group: presses, After: []string{"press"}, Run: b.pressMore},
		{Name: "sizes", After: []string{"press"}, Run: b.sizes},
		{Name: "wasm", After: []string{"material"}, Tools: []string{wasm}, Run: b.wasmValidate},
		{Name: "numbers", After: []string{"number text"}, Tools: browser, Run: b.browser("numbers.mjs")},
		{Name: "pages", After: []string{"press"}, Tools: browser, Run: b.browser("pages.mjs")},
		{Name: "packet", After: []string{"press", "number text"}, Tools: browser, Run: b.packet},
		{Name: "works", After: []string{"press"}, Tools: browser, Run: b.browser("works.mjs")},
		{Name: "ways", After: []string{"press", "number text"}, Tools: browser, Run: b.browser("ways.mjs")},
		{Name: "first", After: []string{"press"}, Tools: browser, Run: b.browser("first.mjs")},
		{Name: "live", After: []string{"press", "number text"}, Tools: browser, Run: b.browser("live.mjs")},
		{Name: "kept", After: []string{"press", "number text"}, Tools: browser, Run: b.browser("kept.mjs")},
		{Name: "block", After: []string{"press", "number text"}, Tools: browser, Run: b.browser("block.mjs")},
		{Name: "choices", After: []string{"press", "number text"}, Tools: browser, Run: b.browser("choices.mjs")},
		{Name: "hostile", After: []string{"press"}, Tools: browser, Run: b.browser("hostile.mjs")},
		{Name: "typed", After: []string{"press"}, Tools: browser, Run: b.browser("typed.mjs")},
		{Name: "leader", After: []string{"press"}, Tools: browser, Run: b.browser("leader.mjs")},
		{Name: "learner", After: []string{"press"}, Tools: browser, Run: b.browser("learner.mjs")},
		{Name: "record", After: []string{"press", "number text"}, Tools: browser, Run: b.browser("record.mjs")},
		{Name: "offline", After: []string{"press", "number text"}, Tools: browser, Run: b.browser("offline.mjs")},
		{Name: "session", After: []string{"press"}, Tools: browser, Run: b.browser("session.mjs")},
		{Name: "language", After: []string{"press"}, Tools: browser, Run: b.browser("language.mjs")},
		{Name: "speaks", After: []string{"press"}, Tools: browser, Run: b.browser("speaks.mjs")},
		{Name: "marking", After: []string{"press"}, Tools: browser, Run: b.browser("marking.mjs")},
		{Name: "exercise", After: []string{"press"}, Tools: browser, Run: b.browser("exercise.mjs")},
		{Name: "vnu", After: []string{"press"}, Tools: append(checkers, java), Run: b.vnu},
		{
			Name: "epub", After: []string{"press"}, Tools: append(checkers, java, tool.EPUBCheck.Name, tool.Rhino.Name),
			Run: b.epub,
		},
		{Name: "kinds", After: []string{"press more", "number text"}, Tools: browser, Run: b.browserMore("kinds.mjs")},
		{Name: "margin", After: []string{"press more"}, Tools: browser, Run: b.browserMore("margin.mjs")},
		{
			Name: "handout", After: []string{"press", "number text"}, Run: b.handout("handout.mjs"),
			Tools: append(browser, java, tool.Poppler.Name, tool.ZBar.Name),
		},
		{Name: "html-validate", After: []string{"press"}, Tools: checkers, Run: b.htmlValidate},
		{Name: "parity", After: []string{"material"}, Tools: browser, Run: b.browser("parity.mjs")},
		{Name: "spread", After: []string{"material", "number text"}, Tools: browser, Run: b.browser("spread.mjs")},
		{Name: "length", After: []string{"press"}, Tools: browser, Run: b.browser("length.mjs")},
		{
			Name: "decision", After: []string{"press more", "number text"}, Tools: browser,
			Run: b.browserMore("decision.mjs"),
		},
		{Name: "later", After: []string{"press", "number text"}, Tools: browser, Run: b.browser("later.mjs")},
		{Name: "rows", Alone: true, Run: rowsSpeed},
		{Name: "desk", Alone: true, After: []string{"press"}, Tools: browser, Run: b.browser("desk.mjs")},
		{
			Name: "keystroke", Alone: true, After: []string{"press more", "number text"}, Tools: browser,
			Run: b.browserMore("keystroke.mjs"),
		},
	}
}
