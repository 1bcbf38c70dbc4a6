package proof

import "acreleaf/cmd/acreleaf/internal/message"

// together checks the pages against each other. It goes through them once, and looks at no prose of theirs again.
func together(pages []*Page, s *Site, r Rules) message.List {
	said := citations(s)
	if r.Advice {
		said = append(said, uncited(s)...)
		said = append(said, entries(pages, s)...)
	}
	return append(said, translations(pages, s, r)...)
}
