package markdown

import (
	"bytes"
	"fmt"
	"strings"
	"sync"

	"github.com/alecthomas/chroma/v2"
)

// highlighted keeps what was highlighted. Lexing takes about a hundred times as long as the rest of a page of the same
// size, and the same few listings (the code behind an answer) are on most pages of a site.
var highlighted = listings{limit: 8 << 20}

// listings is a cache that several goroutines may use at once. It is emptied when it holds more bytes than its limit.
type listings struct {
	limit int
	mutex sync.RWMutex
	html  map[listing]string
	size  int
}

type listing struct{ language, code string }

func (l *listings) get(lexer chroma.Lexer, code string) (string, error) {
	key := listing{lexer.Config().Name, code}
	l.mutex.RLock()
	html, ok := l.html[key]
	l.mutex.RUnlock()
	if ok {
		return html, nil
	}
	html, err := lex(lexer, code)
	if err != nil {
		return "", err
	}
	l.mutex.Lock()
	defer l.mutex.Unlock()
	if l.html == nil || l.size > l.limit {
		l.html, l.size = map[listing]string{}, 0
	}
	l.html[key] = html
	l.size += len(html) + len(code)
	return html, nil
}

// lex writes the tokens of a listing. Neighbours of one class share a span.
func lex(lexer chroma.Lexer, code string) (html string, err error) {
	defer func() { // chroma's iterators panic on an error
		if r := recover(); r != nil {
			err = fmt.Errorf("highlight %s: %v", lexer.Config().Name, r)
		}
	}()
	next, err := lexer.Tokenise(nil, code)
	if err != nil {
		return "", fmt.Errorf("highlight %s: %w", lexer.Config().Name, err)
	}
	var w, text bytes.Buffer
	p := printer{w: &w}
	open, blank := "", ""
	for t := next(); t != chroma.EOF; t = next() {
		text.WriteString(t.Value)
		if strings.TrimSpace(t.Value) == "" { // it joins its neighbours when they are of one class
			blank += t.Value
			continue
		}
		if class := tokenClass(t.Type); class != open {
			p.closeSpan(open)
			w.WriteString(blank)
			p.openSpan(class)
			open, blank = class, ""
		}
		w.WriteString(blank)
		blank = ""
		p.escape(t.Value)
	}
	p.closeSpan(open)
	w.WriteString(blank)
	if text.String() != code && text.String() != code+"\n" {
		return "", fmt.Errorf("highlight %s: the text would change", lexer.Config().Name)
	}
	return w.String(), nil
}

func (p *printer) openSpan(class string) {
	if class != "" {
		p.w.WriteString(`<span class="` + class + `">`)
	}
}

func (p *printer) closeSpan(class string) {
	if class != "" {
		p.w.WriteString("</span>")
	}
}
