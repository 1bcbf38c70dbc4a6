package proof

import (
	"strings"

	"acreleaf/cmd/acreleaf/internal/kind"
)

// leader sees that leader's notes are in a page that may have them. On any other page nobody would see them.
func (c *textCheck) leader() {
	if c.page.Address.Kind.Row().Led {
		return
	}
	for _, notes := range c.page.Document.Leader {
		c.fault(notes, "leader-kind", "leader's notes are in a page that has no leader, so nobody would see them",
			"move them to a page in the folder "+strings.Join(kind.Folders(func(r kind.Row) bool { return r.Led }), " or ")+
				", or take the fence out")
	}
}
