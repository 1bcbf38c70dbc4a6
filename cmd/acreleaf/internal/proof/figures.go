package proof

import "acreleaf/cmd/acreleaf/internal/message"

// figures checks the numbers in the prose.
func figures(p *Page, s *Site) message.List { return nil }
