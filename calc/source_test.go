package calc_test

import (
	"go/format"
	"go/parser"
	"go/token"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

// A page shows the code behind an answer, so it must be the function that built the sheet, whole and as it stands.
func TestSourceIsTheFunctionThatBuildsTheSheet(t *testing.T) {
	for _, s := range calc.Standard().All() {
		source := calc.Source(s)
		if !strings.HasPrefix(source, "func ") && !strings.HasPrefix(source, "// ") {
			t.Errorf("the source of %s starts with %.40q", s.Name, source)
			continue
		}
		if !strings.Contains(source, "func "+s.Origin+"(s *sheet.Sheet) {\n") || !strings.HasSuffix(source, "\n}") {
			t.Errorf("the source of %s is not the whole of %s:\n%s", s.Name, s.Origin, source)
		}
		file := "package one\n\n" + source + "\n"
		if _, err := parser.ParseFile(token.NewFileSet(), s.Name, file, 0); err != nil {
			t.Errorf("the source of %s: %v", s.Name, err)
		}
		if formatted, err := format.Source([]byte(file)); err != nil || string(formatted) != file {
			t.Errorf("the source of %s is not formatted", s.Name)
		}
		for _, r := range s.Answers() {
			if !strings.Contains(source, `"`+r.Name+`"`) {
				t.Errorf("the source of %s does not give %q", s.Name, r.Name)
			}
		}
	}
}

func TestSheetsOfOthersHaveNoSource(t *testing.T) {
	s := sheet.New("own", func(s *sheet.Sheet) { s.Answer("answer", "", s.Number(1), sheet.Says{}) })
	if source := calc.Source(s); source != "" {
		t.Errorf("a sheet that is not of the catalogue has the source %q", source)
	}
}
