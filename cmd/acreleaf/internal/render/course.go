package render

import (
	"bytes"
	"strconv"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// CourseWords is for courses and their lessons.
type CourseWords struct {
	Place    Sentence `yaml:"place" blanks:"number,count"`
	Minutes  Sentence `yaml:"minutes" blanks:"count"`
	Outcomes string   `yaml:"outcomes"`
	After    string   `yaml:"after"`
	Lessons  string   `yaml:"lessons"`
	Total    Sentence `yaml:"total" blanks:"lessons,minutes"`
	Start    Sentence `yaml:"start" blanks:"lesson"`
}

// A Course is the lessons of a course, in order.
type Course struct {
	Lessons  []CourseLesson
	Minutes  int // of all of them
	Syllabus wire.Syllabus
}

// A CourseLesson is a lesson as its course lists it.
type CourseLesson struct {
	Entry
	Minutes int // 0 when it does not say
	Can     []string
}

// A Lesson is what a lesson says at its top of itself.
type Lesson struct {
	Name       string // the last part of its address
	Course     string // way to the page of its course
	Number, Of int    // its place in the course
	Minutes    int    // 0 when it does not say
	Can        []string
	After      []Link // the pages that come before it
}

// course writes where to start, and the lessons in order, each with what a learner can do after it.
func (r *Renderer) course(w *bytes.Buffer, c *Course) {
	if c == nil || len(c.Lessons) == 0 {
		return
	}
	words := &r.words.Course
	w.WriteString("<section class=\"lessons\" aria-labelledby=\"course_lessons\">\n<h2 id=\"course_lessons\">")
	text(w, words.Lessons)
	w.WriteString("</h2>\n<p>")
	words.Total.write(w, func(blank string) {
		count := len(c.Lessons)
		if blank == "minutes" {
			count = c.Minutes
		}
		text(w, strconv.Itoa(count))
	})
	w.WriteString("</p>\n<p class=\"start\">")
	words.Start.write(w, func(string) { link(w, "", c.Lessons[0].Href, c.Lessons[0].Title) })
	w.WriteString("</p>\n")
	r.again(w)
	w.WriteString("<ol>\n")
	for i := range c.Lessons {
		l := &c.Lessons[i]
		w.WriteString("<li>")
		link(w, "", l.Href, l.Title)
		r.minutes(w, "small", l.Minutes)
		w.WriteByte('\n')
		element(w, "p", "", l.Summary)
		r.outcomes(w, l.Can)
		w.WriteString("</li>\n")
	}
	w.WriteString("</ol>\n</section>\n")
}

// minutes writes how long a lesson takes, if it says so.
func (r *Renderer) minutes(w *bytes.Buffer, as string, minutes int) {
	if minutes > 0 {
		w.WriteByte(' ')
		element(w, as, "", r.words.Course.Minutes.with(strconv.Itoa(minutes)))
	}
}

// outcomes writes what a learner can do after a lesson.
func (r *Renderer) outcomes(w *bytes.Buffer, can []string) {
	if len(can) == 0 {
		return
	}
	w.WriteString("<div class=\"outcomes\">")
	element(w, "p", "", r.words.Course.Outcomes)
	w.WriteString("\n<ul>\n")
	for _, one := range can {
		element(w, "li", "", one)
		w.WriteByte('\n')
	}
	w.WriteString("</ul></div>\n")
}

// lesson writes what a learner can do after a lesson, and what comes before it.
func (r *Renderer) lesson(w *bytes.Buffer, l *Lesson) {
	if l == nil {
		return
	}
	r.outcomes(w, l.Can)
	if len(l.After) > 0 {
		w.WriteString("<div class=\"outcomes\">")
		element(w, "p", "", r.words.Course.After)
		w.WriteByte('\n')
		links(w, l.After)
		w.WriteString("</div>\n")
	}
	told(w, l)
}

// place writes where a lesson is in its course, and how long it takes, among the facts of its page.
func (r *Renderer) place(w *bytes.Buffer, l *Lesson) {
	if l == nil {
		return
	}
	w.WriteString("<li>")
	r.words.Course.Place.write(w, func(blank string) {
		number := l.Number
		if blank == "count" {
			number = l.Of
		}
		text(w, strconv.Itoa(number))
	})
	w.WriteString("</li>")
	r.minutes(w, "li", l.Minutes)
}
