package page

import (
	"fmt"
	"slices"
	"time"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

// Metadata is what the lines between the two "---" say about a page. Texts are single lines of plain text, empty when
// left out.
type Metadata struct {
	Title, Summary string         // always there when no message is a fault
	Language       string         // a code such as "es"; empty when the page does not say
	Translates     config.Value   // the file of the page that it translates, in the same folder; empty for none
	Reviewed       time.Time      // a day at midnight UTC; the zero time when the page does not say
	ReviewEvery    Interval       // zero when the page does not say
	Changes        []Change       // what changed and when, as the page has it: the newest first
	Crop           string         // "young walnuts"
	Season         string         // "before bloom"
	Order          float64        // place in the season
	Ordered        bool           // whether the page has an order
	Glance         []config.Value // figures such as "soil.nitrogen" for the line at the top, with their places
	Questions      []Question     // of a home page: what people come with, and the page that answers it
	Terms          []Terms        // words of the index that lead to the page
	Lesson         Lesson
	Places         Places
	Faulty         bool // something in it could not be read, so what is missing may be there
}

// Terms are words of the index, and the part of the page that they lead to: the id of a heading, or of a worksheet.
// The part is empty for the whole page.
type Terms struct {
	Part  config.Value
	Words []config.Value
}

// A Lesson is what a page of a course says of itself.
type Lesson struct {
	Outcomes []config.Value // what a learner can do afterwards
	Minutes  int            // that it takes; 0 when it does not say
	After    []config.Value // the files of the pages that come before it, as a link has them: "../../guides/soil.md"
	Span     message.Span   // of the first of these; empty when there is none
}

// A Question is one that people come with, and the page that answers it.
type Question struct {
	Page config.Value // the page's file, as a link has it: "guides/plan.md"
	Text string
}

// Places says where values stand, for messages by those who compare them with other files. A value that was left out
// has the place of the opening line.
type Places struct{ Title, Summary, Language, Reviewed, Changes, Crop, Season, Order message.Span }

// Due is the day by which a page must be looked through again, and false when the page does not say.
func (m Metadata) Due() (time.Time, bool) {
	if m.Reviewed.IsZero() || m.ReviewEvery == (Interval{}) {
		return time.Time{}, false
	}
	return m.ReviewEvery.After(m.Reviewed), true
}

var keys = []string{"title", "summary", "language", "translates", "reviewed", "review-every", "changes", "crop",
	"order", "season", "glance", "questions", "terms", "outcomes", "minutes", "after"}

// Keys lists the keys of a page's metadata.
func Keys() []string { return slices.Clone(keys) }

func readMetadata(src *message.Source, opening, yaml message.Span) (Metadata, message.List) {
	t := config.ReadTable(src, yaml, "the metadata of a page", keys)
	t.PlaceMissing(opening)
	m := Metadata{
		Title:       t.Need("title", `add a line such as "title: Nitrogen already in your soil"`),
		Summary:     t.Need("summary", `add a line such as "summary: Turn a soil report into pounds an acre."`),
		Language:    t.Text("language"),
		Translates:  config.Value{Text: t.Text("translates"), Span: t.Span("translates")},
		Reviewed:    t.Date("reviewed"),
		ReviewEvery: interval(t, "review-every"),
		Crop:        t.Text("crop"),
		Season:      t.Text("season"),
		Glance:      t.List("glance"),
		Places: Places{Title: t.Span("title"), Summary: t.Span("summary"), Language: t.Span("language"),
			Reviewed: t.Span("reviewed"), Changes: t.KeySpan("changes"),
			Crop: t.Span("crop"), Season: t.Span("season"), Order: t.Span("order")},
	}
	m.Order, m.Ordered = t.Number("order")
	if asked := t.Table("questions", "the questions of a page", nil); asked != nil {
		for _, file := range asked.Keys() {
			m.Questions = append(m.Questions, Question{Page: config.Value{Text: file, Span: asked.KeySpan(file)},
				Text: asked.Need(file, "type the question after the colon, as in \"guides/soil.md: What is in my soil?\"")})
		}
	}
	m.Changes = readChanges(t)
	m.Terms = readTerms(t)
	m.Lesson = readLesson(t)
	if m.Language != "" && !config.IsLanguage(m.Language) {
		t.Fault("language", "language-code", fmt.Sprintf("%q is not a language code", m.Language),
			`type two small letters, as in "language: en"`)
		m.Language = ""
	}
	return m, t.Messages()
}
