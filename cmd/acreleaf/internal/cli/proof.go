package cli

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/proof"
	"acreleaf/cmd/acreleaf/internal/site"
)

type proofCommand struct{ place }

// Run checks every guide and writes nothing.
func (c *proofCommand) Run(t *terminal) error {
	options, err := c.open()
	if err != nil {
		return err
	}
	found := site.Check(options, proof.Rules{Advice: true})
	if err := t.report(found.Messages); err != nil {
		return err
	}
	fmt.Fprintf(t.out, "%d %s, %d worked and %d sourced figures: no fault\n",
		found.Pages, plural(found.Pages, "page", "pages"), found.Worked, found.Sourced)
	return nil
}
