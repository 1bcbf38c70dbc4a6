package render

import (
	"bytes"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// OfflineWords is for what is kept on the device, and works without a network.
type OfflineWords struct {
	Title   string   `yaml:"title"`
	Summary string   `yaml:"summary"`
	About   string   `yaml:"about"`
	Away    Sentence `yaml:"away" blanks:"page"`
	There   string   `yaml:"there"`
	All     Sentence `yaml:"all" blanks:"size"`
	Rest    Sentence `yaml:"rest" blanks:"size"`
	Keeping Sentence `yaml:"keeping" blanks:"share"`
	Page    string   `yaml:"page"`
	None    string   `yaml:"none"`
	Whole   Sentence `yaml:"whole" blanks:"size"`
	Drop    string   `yaml:"drop"`
	Gone    string   `yaml:"gone"`
	Signal  string   `yaml:"signal"`
	Changed string   `yaml:"changed"`
	Room    string   `yaml:"room"`
	Refused string   `yaml:"refused"`
	Size    Sentence `yaml:"size" blanks:"number"`
	Edition string   `yaml:"edition"`
	Use     string   `yaml:"use"`
	Later   string   `yaml:"later"`
	Failed  string   `yaml:"failed"`
}

func (o *OfflineWords) scriptWords() map[wire.Word]string {
	return map[wire.Word]string{
		wire.Offline: o.Title, wire.KeepAll: o.All.pattern(), wire.KeepRest: o.Rest.pattern(),
		wire.Keeping: o.Keeping.pattern(), wire.KeepPage: o.Page, wire.KeepNone: o.None, wire.KeepWhole: o.Whole.pattern(),
		wire.KeepDrop: o.Drop, wire.KeepGone: o.Gone, wire.KeepSignal: o.Signal, wire.KeepChanged: o.Changed,
		wire.KeepRoom: o.Room, wire.KeepRefused: o.Refused, wire.Size: o.Size.pattern(), wire.Edition: o.Edition,
		wire.EditionUse: o.Use, wire.EditionLater: o.Later, wire.EditionFailed: o.Failed,
	}
}

// Offline writes the page to which a reader comes without a network, when the page that they asked for is not kept. Its
// script says which that was, and lists those that are there.
func (r *Renderer) Offline(w *bytes.Buffer, p *Page) {
	words := &r.words.Offline
	r.write(w, &filling{page: p, main: func(w *bytes.Buffer) {
		head(w, p, nil)
		w.WriteString("<p " + wire.Away + " hidden>")
		words.Away.write(w, func(string) { link(w, "", "./", words.Title) })
		w.WriteString("</p>\n")
		element(w, "p", "", words.About)
		w.WriteString("\n<section " + wire.There + " hidden>\n")
		element(w, "h2", "", words.There)
		w.WriteString("\n<ul></ul>\n</section>\n")
	}})
}
