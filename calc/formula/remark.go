package formula

import (
	"fmt"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// remarks adds the sentences about the answers: the notes, the checks, and the refusals that the arithmetic asks for.
func (m *maker) remarks() {
	for _, note := range m.definition.Notes {
		if m.spoken(note) {
			m.s.Say(sheet.Note, sheet.Always, note.Text)
		}
	}
	for _, c := range m.definition.Checks {
		fine := m.spoken(c.Say)
		e := m.parse(c.When)
		if e == nil {
			continue
		}
		r := &reader{maker: m, f: c.When}
		if o := r.read(e); r.question(o) && fine {
			if c.Hazard != nil {
				m.s.WarnOf(*c.Hazard, o.term, c.Say.Text)
			} else {
				m.s.Say(c.Signal, o.term, c.Say.Text)
			}
		}
	}
	m.inWords()
	m.refuse()
}

// inWords adds the sentence that says what the first answer comes to, by case.
func (m *maker) inWords() {
	d := m.definition
	if d.Sentence.Text == "" {
		if len(d.Cases) > 0 {
			m.fault("calculation-sentence", d.Cases[0].Say.Span, "these cases leave nothing to say when none of them holds",
				"add a line such as: sentence: It comes to {"+m.firstAnswer()+"}.")
		}
		return
	}
	fine := m.spoken(d.Sentence)
	var cases []sheet.Case
	for _, c := range d.Cases {
		said := m.spoken(c.Say)
		e := m.parse(c.When)
		if e == nil {
			fine = false
			continue
		}
		r := &reader{maker: m, f: c.When}
		o := r.read(e)
		if !r.question(o) || !said {
			fine = false
			continue
		}
		cases = append(cases, sheet.When(o.term, c.Say.Text))
	}
	if answer := m.firstAnswer(); fine && m.s.FindResult(answer) != nil {
		m.s.InWords(answer, append(cases, sheet.Otherwise(d.Sentence.Text))...)
	}
}

// firstAnswer is the name of the answer that the calculation is for.
func (m *maker) firstAnswer() string {
	if len(m.definition.Answers) == 0 {
		return "answer"
	}
	return m.definition.Answers[0].Name.Text
}

// refuse adds the refusals, those of one sentence as one.
func (m *maker) refuse() {
	var texts []string
	when := map[string]sheet.Term{}
	for _, f := range m.refusals {
		if earlier, said := when[f.text]; said {
			when[f.text] = earlier.Or(f.when)
			continue
		}
		texts, when[f.text] = append(texts, f.text), f.when
	}
	for _, text := range texts {
		m.s.Refuse(when[text], text)
	}
}

// spoken says whether each name in a remark is that of a quantity with a value, and reports one that is not.
func (m *maker) spoken(t Text) bool {
	fine := true
	for at := 0; ; {
		open := strings.IndexByte(t.Text[at:], '{')
		if open < 0 {
			return fine
		}
		open += at
		length := strings.IndexByte(t.Text[open:], '}')
		if length < 0 {
			m.fault("remark-name", t.part(open, open+1), "this { has no } after it",
				"write the name of a quantity between the two: {rate}")
			return false
		}
		name := strings.TrimSuffix(t.Text[open+1:open+length], " bare")
		at = open + length + 1
		if !m.speaksOf(name) {
			m.fault("remark-name", t.part(open+1, open+1+len(name)),
				fmt.Sprintf("there is no quantity “%s” to show", short(name)), m.speakable(name))
			fine = false
		}
	}
}

// speaksOf says whether a name is that of a given, a step or an answer. One that has a fault of its own counts.
func (m *maker) speaksOf(name string) bool {
	p := m.parts[name]
	if p == nil {
		return false
	}
	p.used = true
	return !m.isConstant(name)
}

func (m *maker) isConstant(name string) bool {
	for _, c := range m.definition.Constants {
		if c.Name.Text == name {
			return true
		}
	}
	return false
}

func (m *maker) speakable(name string) string {
	var names []string
	for _, known := range m.order {
		if !m.isConstant(known) {
			names = append(names, known)
		}
	}
	if near := unit.Nearest(name, names); near != "" {
		return "write {" + near + "}"
	}
	return "write one of: {" + strings.Join(names, "}, {") + "}"
}
