package markdown

import (
	"bytes"
	"maps"
	"slices"
	"strconv"
	"sync"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"
)

// HTML writes the page's text. It may be called by several goroutines at once, each with a buffer of its own. An error
// is the highlighter's; the page is whole all the same, with a plain listing.
func (d *Document) HTML(w *bytes.Buffer, f Fragments, words *Words) error {
	d = d.Awake()
	p := printer{w: w, source: d.text, doc: d, fragments: f, words: words, funcs: printFuncs()}
	p.children(d.root)
	p.notes()
	return p.err
}

// printer writes one document. goldmark's own renderer is not used: it calls every node twice through a walk, and
// gives its functions no place for what belongs to one page.
type printer struct {
	w         *bytes.Buffer
	source    []byte
	doc       *Document
	fragments Fragments
	words     *Words
	funcs     []printFunc
	err       error // the first error of the highlighter

	nextHeading int            // index of the heading that is most likely printed next
	heading     string         // text of the last heading
	labels      map[string]int // how often each name of a box was asked for
	listings    int            // bytes of listings printed so far
	examples    int            // examples printed so far
	inLink      bool           // inside a link, where no other may stand
	inCell      bool           // inside a cell of a table, where a pipe has a backslash before it
	rowHeads    bool           // the first column of the table being printed names its rows
}

// printFunc prints a node and its children.
type printFunc func(p *printer, n ast.Node)

// printFuncs gives the function of every kind of node, by the kind's number. Kinds without one print their children.
var printFuncs = sync.OnceValue(func() []printFunc {
	byKind := map[ast.NodeKind]printFunc{
		ast.KindAutoLink:                 printAddress,
		ast.KindBlockquote:               printQuote,
		ast.KindCodeBlock:                printListing,
		ast.KindCodeSpan:                 printCodeSpan,
		ast.KindEmphasis:                 printEmphasis,
		ast.KindFencedCodeBlock:          printListing,
		ast.KindHeading:                  printHeading,
		ast.KindHTMLBlock:                printHTMLBlock,
		ast.KindImage:                    printImage,
		ast.KindLink:                     printLink,
		ast.KindLinkReferenceDefinition:  printNothing,
		ast.KindList:                     printList,
		ast.KindListItem:                 printListItem,
		ast.KindParagraph:                printParagraph,
		ast.KindRawHTML:                  printRawHTML,
		ast.KindText:                     printText,
		ast.KindTextBlock:                printTextBlock,
		ast.KindThematicBreak:            printThematicBreak,
		extast.KindDefinitionDescription: printDefinition,
		extast.KindDefinitionList:        printDefinitionList,
		extast.KindDefinitionTerm:        printDefinitionTerm,
		extast.KindFootnote:              printFootnote,
		extast.KindFootnoteBacklink:      printFootnoteBack,
		extast.KindFootnoteLink:          printFootnoteMark,
		extast.KindFootnoteList:          printFootnoteList,
		extast.KindTable:                 printTable,
		extast.KindTableCell:             printTableCell,
		extast.KindTableHeader:           printTableHeader,
		extast.KindTableRow:              printTableRow,
		kindBlock:                        printBlock,
		kindCaption:                      printCaption,
		kindContainer:                    printContainer,
	}
	list := make([]printFunc, slices.Max(slices.Collect(maps.Keys(byKind)))+1)
	for kind, print := range byKind {
		list[kind] = print
	}
	return list
})

func (p *printer) children(n ast.Node) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if kind := int(c.Kind()); kind < len(p.funcs) && p.funcs[kind] != nil {
			p.funcs[kind](p, c)
		} else {
			p.children(c)
		}
	}
}

func printNothing(*printer, ast.Node) {}

func printParagraph(p *printer, n ast.Node) {
	p.w.WriteString("<p>")
	p.children(n)
	p.fragments.Notes(p.w)
	p.w.WriteString("</p>\n")
}

// notes writes the notes of a block that is no paragraph, such as a table, in a paragraph after it.
func (p *printer) notes() {
	start := p.w.Len()
	p.w.WriteString("<p>")
	empty := p.w.Len()
	p.fragments.Notes(p.w)
	if p.w.Len() == empty {
		p.w.Truncate(start)
		return
	}
	p.w.WriteString("</p>\n")
}

func printTextBlock(p *printer, n ast.Node) {
	p.children(n)
	p.fragments.Notes(p.w)
	if n.NextSibling() != nil && n.HasChildren() {
		p.w.WriteByte('\n')
	}
}

func printThematicBreak(p *printer, _ ast.Node) { p.w.WriteString("<hr>\n") }

// openBox opens a box that scrolls sideways when its content is too wide. Such a box can be reached by keyboard and
// has a name that no other box of the page has.
func (p *printer) openBox(kind, about string) {
	label := kind
	if about != "" {
		label += ": " + about
	}
	if p.labels == nil {
		p.labels = map[string]int{}
	}
	p.labels[label]++
	if n := p.labels[label]; n > 1 {
		label += ", " + strconv.Itoa(n)
	}
	p.w.WriteString(`<div class="scroll" tabindex="0" role="region"`)
	p.attribute("aria-label", label)
	p.w.WriteByte('>')
}

// attribute writes an attribute with a space before it.
func (p *printer) attribute(name, value string) {
	p.w.WriteByte(' ')
	p.w.WriteString(name)
	p.w.WriteString(`="`)
	p.escape(value)
	p.w.WriteByte('"')
}

// address writes an attribute that holds an address: what cannot be in one is percent-encoded.
func (p *printer) address(name, value string) {
	p.w.WriteByte(' ')
	p.w.WriteString(name)
	p.w.WriteString(`="`)
	p.escapeBytes(util.URLEscape([]byte(value), false))
	p.w.WriteByte('"')
}
