package markdown

import (
	"bytes"
	"strings"

	"github.com/alecthomas/chroma/v2"
	"github.com/alecthomas/chroma/v2/lexers"
	"github.com/yuin/goldmark/ast"
)

// Highlight writes a listing as <pre class="code"><code>, its tokens in spans with the classes of tokenClasses. An
// unknown language, or none, gives plain text.
func Highlight(w *bytes.Buffer, language, code string) error {
	p := printer{w: w}
	return p.highlight(lexerOf(language), code)
}

func lexerOf(language string) chroma.Lexer {
	if language == "" {
		return nil
	}
	return lexers.Get(language)
}

func (p *printer) highlight(lexer chroma.Lexer, code string) error {
	p.w.WriteString(`<pre class="code"><code>`)
	defer p.w.WriteString("</code></pre>\n")
	if lexer == nil {
		p.escape([]byte(code))
		return nil
	}
	tokens, err := lexer.Tokenise(nil, code)
	if err != nil {
		return err
	}
	for t := tokens(); t != chroma.EOF; t = tokens() {
		class := tokenClass(t.Type)
		if class == "" || strings.TrimSpace(t.Value) == "" {
			p.escape([]byte(t.Value))
			continue
		}
		p.w.WriteString(`<span class="`)
		p.w.WriteString(class)
		p.w.WriteString(`">`)
		p.escape([]byte(t.Value))
		p.w.WriteString("</span>")
	}
	return nil
}

// tokenClass maps the many types of chroma's tokens to the few classes that the style sheet has.
func tokenClass(t chroma.TokenType) string {
	switch {
	case t.InCategory(chroma.Keyword):
		return "k"
	case t.InSubCategory(chroma.LiteralNumber):
		return "m"
	case t.InCategory(chroma.Literal):
		return "s"
	case t.InCategory(chroma.Comment):
		return "c"
	case t.InCategory(chroma.Operator):
		return "o"
	case t == chroma.NameFunction, t == chroma.NameClass, t == chroma.NameTag, t == chroma.NameAttribute:
		return "n"
	}
	return ""
}

// listing writes a fenced block that is none of ours.
func (p *printer) listing(n ast.Node) {
	var language string
	if f, ok := n.(interface{ Language([]byte) []byte }); ok {
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
	if err := p.highlight(lexer, strings.ReplaceAll(code.String(), "\r\n", "\n")); err != nil && p.err == nil {
		p.err = err
	}
	p.w.WriteString("</div>\n")
}

func printCodeBlock(p *printer, n ast.Node) { p.listing(n) }
