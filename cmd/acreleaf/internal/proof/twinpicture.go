package proof

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// pictures sees that a translation has as many pictures as its original. A picture with words in it has another file in
// each language, so the files are not compared. That a drawing of the original lacks is seen with its worksheets.
func (t *translation) pictures() {
	drawn := func(d *markdown.Document) (n int) {
		for _, b := range d.Blocks {
			if b.Construct == construct.Drawing {
				n++
			}
		}
		return n
	}
	if theirs, ours := drawn(t.original.Document), drawn(t.page.Document); ours > theirs {
		t.more("drawings", theirs, ours)
	}
	shown := func(d *markdown.Document) (n int) {
		for _, l := range d.Links {
			if l.Image {
				n++
			}
		}
		return n
	}
	theirs, ours := shown(t.original.Document), shown(t.page.Document)
	switch {
	case ours < theirs:
		t.lacks(fmt.Sprintf("pictures in the text: %d in the original, and %d in this translation", theirs, ours),
			"see which picture of "+t.original.Source.Name+" is missing here, and describe it in the language of this page")
	case ours > theirs:
		t.more("pictures in the text", theirs, ours)
	}
}

// more advises on what the translation has and the original does not.
func (t *translation) more(what string, theirs, ours int) {
	t.lacks(fmt.Sprintf("%s: %d in this translation, and %d in the original", what, ours, theirs),
		"show the same ones in "+t.original.Source.Name+", or take out here what is not there")
}
