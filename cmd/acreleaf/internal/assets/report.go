package assets

import (
	"bytes"
	"io/fs"
	"strings"

	"github.com/evanw/esbuild/pkg/api"

	"acreleaf/cmd/acreleaf/internal/message"
)

// messageID marks every message of this package: what can be wrong with a theme is for esbuild to say.
const messageID = "theme-build"

// messages says what esbuild found, in our form.
func messages(files fs.FS, level message.Level, found []api.Message) message.List {
	var list message.List
	for _, m := range found {
		told := message.Message{Level: level, ID: messageID, Text: m.Text, Note: notes(m)}
		if m.Location != nil {
			told.Source, told.Span = place(files, m.Location)
		}
		list = append(list, told)
	}
	return list
}

func notes(m api.Message) string {
	var texts []string
	for _, note := range m.Notes {
		texts = append(texts, note.Text)
	}
	if m.Location != nil && m.Location.Suggestion != "" {
		texts = append(texts, "write "+m.Location.Suggestion)
	}
	return strings.Join(texts, "\n")
}

// place turns a line (from 1), a column and a length in bytes into a span of the file's text.
func place(files fs.FS, l *api.Location) (*message.Source, message.Span) {
	name := strings.TrimPrefix(l.File, namespace+":")
	text, err := fs.ReadFile(files, name)
	if err != nil {
		return nil, message.Span{}
	}
	start := l.Column
	for line, rest := 1, text; line < l.Line; line++ {
		end := bytes.IndexByte(rest, '\n') + 1
		start += end
		rest = rest[end:]
	}
	return &message.Source{Name: namespace + "/" + name, Text: text}, message.Span{Start: start, End: start + l.Length}
}
