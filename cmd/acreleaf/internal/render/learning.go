package render

import (
	"bytes"
	"encoding/json"

	"acreleaf/cmd/acreleaf/internal/kind"
)

// A learning is a page as catalogues and search engines for teaching material read it (schema.org, LearningResource).
type learning struct {
	Context  string       `json:"@context"`
	Type     string       `json:"@type"`
	Address  string       `json:"url,omitempty"`
	Name     string       `json:"name"`
	Summary  string       `json:"description,omitempty"`
	Language string       `json:"inLanguage"`
	Modified string       `json:"dateModified,omitempty"`
	Kind     string       `json:"learningResourceType"`
	Use      string       `json:"educationalUse"`
	Licence  string       `json:"license,omitempty"`
	Author   organization `json:"author"`
}

type organization struct {
	Type string `json:"@type"`
	Name string `json:"name"`
}

// uses are what the pages that growers learn from are for, by kind. They are for catalogues, and so not translated.
var uses = map[kind.Kind]string{kind.Guide: "reference", kind.Workshop: "group work", kind.Lesson: "self study"}

// learning writes what catalogues read of a page that somebody wrote for growers. It is data and runs nowhere, so the
// policy of the page need not allow it. The marks of HTML in its texts are escaped as JSON has it.
func (r *Renderer) learning(w *bytes.Buffer, g *Guide) {
	use := uses[g.Kind]
	if use == "" {
		return
	}
	l := learning{
		Context: "https://schema.org", Type: "LearningResource", Name: g.Page.Title, Summary: g.Page.Summary,
		Language: r.site.Language, Modified: g.Changed, Kind: g.Kind.String(), Use: use, Licence: r.site.Licence,
		Author: organization{"Organization", r.site.Office},
	}
	if r.site.Base != "" {
		l.Address = r.site.Base + g.Page.Address
	}
	data, err := json.Marshal(l)
	if err != nil {
		panic(err) // it is texts alone
	}
	w.WriteString(`<script type="application/ld+json">`)
	w.Write(data)
	w.WriteString("</script>\n")
}
