package cli

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/edition/handout"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// turn is what a command does when another one is writing into the same folder.
type turn struct {
	Wait bool `help:"Wait while another acreleaf is writing there."`
}

// What a command makes, each in a folder of its own.
const (
	aSite    = "a site"
	aHandout = "a handout"
	books    = "books"
	packets  = "packets"
)

// begin takes a folder for what a command makes.
func (c turn) begin(t *terminal, folder, made string) (*output.Writer, error) {
	begin := output.Begin
	if c.Wait {
		begin = func(folder string) (*output.Writer, error) {
			return output.Wait(folder, func(text string) { fmt.Fprintln(t.err, text) })
		}
	}
	to, err := begin(folder)
	if err != nil {
		return nil, err
	}
	if err := keepsToItsFolder(to, folder, made); err != nil {
		to.Drop()
		return nil, err
	}
	if to.WasCut() {
		fmt.Fprintf(t.err, "The last press into %s was cut short. This one makes it whole.\n", folder)
	}
	return to, nil
}

// commit puts what was made in its place, if no message is a fault.
func (t *terminal) commit(to *output.Writer, folder string, mark output.Mark, messages message.List,
) (output.Report, error) {
	if err := t.report(messages); err != nil {
		to.Drop()
		fmt.Fprintf(t.err, "Nothing was written: %s is as it was.\n", folder)
		return output.Report{}, err
	}
	return to.Commit(mark)
}

// keepsToItsFolder sees that a command does not clear away what another one made: what is listed in a folder and not
// made again is removed.
func keepsToItsFolder(to *output.Writer, folder, made string) error {
	there := books
	switch {
	case to.IsNew():
		return nil
	case to.Lists("index.html"):
		there = aSite
	case to.Lists(handout.CardsFile):
		there = aHandout
	case to.ListsAny(".html"):
		there = packets
	}
	if there == made {
		return nil
	}
	return fault{fmt.Sprintf("%q has %s in it, which %s would replace", folder, there, made),
		"name another folder: --to=FOLDER"}
}
