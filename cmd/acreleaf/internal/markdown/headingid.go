package markdown

import (
	"slices"
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/construct"
)

// What the ids of a page's frame are, and what those of its leader's page begin with.
var (
	partIDs      = []string{"course", "module", "state", "text", "units"}
	partPrefixes = []string{"tally-", "wall-"}
)

// headingIDs gives the headings of one page ids that nothing else on the page has.
type headingIDs struct {
	taken    map[string]*Heading
	last     map[string]int // the number given last to each text that comes more than once
	prefixes []string       // of the ids of other parts, such as those inside worksheets
}

func newHeadingIDs(d *Document) *headingIDs {
	ids := &headingIDs{taken: make(map[string]*Heading, len(d.Headings)), last: map[string]int{},
		prefixes: slices.Clone(partPrefixes)}
	for _, word := range construct.Words() {
		ids.prefixes = append(ids.prefixes, word+"-")
	}
	for _, b := range d.Blocks {
		if b.Name != "" {
			ids.prefixes = append(ids.prefixes, b.Name+"-")
		}
	}
	return ids
}

// reserved tells whether another part of the page has, or could have, an id.
func (ids *headingIDs) reserved(id string) bool {
	return slices.Contains(partIDs, id) ||
		slices.ContainsFunc(ids.prefixes, func(prefix string) bool { return strings.HasPrefix(id, prefix) })
}

// finishHeadings gives every heading its text and an id. The ids that authors wrote come first, so that a new heading
// never takes one of them away.
func (r *reading) finishHeadings() {
	headings := r.doc.Headings
	byPosition(headings, func(h *Heading) int { return h.Span.Start })
	ids := newHeadingIDs(r.doc)
	for _, h := range headings {
		h.Text = plainText(r.doc.text, h.node)
		if strings.TrimSpace(h.Text) == "" {
			r.fault("heading-empty", h.Span, "this heading has no text", "write its text, or take the line out")
		}
		if h.ID != "" {
			r.takeExplicit(ids, h)
		}
	}
	for _, h := range headings {
		if h.ID == "" {
			h.ID = ids.free(h.Text)
			ids.taken[h.ID] = h
		}
	}
}

func (r *reading) takeExplicit(ids *headingIDs, h *Heading) {
	first := ids.taken[h.ID]
	switch {
	case first != nil:
		r.fault("heading-id-twice", h.explicit, "the id “"+h.ID+"” is used twice on this page",
			"change one of them; the first is on line "+strconv.Itoa(r.source.Line(first.explicit.Start)))
	case ids.reserved(h.ID):
		r.fault("heading-id", h.explicit, "another part of this page has the id “"+h.ID+"”, or could have it",
			"choose another, which does not start with the name of a worksheet")
	default:
		ids.taken[h.ID] = h
		return
	}
	h.ID = ""
}

// free makes an id of a heading's text. The same text gives the same id in every press. An underscore keeps it apart
// from the ids of the page's other parts.
func (ids *headingIDs) free(title string) string {
	base := foldID(title)
	if base == "" {
		base = "part"
	}
	if ids.reserved(base) {
		base += "_part"
	}
	id := base
	for n := max(1, ids.last[base]); ids.taken[id] != nil; id = base + "-" + strconv.Itoa(n) {
		n++
		ids.last[base] = n
	}
	return id
}
