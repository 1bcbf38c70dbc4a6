package proof

import "acreleaf/cmd/acreleaf/internal/message"

// text checks what a page says and how it is built, but for its numbers.
func text(p *Page, s *Site, r Rules) message.List { return nil }
