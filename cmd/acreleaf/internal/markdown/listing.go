package markdown

import (
	"bytes"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/alecthomas/chroma/v2"
	"github.com/alecthomas/chroma/v2/lexers"
	"github.com/yuin/goldmark/ast"
)

// Highlight writes a listing as <pre class="code"><code>, its tokens in spans with the classes k, s, c, n, m and o;
// see Classes. An unknown language, or none, gives plain text. On an error, too, the listing is written as plain text.
func Highlight(w *bytes.Buffer, language, code string) error {
	p := printer{w: w}
	return p.highlight(lexerOf(language), code)
}

// languages are those that listings are highlighted in, by chroma's names. chroma has hundreds; some of their lexers
// take minutes over a short text, so that only lexers that the tests know to be quick are used.
var languages = []string{"bash", "css", "diff", "go", "html", "javascript", "json", "markdown", "python", "r", "toml",
	"typescript", "xml", "yaml"}

// lexersByName holds the lexers of the languages by every word that authors use for them: name, alias, or ending of a
// file.
var lexersByName = sync.OnceValue(func() map[string]chroma.Lexer {
	m := map[string]chroma.Lexer{}
	for _, language := range languages {
		lexer := lexers.Get(language)
		config := lexer.Config()
		for _, name := range slices.Concat(config.Aliases, []string{config.Name}) {
			m[strings.ToLower(name)] = lexer
		}
		for _, pattern := range config.Filenames {
			if ending, ok := strings.CutPrefix(pattern, "*."); ok {
				m[ending] = lexer
			}
		}
	}
	return m
})

// lexerOf finds the lexer of a language; nil when there is none.
func lexerOf(language string) chroma.Lexer { return lexersByName()[strings.ToLower(language)] }

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
