package formula

import (
	"cmp"
	"errors"
	"fmt"
	"go/ast"
	"go/token"
	"strconv"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// read turns a part of a formula into an operand. What is wrong is reported once; operands made from it are bad.
func (r *reader) read(e ast.Expr) operand {
	top := r.top
	r.top = false
	switch e := e.(type) {
	case *ast.ParenExpr:
		r.top = top
		o := r.read(e.X)
		o.span = r.span(e)
		return o
	case *ast.Ident:
		return r.named(e)
	case *ast.BasicLit:
		return r.literal(e)
	case *ast.UnaryExpr:
		return r.unary(e)
	case *ast.BinaryExpr:
		return r.binary(e)
	case *ast.CallExpr:
		return r.call(e, top)
	case *ast.SelectorExpr:
		return r.faultAt(e, "formula", fmt.Sprintf("“%s” is not arithmetic", r.cut(e)),
			"make it a given; a worksheet can fill it with an answer: "+spaced(r.cut(e.Sel))+": from "+r.cut(e))
	}
	return r.faultAt(e, "formula", fmt.Sprintf("“%s” is not arithmetic", short(r.cut(e))), grammar)
}

// short is the start of a text, for a sentence.
func short(text string) string {
	if letters := []rune(text); len(letters) > 40 {
		return string(letters[:40]) + "…"
	}
	return text
}

// hyphened is the name of the sheet that a word of a formula stands for.
func hyphened(word string) string { return strings.ReplaceAll(word, "_", "-") }

// underscored is a name as it is written in a formula.
func underscored(name string) string { return strings.ReplaceAll(name, "-", "_") }

func spaced(name string) string { return strings.ReplaceAll(name, "-", " ") }

// named reads a name.
func (r *reader) named(e *ast.Ident) operand {
	if r.page != nil {
		return r.reference(e)
	}
	word := r.cut(e)
	if p := r.part(hyphened(word)); p != nil {
		return r.use(e, p)
	}
	if f := functions[word]; f.example != "" {
		return r.faultAt(e, "formula-name", word+" is a function, and needs brackets", "write "+f.example)
	}
	return r.faultAt(e, "formula-name", fmt.Sprintf("there is no “%s” in this calculation", word), r.nearest(word))
}

// nearest is a note with the known name that was most likely meant, or with all of them.
func (r *reader) nearest(word string) string {
	var known []string
	for _, name := range r.order {
		known = append(known, underscored(name))
	}
	if near := unit.Nearest(strings.ToLower(word), known); near != "" {
		return "write " + near
	}
	return "add it under givens or constants, or write one of: " + strings.Join(known, ", ")
}

// use takes a named part of the calculation.
func (r *reader) use(e ast.Node, p *part) operand {
	p.used = true
	switch {
	case p.bad:
		return operand{bad: true}
	case p.line == r.line && r.line > 0:
		return r.faultAt(e, "formula-order", underscored(p.name)+" is used in the line that works it out",
			"give this line another name, or take it out of its own formula")
	case !p.made:
		return r.faultAt(e, "formula-order", underscored(p.name)+" is worked out further down",
			"move the line that begins with “"+underscored(p.name)+" =” above this one")
	}
	o := p.operand
	o.span, o.text, o.name = r.span(e), r.cut(e), true
	return o
}

// literal reads a number, or a quantity in quotes.
func (r *reader) literal(e *ast.BasicLit) operand {
	switch e.Kind {
	case token.STRING:
		return r.quoted(e)
	case token.INT, token.FLOAT:
		if strings.Trim(e.Value, "0123456789.eE+-") == "" {
			break
		}
		fallthrough
	default:
		return r.faultAt(e, "formula", fmt.Sprintf("“%s” is not a number", e.Value),
			"write it in plain digits, such as 1000 or 0.25")
	}
	value, err := strconv.ParseFloat(e.Value, 64)
	if err != nil {
		return r.faultAt(e, "formula", fmt.Sprintf("“%s” is too large a number", e.Value), "look at its digits")
	}
	o := r.of(e, r.s.Number(value))
	o.values, o.degree, o.number, o.nothing = sheet.Only(value), 0, true, value == 0
	return o
}

// quoted reads a quantity in quotes.
func (r *reader) quoted(e *ast.BasicLit) operand {
	text := e.Value[1 : len(e.Value)-1]
	if day, is := r.day(e, text); is {
		return day
	}
	q, err := unit.ParseQuantity(text)
	if err != nil || e.Value[0] != '"' {
		var place *unit.Error
		span := r.span(e)
		if errors.As(err, &place) && span.End-span.Start == len(e.Value) {
			span = Span{span.Start + 1 + min(place.At, len(text)-1), span.End - 1}
		}
		what, note := splitAdvice(err, `write a number and its unit: "2 lb/ac"`)
		if r.page != nil && strings.IndexAny(text, "0123456789") != 0 {
			note = `write a number with its unit, as in "2 lb/ac", or a day, as in "2027-07-15"`
		}
		r.fault("formula-quantity", span, what, note)
		return operand{bad: true}
	}
	if q.Value == 0 {
		o := r.of(e, r.s.Zero(q.Unit.String()))
		o.values, o.counted, o.quoted = sheet.Only(0), true, &q
		return o
	}
	o := r.of(e, r.figure(text, q))
	o.values, o.counted, o.quoted = sheet.Only(q.Value), true, &q
	return o
}

// texts are the texts that a calculation of an author has from us; the others are the author's.
func texts() *words.General { return words.InGeneral(words.English) }

// figure is a quantity of the work that has no name: a constant of which nothing is known but its number. See unlist.
func (m *maker) figure(text string, q unit.Quantity) sheet.Term {
	name, seen := m.figures[q.String()]
	for i := 1; !seen; i++ {
		name = fmt.Sprintf("figure-%d", i)
		if m.parts[name] == nil && !m.figureNames[name] {
			m.figures[q.String()], m.figureNames[name], seen = name, true, true
		}
	}
	return m.s.ConstantOnce(name, text, sheet.Fact{
		Label: texts().Figure, Sources: []string{"memory"},
	})
}

// splitAdvice parts an error of calc into what is wrong and what to do.
func splitAdvice(err error, otherwise string) (text, note string) {
	if err == nil {
		return "this is not a quantity", otherwise
	}
	text, note = unit.Advice(err)
	return text, cmp.Or(note, otherwise)
}

func (r *reader) unary(e *ast.UnaryExpr) operand {
	o := r.read(e.X)
	switch {
	case e.Op == token.NOT:
		if !r.question(o) {
			return operand{bad: true}
		}
		not := r.of(e, o.term.Not())
		not.truth = true
		return not
	case e.Op == token.ADD && r.quantity(o):
		return o
	case e.Op == token.SUB && r.quantity(o):
		return r.negative(e, o)
	case o.bad || e.Op == token.SUB || e.Op == token.ADD:
		return operand{bad: true}
	}
	return r.faultAt(e, "formula", fmt.Sprintf("“%s” is not arithmetic", e.Op), grammar)
}

func (r *reader) negative(e *ast.UnaryExpr, o operand) operand {
	n := o
	n.span, n.text, n.name = r.span(e), r.cut(e), false
	n.values = sheet.Only(0).Minus(o.values)
	if o.number {
		n.term = r.s.Number(-o.values.Low)
		return n
	}
	n.term = r.nothingOf(o.term).Minus(o.term)
	return n
}

// binary reads what is on both sides of a sign.
func (r *reader) binary(e *ast.BinaryExpr) operand {
	sign := int(e.OpPos) - 1
	at := r.f.part(sign, sign+len(e.Op.String()))
	if r.page != nil && e.Op.Precedence() == comparison {
		return r.compareThere(e, at)
	}
	a, b := r.read(e.X), r.read(e.Y)
	switch e.Op {
	case token.LAND, token.LOR:
		return r.connect(e, a, b)
	case token.ADD, token.SUB, token.MUL, token.QUO:
		if okA, okB := r.quantity(a), r.quantity(b); !okA || !okB {
			return operand{bad: true}
		}
		return r.arithmetic(e, at, a, b)
	case token.LSS, token.LEQ, token.GTR, token.GEQ, token.EQL, token.NEQ:
		if okA, okB := r.quantity(a), r.quantity(b); !okA || !okB {
			return operand{bad: true}
		}
		return r.compare(e, at, a, b)
	}
	note := map[token.Token]string{token.REM: percentNote, token.XOR: "write pow(x, 2) for a power",
		token.AND: "write && for and", token.OR: "write || for or"}[e.Op]
	if note == "" {
		note = grammar
	}
	r.fault("formula", at, fmt.Sprintf("“%s” is not arithmetic", e.Op), note)
	return operand{bad: true}
}

func (r *reader) connect(e *ast.BinaryExpr, a, b operand) operand {
	if okA, okB := r.question(a), r.question(b); !okA || !okB {
		return operand{bad: true}
	}
	t := a.term.Or(b.term)
	if e.Op == token.LAND {
		t = a.term.And(b.term)
	}
	o := r.of(e, t)
	o.truth = true
	return o
}

func (r *reader) arithmetic(e *ast.BinaryExpr, at Span, a, b operand) operand {
	doing := "added"
	if e.Op == token.SUB {
		doing = "subtracted"
	}
	if e.Op == token.ADD || e.Op == token.SUB {
		x, y, ok := r.alike(a, b, at, doing)
		if !ok {
			return operand{bad: true}
		}
		a, b = x, y
	} else if !r.joined(e, a.degree+b.degree) || e.Op == token.QUO && !r.divisor(e, b) {
		return operand{bad: true}
	}
	var o operand
	switch e.Op {
	case token.ADD:
		o = r.of(e, a.term.Plus(b.term))
		o.values = a.values.Plus(inUnitOf(a, b))
	case token.SUB:
		o = r.of(e, a.term.Minus(b.term))
		o.values = a.values.Minus(inUnitOf(a, b))
	case token.MUL:
		o = r.of(e, a.term.Times(b.term))
		o.values, o.degree = a.values.Times(b.values), a.degree+b.degree
		o.counted = a.counted && b.bare() || b.counted && a.bare()
		return o
	default:
		o = r.of(e, a.term.Over(b.term))
		o.values, o.degree = a.values.Over(b.values), a.degree+b.degree
		o.counted = a.counted && b.bare()
		return o
	}
	o.counted, o.degree = a.counted, a.degree
	return o
}

// comparison is how tightly Go's signs of comparison hold, which nothing else shares.
var comparison = token.LSS.Precedence()

func (r *reader) compare(e *ast.BinaryExpr, at Span, a, b operand) operand {
	a, b, ok := r.alike(a, b, at, "compared")
	if !ok {
		return operand{bad: true}
	}
	var t sheet.Term
	switch e.Op {
	case token.LSS:
		t = a.term.Less(b.term)
	case token.LEQ:
		t = a.term.AtMost(b.term)
	case token.GTR:
		t = a.term.More(b.term)
	case token.GEQ:
		t = a.term.AtLeast(b.term)
	case token.EQL:
		t = a.term.Same(b.term)
	default:
		t = a.term.Same(b.term).Not()
	}
	o := r.of(e, t)
	o.truth = true
	return o
}

// divisor reports a division by 0, and withholds the answers where the reader's numbers make a divisor 0.
func (r *reader) divisor(e *ast.BinaryExpr, b operand) bool {
	if b.values == sheet.Only(0) {
		text := "this divides by 0"
		if b.name {
			text = b.text + " is 0, and nothing can be divided by it"
		}
		r.fault("formula-zero", b.span, text, "divide by something else, or take the division out")
		return false
	}
	if b.values.Has(0) {
		r.refuse(b.term.Same(r.nothingOf(b.term)), words.Fill(texts().DivideByZero, "name", r.speak(b)))
	}
	return true
}

// refuse withholds the answers when the question is answered yes where the part that is read counts.
func (r *reader) refuse(question sheet.Term, text string) {
	if r.guard != nil {
		question = r.guard.And(question)
	}
	r.refusals = append(r.refusals, refusal{question, text})
}

// speak calls an operand in a sentence for readers.
func (r *reader) speak(o operand) string {
	if o.name {
		return spaced(hyphened(o.text))
	}
	return "“" + strings.NewReplacer("_", " ", "{", "", "}", "").Replace(o.text) + "”"
}
