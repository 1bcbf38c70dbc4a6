package book

import (
	"fmt"
	"path"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
)

// checkQuestions sees that each question of a home page leads to a page.
func (p *press) checkQuestions() {
	for _, d := range p.pages {
		if len(d.metadata.Questions) == 0 || d.faulty {
			continue
		}
		if d.address.Kind != kind.Home {
			p.say(message.List{d.fault(d.metadata.Questions[0].Page.Span, "questions-elsewhere",
				"questions can only be on the home page",
				"move them to "+p.options.called(homeFileName)+", or take them out")})
			continue
		}
		for _, q := range d.metadata.Questions {
			if name := path.Clean(q.Page.Text); p.index[name] == nil {
				p.say(message.List{d.fault(q.Page.Span, "questions-page",
					fmt.Sprintf("there is no page %s", p.options.called(name)),
					p.nearestName(name))})
			}
		}
	}
}

// nearestName is a note with the page that may have been meant, by its whole name.
func (p *press) nearestName(name string) string {
	names := make([]string, 0, len(p.pages))
	for _, d := range p.pages {
		names = append(names, d.name)
	}
	if near, ok := message.Nearest(name, names); ok {
		return "write " + near + " in place of it"
	}
	return "write the way to a page from here, such as " + p.pages[len(p.pages)-1].name
}
