package draft

import (
	"bytes"
	"cmp"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"
	"unicode"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/yamltext"
)

// toTranslate is in front of every text of a twin.
func (d *drafter) toTranslate() string { return page.MarksOf(d.code).Translate + " – " }

// An edit is a text that takes the place of a part of the original.
type edit struct {
	at   message.Span
	text string
}

// original is the name of the page that the drafted one is the twin of. A name alone is one of the same folder.
func (d *drafter) original() string {
	name := d.inside(d.Translates)
	if !strings.Contains(name, "/") {
		return path.Join(path.Dir(d.name), name)
	}
	return name
}

// placeTwin sees that there is an original, in the folder of its twin.
func (d *drafter) placeTwin() error {
	original := d.original()
	switch _, err := fs.Stat(d.Content, original); {
	case path.Dir(original) != path.Dir(d.name):
		return &Error{Text: "a translation is in the folder of its original",
			Note: "name it " + path.Join(path.Dir(original), path.Base(d.name))}
	case err != nil || original == d.name:
		return &Error{Text: fmt.Sprintf("there is no page %s to translate", d.called(original)),
			Note: "write a page that is there after --translates="}
	}
	return nil
}

// twin makes the page in another language of what its original says: worksheets and figures as they are, and each text
// in its place, to be written over.
func (d *drafter) twin() (string, error) {
	if len(d.With) > 0 {
		return "", &Error{Note: "leave --with out", Text: fmt.Sprintf("%s is a translation, and has the worksheets of %s",
			d.called(d.name), d.called(d.original()))}
	}
	src, faults := page.Load(d.Content, d.original())
	if message.HasFault(faults) {
		return "", d.faulty()
	}
	// One kind of line end, and no byte order mark: the places below count in this text.
	src.Text = bytes.TrimPrefix(bytes.ReplaceAll(src.Text, []byte("\r\n"), []byte("\n")), []byte(message.ByteOrderMark))
	metadata, start, said := page.Split(src)
	doc, more := markdown.Parse(src, start)
	if message.HasFault(said) || message.HasFault(more) {
		return "", d.faulty()
	}
	edits := slices.Concat(d.head(src, start, metadata), d.texts(doc), anchors(doc), definitions(doc), d.links(doc))
	slices.SortStableFunc(edits, func(a, b edit) int { return cmp.Compare(a.at.Start, b.at.Start) })
	var b strings.Builder
	at := 0
	for _, e := range edits {
		if e.at.Start < at {
			continue // it lies in what is left out
		}
		b.Write(src.Text[at:e.at.Start])
		b.WriteString(e.text)
		at = e.at.End
	}
	b.Write(src.Text[at:])
	return b.String(), nil
}

func (d *drafter) faulty() error {
	return &Error{Text: d.called(d.original()) + " has an error, so it cannot be copied into a translation",
		Note: "type acreleaf proof to see what it is, and fix it first"}
}

// head makes the edits of the metadata. A review is of this page and not of the other, so its day is left out.
func (d *drafter) head(src *message.Source, start int, m page.Metadata) []edit {
	inside := message.Span{Start: nextLine(src.Text, 0), End: bytes.LastIndex(src.Text[:start], []byte("---"))}
	root, _, _ := yamltext.Cut(src, inside).Parse() // page.Split has read it
	texts := map[string]string{"title": m.Title, "summary": m.Summary, "crop": m.Crop, "season": m.Season}
	toTranslate := d.toTranslate()
	var edits []edit
	language := false
	for i, e := range root.Entries {
		key, lines := e.Key.Value, root.Lines(i)
		text, isText := texts[key]
		switch {
		case isText:
			edits = append(edits, edit{lines, fmt.Sprintf("%s: %q\n", key, toTranslate+text)})
		case key == "questions":
			questions := key + ":\n"
			for _, q := range m.Questions {
				questions += fmt.Sprintf("  %s: %q\n", q.Page.Text, toTranslate+q.Text)
			}
			edits = append(edits, edit{lines, questions})
		case key == "changes":
			changes := key + ":\n"
			for _, c := range m.Changes {
				changes += fmt.Sprintf("  %s: %q\n", c.Day.Format(time.DateOnly), toTranslate+c.Text)
			}
			edits = append(edits, edit{lines, changes})
		case key == "outcomes":
			outcomes := key + ":\n"
			for _, can := range m.Lesson.Outcomes {
				outcomes += fmt.Sprintf("  - %q\n", toTranslate+can.Text)
			}
			edits = append(edits, edit{lines, outcomes})
		case key == "terms": // each language has words of its own
			edits = append(edits, edit{lines, ""})
		case key == "language":
			edits = append(edits, edit{lines, d.descent()})
			language = true
		case key == "reviewed":
			edits = append(edits, edit{lines, fmt.Sprintf("# "+sentencesOf(d.code).compared+"\n# reviewed: %s\n",
				path.Base(d.original()), d.Today.Format(time.DateOnly))})
		}
	}
	if !language {
		first := edit{message.Span{Start: inside.Start, End: inside.Start}, d.descent()}
		edits = slices.Insert(edits, 0, first) // before the edit of the line that begins there
	}
	return edits
}

// descent is the lines that say which language the twin is in, and what it translates.
func (d *drafter) descent() string {
	return fmt.Sprintf("language: %s\ntranslates: %s\n", d.code, path.Base(d.original()))
}

// texts marks each paragraph, heading and cell, each description of a picture, and the texts of blocks.
func (d *drafter) texts(doc *markdown.Document) []edit {
	var edits []edit
	toTranslate := d.toTranslate()
	doc.Prose(func(p *markdown.Prose) {
		aside := p.Aside != "" && p.Aside != markdown.Description
		if aside || strings.IndexFunc(p.Text, unicode.IsLetter) < 0 || page.Unwritten(p.Text) {
			return
		}
		at := p.Span(0, len(p.Text)).Start
		for at > 0 && doc.Source.Text[at-1] == '`' {
			at-- // not into the code that the text begins with
		}
		edits = append(edits, edit{message.Span{Start: at, End: at}, toTranslate})
	})
	for _, b := range doc.Blocks {
		for _, e := range b.Entries {
			at := e.ValueSpan.Start
			text := doc.Source.Text[at:]
			if !b.Construct.HasText(e.Key) || page.Unwritten(e.Value) || bytes.HasPrefix(text, []byte("|")) ||
				bytes.HasPrefix(text, []byte(">")) {
				continue // a text in lines of its own begins below
			}
			if text[0] == '"' || text[0] == '\'' {
				at++
			}
			edits = append(edits, edit{message.Span{Start: at, End: at}, toTranslate})
		}
	}
	return edits
}

// anchors keeps the ids of the headings that the page itself links to, which would change with the words.
func anchors(doc *markdown.Document) []edit {
	wanted := map[string]bool{}
	for _, l := range doc.Links {
		if id, here := strings.CutPrefix(l.Destination, "#"); here {
			wanted[id] = true
		}
	}
	var edits []edit
	for _, h := range doc.Headings {
		line, _, _ := bytes.Cut(doc.Source.Text[h.Span.End:], []byte("\n"))
		if wanted[h.ID] && !bytes.Contains(line, []byte("{#")) {
			edits = append(edits, edit{message.Span{Start: h.Span.End, End: h.Span.End}, " {#" + h.ID + "}"})
		}
	}
	return edits
}

// definitions leaves out the calculations that the original defines: the twin uses those.
func definitions(doc *markdown.Document) []edit {
	text := doc.Source.Text
	var edits []edit
	for _, b := range doc.Calculations {
		start := bytes.LastIndexByte(text[:b.Span.Start], '\n') + 1
		end := nextLine(text, nextLine(text, b.Body.End-1)) // past the last line of the body, and the fence
		if bytes.HasPrefix(text[end:], []byte("\n")) {
			end++ // one empty line parts what stood around it
		}
		edits = append(edits, edit{at: message.Span{Start: start, End: end}})
	}
	return edits
}

// nextLine is the place where the line after the one at hand begins.
func nextLine(text []byte, at int) int {
	if end := bytes.IndexByte(text[at:], '\n'); end >= 0 {
		return at + end + 1
	}
	return len(text)
}

// links lets the links to pages that have a twin lead to it. A part of a page has another name there.
func (d *drafter) links(doc *markdown.Document) []edit {
	twins := map[string]string{} // by original
	d.pages(func(name string, a page.Address, m page.Metadata) {
		if a.Language == d.code {
			twins[page.Original(name, m)] = path.Base(name)
		}
	})
	var edits []edit
	for _, l := range doc.Links {
		folder, file := path.Split(l.Destination)
		twin := twins[path.Join(path.Dir(d.name), l.Destination)]
		written := string(doc.Source.Text[l.DestinationSpan.Start:l.DestinationSpan.End])
		if path.Ext(file) == ".md" && !l.Image && twin != "" && written == l.Destination {
			edits = append(edits, edit{l.DestinationSpan, folder + twin})
		}
	}
	return edits
}
