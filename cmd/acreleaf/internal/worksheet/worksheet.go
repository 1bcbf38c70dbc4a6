// Package worksheet binds the blocks of a page to calculations: it reads what an author wrote for each given, links
// worksheets that take each other's answers, works the example, and compares every worked figure in the prose with it.
//
// It owns the meaning of each kind of block: worksheets, reckoners, exercises, passages, tables of materials and the
// calculations that authors write. It must not parse Markdown, write HTML, or do
// arithmetic of its own: numbers come from calc.
package worksheet

import (
	"slices"

	"acreleaf/calc"
	"acreleaf/calc/prose"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A Page is the worksheets of one page, bound together and worked for the example's numbers.
type Page struct {
	Graph  *sheet.Graph
	Cells  []float64 // the example's values, of a range the lower ends; see sheet.Program
	High   []float64 // the upper ends; the same as Cells where a value is a single number
	Sheets []*Bound  // in the order in which they are worked, tables included

	Passages []*Passage // in the order of the source; those with a fault are left out

	byBlock map[int]*Bound  // by markdown.Block.Index
	figures map[int]*Figure // by markdown.Figure.Index

	references map[int]*Reference // by markdown.Block.Index
	drawings   map[int]*Drawing   // likewise

	Exercises []*Exercise // in the order of the source

	parts []*Bound // by the index of their use in the graph, those of exercises too
}

// A Bound is one block at work.
type Bound struct {
	Block   *markdown.Block
	Kind    construct.Kind // a worksheet or a reckoner, or an exercise of which it is a part
	Sheet   *sheet.Sheet
	Use     *sheet.Use
	Title   string                 // the author's own title; "" for the calculation's
	Entries map[string]sheet.Entry // what the author wrote, by given
	Table   *Table                 // of a reckoner

	links map[string]linkEntry // by given
	name  string               // unique in the page
	tried map[string]bool      // the keys that the author wrote, or most likely meant to write
}

// Example is the block worked for the author's numbers.
func (p *Page) Example(b *Bound) sheet.Outcome {
	return sheet.Outcome{Use: b.Use, Cells: p.Cells, High: p.High}
}

// Has says whether a block was bound: nothing is wrong with it.
func (p *Page) Has(block *markdown.Block) bool {
	return p.Bound(block) != nil || p.Reference(block) != nil || p.Drawing(block) != nil || p.Exercise(block) != nil
}

// HasAll says whether all blocks of a list were bound.
func (p *Page) HasAll(blocks []*markdown.Block) bool {
	return !slices.ContainsFunc(blocks, func(b *markdown.Block) bool { return !p.Has(b) })
}

// Bound gives what a block was bound to. It is nil for a block with a fault, and for one that works no calculation.
func (p *Page) Bound(block *markdown.Block) *Bound { return p.byBlock[block.Index] }

// Figure gives what a worked figure was resolved to. It is nil for a figure with a fault.
func (p *Page) Figure(f *markdown.Figure) *Figure { return p.figures[f.Index] }

// Find gives the worksheet that an author named, or nil.
func (p *Page) Find(name string) *Bound {
	for _, b := range p.Sheets {
		if b.Block.Name == name && name != "" && b.Kind == construct.Worksheet {
			return b
		}
	}
	return nil
}

// Bind binds the blocks and figures of a document. Blocks with a fault, and those that take numbers from them, are
// left out of the page, so that one slip is reported once. Numbers are read as the page's language writes them.
func Bind(doc *markdown.Document, catalogue *calc.Catalogue, language string) (*Page, message.List) {
	b := &binder{doc: doc, catalogue: catalogue, tag: language, language: prose.For(language), page: &Page{
		byBlock: map[int]*Bound{}, figures: map[int]*Figure{}, references: map[int]*Reference{},
		drawings: map[int]*Drawing{},
	}, faulty: map[string]bool{}, seen: map[blockName]*markdown.Block{}}
	b.bindBlocks()
	b.link()
	b.work()
	b.bindDrawings()
	b.bindFigures()
	return b.page, b.messages
}

// A binder is one run of Bind.
type binder struct {
	doc       *markdown.Document
	catalogue *calc.Catalogue
	tag       string // of the page's language
	language  *prose.Language
	page      *Page
	bound     []*Bound        // in the order of the source
	faulty    map[string]bool // the names of blocks that are left out
	seen      map[blockName]*markdown.Block
	messages  message.List

	exercises []*Exercise
	drawn     []*markdown.Block // the drawings, until all worksheets are bound
}

func (b *binder) fault(span message.Span, id, text, note string) {
	b.messages = append(b.messages, message.Message{
		Level: message.Fault, ID: id, Source: b.doc.Source, Span: span, Text: text, Note: note,
	})
}

// named finds a worksheet of the page by the author's name, bound or not yet.
func (b *binder) named(name string) *Bound {
	for _, bound := range b.bound {
		if bound.Kind == construct.Worksheet && bound.name == name {
			return bound
		}
	}
	return nil
}

// worksheetNames lists the names that links and figures can use.
func (b *binder) worksheetNames() []string {
	var names []string
	for _, bound := range b.bound {
		if bound.Kind == construct.Worksheet {
			names = append(names, bound.name)
		}
	}
	return names
}
