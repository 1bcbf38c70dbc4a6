package practice

import (
	"errors"
	"fmt"
	"strings"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
)

// Read reads what somebody answered to a part, in a language: "48", "48 lb", "53.8 kg/ha", "1/2". An empty text is no
// answer. What is not one number gives an error with a sentence; a unit that does not fit is no error, since marking
// tells it.
func (p *Part) Read(text, language string) (Heard, error) {
	text = prose.For(language).PointDecimals(strings.TrimSpace(text))
	if text == "" {
		return Heard{}, nil
	}
	r, err := unit.ParseRange(text)
	if unknown := (*unit.Error)(nil); errors.As(err, &unknown) && unknown.Word != "" {
		bare, err := unit.ParseRange(strings.TrimSpace(unknown.Text[:unknown.At]))
		if err == nil && bare.Low == bare.High {
			return Heard{Given: true, Answer: bare.Low, Bare: bare.Low, Told: OtherUnit, Unit: unknown.Text[unknown.At:]}, nil
		}
	}
	switch {
	case err != nil:
		return Heard{}, err
	case r.Low != r.High:
		return Heard{}, fmt.Errorf("%s is two numbers, and the answer is one; write the one that you worked out", text)
	case r.Low < -mostAnswer || r.Low > mostAnswer:
		return Heard{}, fmt.Errorf("%s is larger than any answer here; look for digits that are too many", text)
	}
	h := Heard{Given: true, Answer: r.Low, Bare: r.Low}
	if r.Unit.String() == "" {
		if p.result.Unit.String() == "" {
			h.Told = FitUnit
		}
		return h, nil
	}
	for _, u := range p.Units() {
		into, is := r.Unit.Meant(u)
		if !is || into.Multiply != into.Divide {
			continue
		}
		own, _ := u.To(p.result.Unit)
		h.Answer, h.Told = own.Apply(r.Low), FitUnit
		return h, nil
	}
	h.Told, h.Unit = OtherUnit, r.Unit.String()
	return h, nil
}
