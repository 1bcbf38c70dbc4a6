package site

import (
	"cmp"
	"path"
	"strings"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/wire"
)

// courseView is the lessons of the course that is at an address, be its page written or made.
func (c *common) courseView(at page.Address) *render.Course {
	v := &render.Course{}
	for _, o := range c.book.Outlines {
		if o.Address.Kind != kind.Lesson || o.Address.Language != at.Language || o.Address.Course() != at.Name {
			continue
		}
		v.Lessons = append(v.Lessons, render.CourseLesson{Entry: entry(at, o), Minutes: o.Minutes, Can: o.Can})
		v.Minutes += o.Minutes
		v.Syllabus.Lessons = append(v.Syllabus.Lessons, checksOf(o))
	}
	for _, course := range c.book.Courses() {
		if course.Address == at.String() {
			v.Syllabus.Code = course.Letters()
		}
	}
	return v
}

// checksOf is what the script knows of a lesson.
func checksOf(o *book.Outline) wire.CourseLesson {
	l := wire.CourseLesson{Name: path.Base(o.Address.Name), Exercises: []wire.Check{}}
	for _, e := range o.Checks {
		l.Exercises = append(l.Exercises, wire.Check{Name: e.Name, Title: e.Title, Asks: e.Asks, Cards: e.Cards})
	}
	return l
}

// courses lists the courses of a language: by the page that somebody wrote of each, or by its folder.
func (c *common) courses(from page.Address, words *render.Words) []render.Entry {
	var list []render.Entry
	known := map[string]bool{}
	for _, o := range c.book.Outlines { // the pages of courses come before all lessons
		folder := o.Address.Course()
		if folder == "" || o.Address.Language != from.Language || known[folder] {
			continue
		}
		known[folder] = true
		if o.Address.Kind == kind.Course {
			list = append(list, entry(from, o))
			continue
		}
		at := indexAddress(from.Language, folder)
		list = append(list, render.Entry{Title: folderTitle(folder, words.Set(kind.Lesson)),
			Summary: words.Set(kind.Lesson).About, Href: from.To(at)})
	}
	return list
}

// folderTitle is the title of the list of a folder, in which nobody wrote a page.
func folderTitle(folder string, words *render.SetWords) string {
	if _, below, deep := strings.Cut(folder, "/"); deep {
		return words.All + ": " + strings.ReplaceAll(below, "/", ", ")
	}
	return words.All
}

// upToCourse is the way from a lesson to the page of its course.
func upToCourse(p *book.Page) *render.Link {
	at := indexAddress(p.Address.Language, p.Address.Course()) // a written page has the same
	return &render.Link{Href: p.Address.To(at), Text: cmp.Or(p.Place.Course.Title, path.Base(at.Name))}
}

// lessonView is what a lesson says of itself; nil for any other page.
func lessonView(p *book.Page) *render.Lesson {
	if p.Address.Kind != kind.Lesson {
		return nil
	}
	v := &render.Lesson{Name: path.Base(p.Address.Name), Course: upToCourse(p).Href,
		Number: p.Place.Number, Of: p.Place.Of, Minutes: p.Metadata.Lesson.Minutes}
	for _, can := range p.Metadata.Lesson.Outcomes {
		v.Can = append(v.Can, can.Text)
	}
	for _, before := range p.After {
		v.After = append(v.After, *wayTo(p.Address, before))
	}
	return v
}
