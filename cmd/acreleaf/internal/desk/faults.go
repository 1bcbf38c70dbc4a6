package desk

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// toldFaults are faults as a browser shows them: the lines that the terminal has, in parts that a narrow screen can
// break or move one by one.
type toldFaults struct {
	Summary string      `json:"summary"`
	Faults  []toldFault `json:"faults"`
	More    string      `json:"more,omitempty"`
}

type toldFault struct {
	Head   string `json:"head"`
	Source string `json:"source,omitempty"` // the line of the source, and the carets below it
	Note   string `json:"note,omitempty"`
}

// mostTold is how many faults a browser shows. A slip in site.yaml can bring one for every page.
const mostTold = 20

func tellFaults(l message.List) toldFaults {
	told := toldFaults{Summary: message.Summary(l), Faults: []toldFault{}}
	for i, m := range l {
		if i == mostTold {
			told.More = fmt.Sprintf("The terminal has %d more.", len(l)-mostTold)
			break
		}
		told.Faults = append(told.Faults, tellFault(m))
	}
	return told
}

func tellFault(m message.Message) toldFault {
	var text bytes.Buffer
	message.Printer{}.PrintOne(&text, m)
	lines := strings.Split(strings.TrimSuffix(text.String(), "\n"), "\n")
	told := toldFault{Head: lines[0]}
	rest := lines[1:]
	if m.Source != nil {
		told.Source, rest = strings.Join(rest[:2], "\n"), rest[2:]
	}
	told.Note = strings.Join(rest, "\n")
	return told
}

//go:embed fault.html
var faultText string

var faultForm = template.Must(template.New("fault").Parse(faultText))

// faultPage says what is wrong while there is no good site to show: the same lines as in the terminal.
func faultPage(faults message.List) []byte {
	var w bytes.Buffer
	if err := faultForm.Execute(&w, tellFaults(faults)); err != nil {
		panic(err) // the form is part of the program, and the buffer takes all
	}
	return w.Bytes()
}
