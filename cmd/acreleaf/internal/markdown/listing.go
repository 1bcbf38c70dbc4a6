package markdown

import (
	"bytes"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/chroma/v2"
	"github.com/yuin/goldmark/ast"
)

// Highlight writes a listing as <pre class="code"><code>, its tokens in spans with the classes of Classes. An unknown
// language, or none, gives plain text. On an error, too, the listing is written as plain text.
func Highlight(w *bytes.Buffer, language, code string) error {
	p := printer{w: w}
	return p.highlight(lexerOf(language), code)
}

// highlight writes the listing.
func (p *printer) highlight(lexer chroma.Lexer, code string) error {
	p.w.WriteString(`<pre class="code"><code>`)
	err := p.tokens(lexer, code)
	p.w.WriteString("</code></pre>\n")
	return err
}

// tokens writes a listing, or a part of one. One past the limits stays plain, and so does one that is not UTF-8, which
// the lexers would change.
func (p *printer) tokens(lexer chroma.Lexer, code string) error {
	unix, _ := unixEnds([]byte(code))
	code = string(unix)
	p.listings += len(code)
	if p.listings > listingLimit || !utf8.ValidString(code) || slices.ContainsFunc(strings.Split(code, "\n"), tooLong) {
		lexer = nil
	}
	var tokens string
	var err error
	if lexer != nil {
		tokens, err = highlighted.get(lexer, code)
	}
	if lexer == nil || err != nil {
		p.escape(code)
	} else {
		p.w.WriteString(tokens)
	}
	return err
}

func tooLong(line string) bool { return len(line) > lineLimit }

// printListing writes a fenced block that is none of ours, or an indented one.
func printListing(p *printer, n ast.Node) {
	var language string
	if f, ok := n.(*ast.FencedCodeBlock); ok {
		language = unescape(f.Language(p.source))
	}
	lexer := lexerOf(language)
	name := ""
	if lexer != nil {
		name = lexer.Config().Name
	}
	var code strings.Builder
	for i := range n.Lines().Len() {
		line := n.Lines().At(i)
		code.Write(line.Value(p.source))
	}
	p.openBox(p.words.Code, name)
	if lexer != nil && lexer == lexerOf("markdown") {
		p.written(code.String())
	} else if err := p.highlight(lexer, code.String()); err != nil && p.err == nil {
		p.err = err
	}
	p.w.WriteString("</div>\n")
}
