package markdown

import (
	"bytes"
	"sync"

	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/util"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Parse reads the Markdown that starts at the byte offset body of a source. Every span of the document and of the
// messages is a range of src.Text. The document is whole and can be printed even when there are faults.
func Parse(src *message.Source, body int) (*Document, message.List) {
	if bytes.HasPrefix(src.Text[body:], []byte(message.ByteOrderMark)) {
		body += len(message.ByteOrderMark)
	}
	r := newReading(src, body)
	r.parse(pageParser())
	return r.doc, r.messages
}

// pageParser is made once: goldmark's parser keeps what it knows of a page in its context, so one serves all
// goroutines.
var pageParser = sync.OnceValue(func() parser.Parser {
	return newParser(
		parser.WithBlockParsers(
			util.Prioritized(extension.NewDefinitionListParser(), 101),
			util.Prioritized(extension.NewDefinitionDescriptionParser(), 102),
			util.Prioritized(containerParser{}, 690),
			util.Prioritized(newFootnoteParser(), 999),
		),
		parser.WithInlineParsers(util.Prioritized(newMarkParser(), 101)),
		parser.WithParagraphTransformers(util.Prioritized(newTableParser(), 200)),
		parser.WithASTTransformers(util.Prioritized(extension.NewFootnoteASTTransformer(), 999)),
	)
})

// newParser makes a parser of CommonMark, in which our own parsers stand around goldmark's, and of what is asked for
// on top.
func newParser(more ...parser.Option) parser.Parser {
	return parser.NewParser(append([]parser.Option{
		parser.WithBlockParsers(
			util.Prioritized(newHeadingParser(parser.NewSetextHeadingParser()), 100),
			util.Prioritized(parser.NewThematicBreakParser(), 200),
			util.Prioritized(newListParser(), 300),
			util.Prioritized(parser.NewListItemParser(), 400),
			util.Prioritized(parser.NewCodeBlockParser(), 500),
			util.Prioritized(newHeadingParser(parser.NewATXHeadingParser()), 600),
			util.Prioritized(newFenceParser(), 700),
			util.Prioritized(newQuoteParser(), 800),
			util.Prioritized(newHTMLBlockParser(), 900),
			util.Prioritized(parser.NewParagraphParser(), 1000),
		),
		parser.WithInlineParsers(
			util.Prioritized(newCodeSpanParser(), 100),
			util.Prioritized(newLinkParser(), 200),
			util.Prioritized(newAddressParser(), 300),
			util.Prioritized(newRawHTMLParser(), 400),
			util.Prioritized(newEmphasisParser(), 500),
		),
		parser.WithParagraphTransformers(util.Prioritized(parser.LinkReferenceParagraphTransformer, 100)),
	}, more...)...)
}
