package unit

import (
	"fmt"
	"strings"
)

// fault makes the error for a token.
func (p *parser) fault(at token, message string) *Error {
	return &Error{Text: p.text, At: at.at, Message: quoted(p.text, message)}
}

// misplaced is the error for a token where a unit should be.
func (p *parser) misplaced(at token) *Error {
	switch at.kind {
	case endToken:
		return p.fault(at, "the unit breaks off; write what is missing at its end")
	case numberToken:
		return p.fault(at, "two numbers are side by side; leave one out")
	case strangeToken:
		if strings.HasPrefix(at.text, "°") {
			return p.fault(at, "no calculation works with a temperature; leave it out")
		}
		return p.fault(at, fmt.Sprintf("the sign %q has no place in a unit; take it out", at.text))
	}
	return p.fault(at, fmt.Sprintf("a unit must come before this %s; write it or take the %s out", at.text, at.text))
}

// unknown is the error for a word that is neither a unit nor a substance.
func (p *parser) unknown(at token) *Error {
	if at.text == "per" || at.text == "of" {
		return p.misplaced(at)
	}
	if s := substanceNamed(at.text); s != nil {
		return p.fault(at, fmt.Sprintf("%s is what a unit is of, and must follow one, as in lb %s", s.symbol, s.symbol))
	}
	e := &Error{Text: p.text, At: at.at, Word: at.text}
	switch near := nearest(at.text); {
	case strings.EqualFold(strings.TrimSuffix(at.text, "s"), "unit"):
		return e.Writing("a unit of nitrogen is a pound, so write lb N")
	case near != "":
		return e.Meaning(near)
	}
	return e.Writing("write one such as lb, ppm, ac, N or NO3-N")
}
