package proof

import "acreleaf/cmd/acreleaf/internal/message"

// together checks the pages against each other.
func together(pages []*Page, s *Site, r Rules) message.List { return nil }
