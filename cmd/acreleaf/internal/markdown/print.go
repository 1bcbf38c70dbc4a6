package markdown

import (
	"bytes"
	"slices"
	"strconv"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"
)

// HTML writes the page's text. It may be called by several goroutines at once, each with a buffer of its own.
func (d *Document) HTML(w *bytes.Buffer, f Fragments, words *Words) error {
	p := printer{w: w, source: d.text, doc: d, fragments: f, words: words}
	p.children(d.Root)
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
	err       error // the first error of the highlighter

	nextHeading int    // index of the heading that is most likely printed next
	heading     string // text of the last heading
	labels      []string
	inLink      bool // inside a link, where no other may stand
	rowHeads    bool // the first column of the table being printed names its rows
}

// printFuncs holds the function of every kind of node. Kinds without one print their children.
var printFuncs [64]func(p *printer, n ast.Node)

func init() {
	for kind, print := range map[ast.NodeKind]func(*printer, ast.Node){
		ast.KindAutoLink:                 printAddress,
		ast.KindBlockquote:               printQuote,
		ast.KindCodeBlock:                printCodeBlock,
		ast.KindCodeSpan:                 printCodeSpan,
		ast.KindEmphasis:                 printEmphasis,
		ast.KindFencedCodeBlock:          printFence,
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
		kindCaption:                      printCaption,
	} {
		printFuncs[kind] = print
	}
}

func (p *printer) children(n ast.Node) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if print := printFuncs[c.Kind()]; print != nil {
			print(p, c)
		} else {
			p.children(c)
		}
	}
}

func printNothing(*printer, ast.Node) {}

func printParagraph(p *printer, n ast.Node) {
	p.w.WriteString("<p>")
	p.children(n)
	p.w.WriteString("</p>\n")
}

func printTextBlock(p *printer, n ast.Node) {
	p.children(n)
	if n.NextSibling() != nil && n.HasChildren() {
		p.w.WriteByte('\n')
	}
}

func printThematicBreak(p *printer, _ ast.Node) { p.w.WriteString("<hr>\n") }

func printList(p *printer, node ast.Node) {
	n := node.(*ast.List)
	if !n.IsOrdered() {
		p.w.WriteString("<ul>\n")
		p.children(n)
		p.w.WriteString("</ul>\n")
		return
	}
	p.w.WriteString("<ol")
	if n.Start != 1 {
		p.attribute("start", strconv.Itoa(n.Start))
	}
	p.w.WriteString(">\n")
	p.children(n)
	p.w.WriteString("</ol>\n")
}

func printListItem(p *printer, n ast.Node) {
	p.w.WriteString("<li>")
	if first := n.FirstChild(); first != nil && first.Kind() != ast.KindTextBlock {
		p.w.WriteByte('\n')
	}
	p.children(n)
	p.w.WriteString("</li>\n")
}

// openBox opens a box that scrolls sideways when its content is too wide. Such a box can be reached by keyboard and
// has a name that no other box of the page has.
func (p *printer) openBox(kind, about string) {
	label := kind
	if about != "" {
		label += ": " + about
	}
	unique := label
	for n := 2; slices.Contains(p.labels, unique); n++ {
		unique = label + ", " + strconv.Itoa(n)
	}
	p.labels = append(p.labels, unique)
	p.w.WriteString(`<div class="scroll" tabindex="0" role="region"`)
	p.attribute("aria-label", unique)
	p.w.WriteByte('>')
}

// attribute writes an attribute with a space before it.
func (p *printer) attribute(name, value string) {
	p.w.WriteByte(' ')
	p.w.WriteString(name)
	p.w.WriteString(`="`)
	p.escape([]byte(value))
	p.w.WriteByte('"')
}

// address writes an attribute that holds an address: what cannot stand in one is percent-encoded.
func (p *printer) address(name, value string) {
	p.w.WriteByte(' ')
	p.w.WriteString(name)
	p.w.WriteString(`="`)
	p.escape(util.URLEscape([]byte(value), false))
	p.w.WriteByte('"')
}
