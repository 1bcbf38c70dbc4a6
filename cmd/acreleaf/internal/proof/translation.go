package proof

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// Translation compares a page in another language with its original; nil where none is known.
func Translation(p, original *Page, s *Site, r Rules) message.List {
	t := translation{page: p, original: original, rules: r}
	switch {
	case original != nil:
		t.check()
	case page.Original(p.Name, p.Metadata) == "": // or the site says what is wrong
		t.alone(s.Config.Languages[0])
	}
	return t.messages
}

// A translation is one page, compared with its original.
type translation struct {
	page, original *Page
	rules          Rules
	toWrite        *bool // whether a part is still to be written; nil until something lacks
	messages       message.List
}

func (t *translation) fault(at message.Span, id, text, note string) {
	t.messages = append(t.messages, message.Message{ID: id, Source: t.page.Source, Span: at, Text: text, Note: note})
}

// lacks advises on what the original has and the translation does not. A translation that still has parts to write has
// one message for all of them.
func (t *translation) lacks(text, note string) {
	if t.rules.Advice && !t.unfinished() {
		t.messages = append(t.messages, message.Message{Level: message.Advice, ID: "translation-lacks",
			Source: t.page.Source, Span: t.page.Metadata.Places.Title, Text: text, Note: note})
	}
}

// unfinished says whether a part of the translation is still to be written.
func (t *translation) unfinished() bool {
	if t.toWrite == nil {
		m := t.page.Metadata
		found := page.Unwritten(m.Title) || page.Unwritten(m.Summary) || page.Unwritten(m.Crop)
		for _, can := range m.Lesson.Outcomes {
			found = found || page.Unwritten(can.Text)
		}
		for _, change := range m.Changes {
			found = found || page.Unwritten(change.Text)
		}
		t.page.Document.Prose(func(p *markdown.Prose) { found = found || page.Unwritten(p.Text) })
		t.toWrite = &found
	}
	return *t.toWrite
}

// at is a place of the original, as a message tells it.
func (t *translation) at(offset int) string {
	c := textCheck{page: t.original}
	return fmt.Sprintf("%s:%d", t.original.Source.Name, c.page.Source.Line(offset))
}

// alone advises on a page in another language that names no original. It may be meant for the readers of that language
// only.
func (t *translation) alone(language string) {
	if !t.rules.Advice || t.page.Address.Kind == kind.Home { // the site says what is wrong with a home page
		return
	}
	t.messages = append(t.messages, message.Message{Level: message.Advice, ID: "translation-alone",
		Source: t.page.Source, Span: t.page.Metadata.Places.Title,
		Text: fmt.Sprintf("this page names no original in the site's main language (%s)", language),
		Note: "if it is the translation of another page, name the file of that page in the metadata, as in " +
			"\"translates: soil.md\"; a page for readers of one language can stay as it is"})
}

func (t *translation) check() {
	t.dates()
	t.changes()
	t.worksheets()
	t.pictures()
	t.tied()
	t.times()
	if theirs, ours := len(t.original.Document.Headings), len(t.page.Document.Headings); ours < theirs {
		t.lacks(fmt.Sprintf("the original has %d headings, and this translation %d", theirs, ours),
			"see which part of "+t.original.Source.Name+" is missing here")
	}
}

// dates sees that a translation was looked through after its original.
func (t *translation) dates() {
	theirs, ours := t.original.Metadata.Reviewed, t.page.Metadata.Reviewed
	if ours.IsZero() || !ours.Before(theirs) {
		return
	}
	t.fault(t.page.Metadata.Places.Reviewed, "translation-old",
		fmt.Sprintf("this translation was reviewed on %s, and its original later, on %s (%s)", day(ours), day(theirs),
			t.at(t.original.Metadata.Places.Reviewed.Start)),
		"compare the two, correct this one, and write the day on which you did: reviewed: "+day(theirs)+" or later")
}
