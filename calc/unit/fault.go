package unit

import "fmt"

// fault makes the error for a token.
func (p *parser) fault(at token, message string) *Error {
	return &Error{Text: p.text, At: at.at, Message: quoted(p.text, message)}
}

// misplaced is the error for a token where a unit should stand.
func (p *parser) misplaced(at token) *Error {
	switch at.kind {
	case endToken:
		return p.fault(at, "the unit breaks off; write what is missing at its end")
	case numberToken:
		return p.fault(at, "two numbers stand side by side; leave one out")
	case strangeToken:
		return p.fault(at, fmt.Sprintf("the sign %q has no place in a unit; take it out", at.text))
	}
	return p.fault(at, fmt.Sprintf("a unit must stand before this %s; write it or take the %s out", at.text, at.text))
}

// unknown is the error for a word that is neither a unit nor a substance.
func (p *parser) unknown(at token) *Error {
	e := p.fault(at, "")
	e.Nearest = nearest(at.text)
	if e.Nearest == "" {
		e.Message = fmt.Sprintf("%q is not a unit or a substance known here; write one such as lb, ppm, ac, N or NO3-N", at.text)
		return e
	}
	e.Message = fmt.Sprintf("%q is not a unit or a substance known here; did you mean %q?", at.text, e.Nearest)
	return e
}
