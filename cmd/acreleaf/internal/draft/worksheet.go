package draft

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/drawing"
)

// sentences are the words around a drafted worksheet in one language.
type sentences struct {
	title          string // of a page whose name cannot be one
	none           string // in place of a worksheet
	say            string // what the author writes about a worksheet
	given, answer  string // before the figures of the example
	among, between string // "one of:", "from %s to %s"
	also           string // other units: "or in %s"
	optional       string
	compared       string // above the day of a twin's review: "compared with %s"
}

var allSentences = map[string]sentences{
	"en": {
		title: "TO WRITE – The title of the page",
		none: "TO WRITE – Put a worksheet here. Type `acreleaf reckon` to see the calculations. To begin a page with one " +
			"of them, type its name after `--with` when you draft the page.",
		say:   "TO WRITE – Say in your own words what the numbers mean. This is what the example says now.",
		given: "What is given:", answer: "What the worksheet answers:",
		among: "One of: ", between: "From %s to %s", also: ", or in %s",
		optional: "May be left out. To use it, delete the # before the next line.",
		compared: "The day on which somebody compared this page with %s. Take the # away when that is done:",
	},
	"es": {
		title: "POR ESCRIBIR – El título de la página",
		none: "POR ESCRIBIR – Ponga aquí una hoja de trabajo. Escriba `acreleaf reckon` para ver los cálculos. Para " +
			"empezar una página con uno de ellos, escriba su nombre después de `--with` cuando la empiece.",
		say:   "POR ESCRIBIR – Diga con sus palabras qué significan los números. Esto es lo que dice ahora el ejemplo.",
		given: "Los datos:", answer: "Lo que responde la hoja:",
		among: "Una de estas opciones: ", between: "De %s a %s", also: ", o en %s",
		optional: "Puede quedar fuera. Para usarlo, quite el # de la línea siguiente.",
		compared: "El día en que alguien comparó esta página con %s. Cuando esté hecho, quite el #:",
	},
}

// worksheets writes a worksheet for each calculation, with the figures of its example below, and with the picture that
// they draw where there is one.
func (d *drafter) worksheets(words sentences) (string, error) {
	if len(d.With) == 0 {
		return words.none, nil
	}
	var b strings.Builder
	for _, s := range d.With {
		e, err := exampleOf(s)
		if err != nil {
			return "", &Error{Text: fmt.Sprintf("%s has no example to begin with: %v", s.Name, err),
				Note: "draft the page without it, and write the worksheet by hand"}
		}
		if len(d.With) > 1 {
			fmt.Fprintf(&b, "### %s\n\n", s.Title)
		}
		words.block(&b, e)
		if drawing.Of(s.Name) != nil {
			fmt.Fprintf(&b, "```drawing\nof: %s\n```\n\n", s.Name)
		}
		words.figures(&b, e)
	}
	return b.String(), nil
}

// block writes the worksheet: each given with its typical value, and above it what a reader will be asked.
func (w sentences) block(b *strings.Builder, e *example) {
	s := e.sheet
	fmt.Fprintf(b, "```worksheet %s\ncalculation: %s\n", s.Name, s.Name)
	for _, g := range s.Givens {
		remark(b, lead(g)+w.taken(g))
		line := g.Name + ": " + g.Example()
		if !e.states(g) {
			remark(b, w.optional)
			line = "# " + line
		}
		fmt.Fprintln(b, line)
	}
	b.WriteString("```\n\n")
}

// lead is a given's label and hint as sentences.
func lead(g *sheet.Given) string {
	text := sentence(g.Label)
	if g.Hint != "" {
		text += sentence(g.Hint)
	}
	return text
}

func sentence(text string) string {
	text = strings.TrimSpace(text)
	if !strings.HasSuffix(text, ".") && !strings.HasSuffix(text, "?") {
		text += "."
	}
	return text + " "
}

// taken says what may be written for a given.
func (w sentences) taken(g *sheet.Given) string {
	if len(g.Choices) > 0 {
		var names []string
		for _, o := range g.Choices {
			names = append(names, o.Name)
		}
		return w.among + strings.Join(names, ", ") + "."
	}
	text := fmt.Sprintf(w.between, unit.Text(g.Low), unit.Quantity{Value: g.High, Unit: g.Unit})
	if g.Date {
		text = fmt.Sprintf(w.between, sheet.ISODate(g.Low), sheet.ISODate(g.High))
	}
	for _, other := range g.Units {
		text += fmt.Sprintf(w.also, other)
	}
	if g.Else.Unit != "" {
		text += fmt.Sprintf(w.also, g.Else.Unit)
	}
	return text + "."
}

// mostInLine is how long the remarks of a drafted worksheet may be.
const mostInLine = 100

// remark writes a text as remarks of YAML.
func remark(b *strings.Builder, text string) {
	length := 0
	for _, word := range strings.Fields(text) {
		switch size := utf8.RuneCountInString(word); {
		case length == 0:
			b.WriteString("# " + word)
			length = len("# ") + size
		case length+1+size > mostInLine:
			b.WriteString("\n# " + word)
			length = len("# ") + size
		default:
			b.WriteString(" " + word)
			length += 1 + size
		}
	}
	b.WriteString("\n")
}

// figures states the numbers of the example, each tied to the worksheet.
func (w sentences) figures(b *strings.Builder, e *example) {
	state := func(label, name string) {
		fmt.Fprintf(b, "- %s: [%s](worked:%s.%s)\n", label, e.outcome.Text(name), e.sheet.Name, name)
	}
	fmt.Fprintf(b, "%s\n\n%s\n\n", w.say, w.given)
	for _, g := range e.sheet.Givens {
		if e.states(g) && len(g.Choices) == 0 {
			state(g.Label, g.Name)
		}
	}
	fmt.Fprintf(b, "\n%s\n\n", w.answer)
	for _, r := range e.outcome.Answers() {
		state(r.Label, r.Name)
	}
	b.WriteString("\n")
}
