package formula

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/scanner"
	"go/token"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"acreleaf/calc/unit"
)

// What a line may hold. Nobody writes more; a line that does is cut off before it can cost time.
const (
	lineLimit  = 1000 // bytes
	depthLimit = 20   // brackets in each other
)

// grammar is what may be in a formula, for notes.
const grammar = "use numbers, names, + - * / ( ) and " + functionNames

// parse reads a formula with Go's own parser of expressions: nil if it is none, with the fault added.
func (m *maker) parse(f Text) ast.Expr {
	if !m.readable(f) || m.hyphened(f) {
		return nil
	}
	e, err := parser.ParseExprFrom(token.NewFileSet(), "", maskKeywords(f.Text), parser.SkipObjectResolution)
	if err == nil {
		return e
	}
	m.notArithmetic(f, offsetOf(err, f.Text))
	return nil
}

// offsetOf is where Go's parser stopped in a formula.
func offsetOf(err error, text string) int {
	var list scanner.ErrorList
	if errors.As(err, &list) && len(list) > 0 {
		return min(list[0].Pos.Offset, len(text))
	}
	return len(text)
}

// readable refuses what the parser of Go would read and an author cannot mean: remarks, and formulas past the limits.
func (m *maker) readable(f Text) bool {
	if strings.TrimSpace(f.Text) == "" {
		m.fault("formula-empty", f.Span, "there is no formula here", "write the arithmetic: flow / area")
		return false
	}
	if len(f.Text) > lineLimit {
		m.fault("formula-long", f.part(0, len(f.Text)), fmt.Sprintf("this formula is longer than %d letters", lineLimit),
			"give parts of it lines of their own, with names")
		return false
	}
	depth, quoted := 0, false
	for i, c := range f.Text {
		switch {
		case c == '"':
			quoted = !quoted
		case quoted:
		case strings.HasPrefix(f.Text[i:], "//") || strings.HasPrefix(f.Text[i:], "/*"):
			m.fault("formula", f.part(i, i+2), fmt.Sprintf("“%s” is not arithmetic", f.Text[i:i+2]),
				"write one / to divide, and round_down( ) around it for a whole number")
			return false
		case c == '(':
			if depth++; depth > depthLimit {
				m.fault("formula-deep", f.part(i, i+1), fmt.Sprintf("more than %d brackets are inside each other here", depthLimit),
					"give the part inside a line of its own, with a name")
				return false
			}
		case c == ')':
			depth--
		}
	}
	return true
}

// chain is words with hyphens between them and no space, which is how a name is written everywhere but in a formula.
var chain = regexp.MustCompile(`"[^"]*"|[A-Za-z_][A-Za-z0-9_]*(?:-[A-Za-z_][A-Za-z0-9_]*)+`)

// hyphened reports names that are written with their hyphens, which a formula takes for minuses.
func (m *maker) hyphened(f Text) bool {
	found := false
	for _, at := range chain.FindAllStringIndex(f.Text, -1) {
		run := f.Text[at[0]:at[1]]
		if run[0] == '"' {
			continue
		}
		if start, name := m.nameIn(run); name != "" {
			m.fault("formula-hyphen", f.part(at[0]+start, at[0]+start+len(name)),
				fmt.Sprintf("in a formula “%s” is a minus", name),
				"write "+underscored(name)+" for the name, or spaces around a minus")
			found = true
		} else if !m.anyKnown(strings.Split(run, "-")) {
			m.fault("formula-name", f.part(at[0], at[1]), fmt.Sprintf("there is no “%s” in this calculation", run),
				"add it under givens or constants, and write "+underscored(run)+" here")
			found = true
		}
	}
	return found
}

// nameIn finds the longest name with a hyphen in words that have hyphens between them, and where it starts.
func (m *maker) nameIn(run string) (start int, name string) {
	words := strings.Split(run, "-")
	for i, at := 0, 0; i < len(words); i++ {
		for j := len(words); j > i+1; j-- {
			joined := strings.Join(words[i:j], "-")
			if m.part(joined) != nil && len(joined) > len(name) {
				start, name = at, joined
			}
		}
		at += len(words[i]) + 1
	}
	return start, name
}

func (m *maker) anyKnown(words []string) bool {
	return slices.ContainsFunc(words, func(word string) bool { return m.part(hyphened(word)) != nil })
}

// maskKeywords gives the words of Go a capital, so that its parser takes them for names: a given may be called range,
// and if is a function. Every byte stays in its place, and names are read from the author's text.
func maskKeywords(text string) []byte {
	masked := []byte(text)
	for start := 0; start < len(text); {
		end := start
		for end < len(text) && isWordByte(text[end]) {
			end++
		}
		if token.IsKeyword(text[start:end]) {
			masked[start] -= 'a' - 'A'
		}
		start = end + 1
	}
	return masked
}

func isWordByte(c byte) bool {
	return c == '_' || c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= utf8.RuneSelf
}

// signs are what authors copy from printed formulas, with what to write.
var signs = map[rune]string{
	'×': "*", '·': "*", '÷': "/", '−': "-", '–': "-", '²': "pow(x, 2)", '³': "pow(x, 3)", '√': "sqrt(x)",
	'≤': "<=", '≥': ">=", '≠': "!=", '“': `"`, '”': `"`, '\'': `"`, '`': `"`, '½': "0.5", '¼': "0.25", '¾': "0.75",
}

// notArithmetic reports a formula that the parser did not take, in our own words: those of Go are not for growers.
func (m *maker) notArithmetic(f Text, at int) {
	before, rest := strings.TrimRight(f.Text[:at], " "), f.Text[at:]
	at += len(rest) - len(strings.TrimLeft(rest, " "))
	rest = strings.TrimLeft(rest, " ")
	if unclosed := openBracket(f.Text); rest == "" && unclosed >= 0 {
		m.fault("formula", f.part(unclosed, unclosed+1), "this bracket is not closed", "write the ) where it ends")
		return
	}
	if rest == "" {
		at = max(0, len(before)-1)
		note := "write what comes after it"
		if strings.HasSuffix(before, "%") {
			note = percentNote
		}
		m.fault("formula", f.part(at, len(before)), fmt.Sprintf("the formula stops after “%s”", lastWord(before)), note)
		return
	}
	c, size := utf8.DecodeRuneInString(rest)
	found := rest[:size]
	for size == 1 && isWordByte(rest[0]) && len(found) < len(rest) && isWordByte(rest[len(found)]) {
		found = rest[:len(found)+1]
	}
	text, note := fmt.Sprintf("“%s” cannot be here", found), grammar
	switch sign, printed := signs[c]; {
	case printed:
		note = fmt.Sprintf("write %s for %c", sign, c)
	case c == '"':
		note = `put a quantity between two double quotes, such as "2 lb/ac", and * or another sign before it`
	case c == ',':
		note = "write a large number without a comma: 43560"
	case c == ')':
		text, note = "this bracket closes nothing", "take it out, or write the ( that it belongs to"
	case strings.HasPrefix(rest, "=>"), strings.HasPrefix(rest, "=<"):
		found, note = rest[:2], fmt.Sprintf("write %s=", rest[1:2])
		text = fmt.Sprintf("“%s” cannot be here", found)
	case c == '=':
		note = "write == to ask whether two things are the same; in a calculation each = has a line of work for itself"
	case isWordByte(rest[0]) && before != "" && endsInNumber(before):
		note = fmt.Sprintf("put a number and its unit between quotes, such as %q, or write * to multiply",
			quantityAt(before, rest))
	case isWordByte(rest[0]):
		note = "write * or another sign between the two"
	}
	m.fault("formula", f.part(at, at+len(found)), text, note)
}

const percentNote = `a share is written between quotes, such as "50 %"`

// openBracket finds the last bracket that is not closed; -1 for none.
func openBracket(text string) int {
	var open []int
	for i := range len(text) {
		switch {
		case text[i] == '(':
			open = append(open, i)
		case text[i] == ')' && len(open) > 0:
			open = open[:len(open)-1]
		}
	}
	if len(open) == 0 {
		return -1
	}
	return open[len(open)-1]
}

// quantityAt is the number that a text ends in with the unit that the next begins with: “5 ” and “lb N/ac and …”.
func quantityAt(before, rest string) string {
	words := strings.SplitAfter(rest, " ")
	for n := len(words); n > 0; n-- {
		q, err := unit.ParseQuantity(lastWord(before) + " " + strings.TrimSpace(strings.Join(words[:n], "")))
		if err == nil {
			return q.String()
		}
	}
	return "2 lb/ac"
}

func endsInNumber(text string) bool {
	last := lastWord(text)
	return last[0] >= '0' && last[0] <= '9' || last[0] == '.'
}

// lastWord is the last word or sign of a text that does not end in a space.
func lastWord(text string) string {
	start := len(text)
	for start > 0 && (isWordByte(text[start-1]) || text[start-1] == '.') {
		start--
	}
	if start == len(text) {
		start--
	}
	return text[max(0, start):]
}
