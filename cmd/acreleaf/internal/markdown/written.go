package markdown

import (
	"strings"

	"github.com/alecthomas/chroma/v2"

	"acreleaf/cmd/acreleaf/internal/construct"
)

// written writes a listing of Markdown, with each fenced block in it in that block's own language. chroma's Markdown
// knows no words after a fence but the names of languages, and would colour our blocks as one long text.
func (p *printer) written(text string) {
	p.w.WriteString(`<pre class="code"><code>`)
	defer p.w.WriteString("</code></pre>\n")
	outside, inside := lexerOf("markdown"), chroma.Lexer(nil)
	fence, piece := "", ""
	flush := func(lexer chroma.Lexer) {
		if err := p.tokens(lexer, piece); err != nil && p.err == nil {
			p.err = err
		}
		piece = ""
	}
	piece, text = cutMetadata(text)
	flush(lexerOf("yaml"))
	for line := range strings.Lines(text) {
		marks, words := cutMarks(line)
		switch {
		case fence == "" && len(marks) >= 3:
			flush(outside)
			fence, inside = marks, lexerInside(words)
			p.escape(line)
		case fence != "" && strings.HasPrefix(marks, fence) && words == "":
			flush(inside)
			fence = ""
			p.escape(line)
		default:
			piece += line
		}
	}
	if fence != "" {
		flush(inside)
		return
	}
	flush(outside)
}

// cutMetadata cuts the metadata of a page, with the lines of hyphens around it, from the start of its text.
func cutMetadata(text string) (metadata, rest string) {
	body, begins := strings.CutPrefix(text, "---\n")
	if _, after, ends := strings.Cut(body, "\n---\n"); begins && ends {
		return text[:len(text)-len(after)], after
	}
	return "", text
}

// cutMarks gives the fence that a line begins with, empty when it begins with none, and the words after it.
func cutMarks(line string) (marks, words string) {
	line = strings.TrimSpace(line)
	words = strings.TrimLeft(line, "`")
	if words == line {
		words = strings.TrimLeft(line, "~")
	}
	return line[:len(line)-len(words)], strings.TrimSpace(words)
}

// lexerInside is the lexer for a block with these words after its fence.
func lexerInside(words string) chroma.Lexer {
	first, _, _ := strings.Cut(words, " ")
	if _, ours := construct.Of(first); ours {
		return lexerOf("yaml")
	}
	return lexerOf(first)
}
