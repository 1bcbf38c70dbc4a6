package book

import (
	"cmp"
	"path"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/record"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// Courses lists the courses of all languages with their lessons, in order.
func (b *Book) Courses() []record.Course {
	var list []record.Course
	at := map[page.Address]int{}
	for _, o := range b.Outlines { // the pages of courses come before all lessons
		folder := o.Address.Course()
		if folder == "" {
			continue
		}
		address := page.Address{Kind: kind.Course, Language: o.Address.Language, Name: folder}
		i, known := at[address]
		if !known {
			i = len(list)
			at[address] = i
			list = append(list, record.Course{Site: cmp.Or(b.Site.Address, b.Site.Office), Address: address.String(),
				Title: path.Base(folder)})
		}
		if o.Address.Kind == kind.Course {
			list[i].Title = o.Title
			continue
		}
		list[i].Lessons = append(list[i].Lessons, record.Lesson{Name: path.Base(o.Address.Name), Title: o.Title,
			Exercises: o.Checks})
	}
	return list
}

// checksOf lists the exercises of a page.
func checksOf(p *worksheet.Page) []record.Exercise {
	var list []record.Exercise
	for _, e := range p.Exercises {
		deal := e.Placed.Deal()
		list = append(list, record.Exercise{Name: e.Block.Name, Title: e.Title, Asks: len(e.Placed.Parts), Cards: e.Cards,
			Deal: [3]int{deal.Offset, deal.Stride, deal.Of}})
	}
	return list
}
