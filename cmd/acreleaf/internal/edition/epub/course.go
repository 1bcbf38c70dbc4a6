package epub

import (
	"cmp"
	"fmt"
	"path"
	"strings"
	"sync"
	"time"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/nodes"
	"acreleaf/cmd/acreleaf/internal/page"
)

// courses are the pages of all courses, as the site has them. They come one by one, and from several goroutines.
type courses struct {
	mutex sync.Mutex
	pages map[page.Address]*coursePage
}

// A coursePage is what a course needs of a lesson, or of the page that somebody wrote of the course.
type coursePage struct {
	source   *message.Source
	metadata page.Metadata
	language string
	set      []byte
}

func (c *courses) keep(p *book.Page, set []byte) {
	c.mutex.Lock()
	defer c.mutex.Unlock()
	if c.pages == nil {
		c.pages = map[page.Address]*coursePage{}
	}
	c.pages[p.Address] = &coursePage{p.Source, p.Metadata, p.Language, set}
}

// Common makes the books of the courses.
func (e *edition) Common(b *book.Book) ([]book.Part, message.List) {
	lessons := map[page.Address][]page.Address{} // by course, in order
	var order []page.Address
	for _, o := range b.Outlines {
		if o.Address.Kind != kind.Lesson || e.courses.pages[o.Address] == nil {
			continue
		}
		course := page.Address{Kind: kind.Course, Language: o.Address.Language, Name: o.Address.Course()}
		if lessons[course] == nil {
			order = append(order, course)
		}
		lessons[course] = append(lessons[course], o.Address)
	}
	var parts []book.Part
	var said message.List
	for _, course := range order {
		made, messages := e.course(course, lessons[course])
		said = append(said, messages...)
		if made != nil {
			parts = append(parts, book.Part{Path: fileOf(course), Make: func() []byte { return made }})
		}
	}
	return parts, said
}

// course makes the book of a course: its page, its lessons as chapters, and the answers to all of their exercises. Nil
// where it cannot be made.
func (e *edition) course(at page.Address, lessons []page.Address) ([]byte, message.List) {
	first := e.courses.pages[lessons[0]]
	written := cmp.Or(e.courses.pages[at], &coursePage{source: first.source, language: first.language,
		metadata: page.Metadata{Title: path.Base(at.Name)}})
	reviewed := written.metadata.Reviewed
	for _, lesson := range lessons {
		if day := e.courses.pages[lesson].metadata.Reviewed; day.After(reviewed) {
			reviewed = day
		}
	}
	if reviewed.IsZero() {
		return nil, message.List{undated(first.source, first.metadata)}
	}
	made, err := e.bindCourse(at, lessons, written, reviewed)
	if err != nil {
		return nil, message.List{unprintable(written.source, err)}
	}
	return made, nil
}

const answersFile = "answers.xhtml"

// A binding is a course while its book is made.
type binding struct {
	*edition
	volume  *volume
	inside  map[string]*chapter
	froms   []page.Address // of the chapters
	answers []*html.Node   // a section for each lesson with exercises, and
	answer  []page.Address // of which lesson each is
	front   stilled        // the page of the course; whether a lesson has what it says, and the foot
}

func (e *edition) bindCourse(at page.Address, lessons []page.Address, written *coursePage,
	reviewed time.Time) ([]byte, error) {
	v := e.volume(at, written.language, written.metadata.Title, written.metadata.Summary, reviewed)
	b := &binding{edition: e, volume: v, inside: map[string]*chapter{}}
	if written.set == nil {
		b.add(at, titlePage(v.title), textFile, v.title)
	} else if s, err := b.page(at, written, place{text: textFile}); err == nil {
		b.front.foot = s.foot
	} else {
		return nil, err
	}
	for i, address := range lessons {
		lesson := e.courses.pages[address]
		name := fmt.Sprintf("lesson-%d", i+1)
		in := place{text: name + ".xhtml", answers: answersFile, prefix: name + "-"}
		s, err := b.page(address, lesson, in)
		if err != nil {
			return nil, err
		}
		if len(s.answers) > 0 {
			part := nodes.Element("section", "answers", nodes.Element("h2", "", nodes.Text(lesson.metadata.Title)))
			nodes.Set(part.FirstChild, "id", name)
			for _, answer := range s.answers {
				part.AppendChild(answer)
			}
			b.answers, b.answer = append(b.answers, part), append(b.answer, address)
		}
		b.front.fields, b.front.cards = b.front.fields || s.fields, b.front.cards || s.cards
		if b.front.foot == nil {
			b.front.foot = s.foot
			b.uncite()
		}
	}
	b.front.body = v.chapters[0].body
	if written.set == nil {
		b.list(lessons)
	}
	b.front.example(v)
	b.close()
	if err := b.settle(); err != nil {
		return nil, err
	}
	return v.pack()
}

// page adds the chapter of a page. What every page of the site has, the book has once.
func (b *binding) page(at page.Address, p *coursePage, in place) (*stilled, error) {
	tree, err := read(p.set)
	if err != nil {
		return nil, err
	}
	s := still(tree, b.volume, in)
	if len(b.volume.chapters) > 0 {
		nodes.Remove(find(s.body, isOf("office")))
	}
	b.add(at, s.body, in.text, p.metadata.Title)
	return s, nil
}

func (b *binding) add(at page.Address, body *html.Node, file, title string) {
	c := &chapter{file, title, body}
	b.volume.chapters = append(b.volume.chapters, c)
	b.froms = append(b.froms, at)
	b.inside[strings.TrimSuffix("/"+at.String(), "/")] = c
}

// titlePage begins the page of a course of which nobody wrote one.
func titlePage(title string) *html.Node {
	return nodes.Element("body", "", nodes.Element("header", "head", nodes.Element("h1", "", nodes.Text(title))))
}

// uncite takes out of the foot how to cite the lesson that it is from.
func (b *binding) uncite() {
	for _, head := range all(b.front.foot, isElement("dt")) {
		if textOf(head) == b.volume.words.Foot.Cite {
			nodes.Remove(head.Parent)
		}
	}
	if find(b.front.foot, isElement("dt")) == nil {
		b.front.foot = nil // it said nothing else
	}
}

// list puts the ways to the lessons on it.
func (b *binding) list(lessons []page.Address) {
	list := nodes.Element("ol", "")
	for i := range lessons {
		c := b.volume.chapters[i+1]
		way := nodes.Element("a", "", nodes.Text(c.title))
		nodes.Set(way, "href", c.file)
		list.AppendChild(nodes.Element("li", "", way))
	}
	b.front.body.AppendChild(list)
}

// close puts the answers of all lessons into a chapter of their own, and the foot of the pages at the end.
func (b *binding) close() {
	if len(b.answers) > 0 {
		title := b.volume.words.Book.Answers
		body := nodes.Element("body", "", nodes.Element("h1", "", nodes.Text(title)))
		for _, part := range b.answers {
			body.AppendChild(part)
		}
		b.volume.chapters = append(b.volume.chapters, &chapter{answersFile, title, body})
	}
	b.front.end(b.volume.chapters[len(b.volume.chapters)-1].body)
}

// settle settles the links of each chapter, and of the answers by the lessons that they are of.
func (b *binding) settle() error {
	for i, from := range b.froms {
		w := &ways{edition: b.edition, from: from, volume: b.volume, inside: b.inside}
		if err := w.settle(b.volume.chapters[i].body); err != nil {
			return err
		}
	}
	for i, part := range b.answers {
		w := &ways{edition: b.edition, from: b.answer[i], volume: b.volume, inside: b.inside}
		if err := w.settle(part); err != nil {
			return err
		}
	}
	if b.front.foot == nil || len(b.answers) == 0 {
		return nil // it is in the last lesson
	}
	last := b.froms[len(b.froms)-1]
	return (&ways{edition: b.edition, from: last, volume: b.volume, inside: b.inside}).settle(b.front.foot)
}
