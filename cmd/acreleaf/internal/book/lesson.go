package book

import (
	"fmt"
	"path"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// A Place is where a lesson is in its course. It is empty for any other page: to count them all would have each made
// again when one is added.
type Place struct {
	Number, Of int
	Course     Turn // the page of its course; empty where nobody wrote one
}

// findCourses ties each lesson to the page of its course.
func (b *library) findCourses() {
	courses := map[page.Address]*draft{}
	for _, d := range b.pages {
		if d.address.Kind == kind.Course {
			courses[d.address] = d
		}
	}
	for _, d := range b.pages {
		if d.address.Kind == kind.Lesson {
			d.course = courses[page.Address{Kind: kind.Course, Language: d.address.Language, Name: d.address.Course()}]
		}
	}
}

func placeOf(d *draft) Place {
	if d.address.Kind != kind.Lesson {
		return Place{}
	}
	return Place{d.number, d.of, turnOf(d.course)}
}

// after are the pages that come before a lesson, in its language where they are translated. One that is not there is a
// fault (checkLessons).
func (b *library) after(d *draft) []Turn {
	var list []Turn
	for _, file := range d.metadata.Lesson.After {
		before := b.index[path.Join(path.Dir(d.name), file.Text)]
		if before == nil {
			continue
		}
		for _, twin := range b.inLanguages(before) {
			if twin.address.Language == d.address.Language {
				before = twin
			}
		}
		list = append(list, turnOf(before))
	}
	return list
}

// checkLessons sees that what a page says of a lesson is of one, and that what comes before it is there.
func (p *press) checkLessons() {
	for _, d := range p.pages {
		l := d.metadata.Lesson
		if d.faulty || l.Span == (message.Span{}) {
			continue
		}
		if d.address.Kind != kind.Lesson {
			p.say(message.List{d.fault(l.Span, "lesson-elsewhere",
				"outcomes, minutes and what comes before belong to a lesson, and this page is not one",
				"take the line out, or move the page into the folder of a course")})
			continue
		}
		for _, file := range l.After {
			name := path.Join(path.Dir(d.name), file.Text)
			before := p.index[name]
			switch {
			case before == nil:
				p.say(message.List{d.fault(file.Span, "after-page", fmt.Sprintf("there is no page %s",
					p.options.called(name)), p.nearestBefore(d, name))})
			case before.address.Kind == kind.Lesson && before.address.Course() == d.address.Course() &&
				before.rank >= d.rank:
				p.say(message.List{d.fault(file.Span, "after-later",
					fmt.Sprintf("%s does not come before this lesson in the course", before.source.Name),
					"give it a smaller order than this one, or take it out")})
			}
		}
	}
}

// nearestBefore is a note with the way to the page that may have been meant.
func (p *press) nearestBefore(d *draft, name string) string {
	var names []string
	for _, other := range p.pages {
		if path.Base(other.name) == path.Base(name) {
			return "write " + wayBetween(d.name, other.name)
		}
		names = append(names, other.name)
	}
	if near, ok := message.Nearest(name, names); ok {
		return "write " + wayBetween(d.name, near)
	}
	return "write the way from this file to a page, such as ../../guides/soil.md"
}
