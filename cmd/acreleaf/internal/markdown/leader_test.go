package markdown

import (
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Of every place of a page it is known whether it is in leader's notes, and of every block in them.
func TestForLeader(t *testing.T) {
	const notes = "````leader\nLet them grumble.\n\n```worksheet a\nb: 1\n```\n````\n"
	page := "Ours.\n\n" + strings.Repeat("Text.\n\n```worksheet c\nb: 1\n```\n\n"+notes+"\n", 3) + "Ours.\n"
	doc, messages := Parse(&message.Source{Name: "page.md", Text: []byte(page)}, 0)
	if len(doc.Leader) != 3 {
		t.Fatalf("leader's notes are at %v", doc.Leader)
	}
	for at := range page {
		in := false
		for _, span := range doc.Leader {
			in = in || span.Start <= at && at < span.End
		}
		if got := doc.ForLeader(message.Span{Start: at, End: at + 1}); got != in {
			t.Errorf("at %d, before %.10q: for the leader: %v", at, page[at:], got)
		}
	}
	misfit := 0
	for _, m := range messages {
		if m.ID == "leader-block" && doc.ForLeader(m.Span) {
			misfit++
		}
	}
	if misfit != 3 {
		t.Errorf("%d worksheets in leader's notes are reported, and there are 3: %v", misfit, messages)
	}
}
