package proof

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/message"
)

// citations sees that every published source can be looked up: a title leads nobody to the work, so a reader could not
// hold the figures against it. That is a fault and no advice. A rule of thumb, and what somebody remembers, has nothing
// to be looked up.
func citations(s *Site) message.List {
	var messages message.List
	for _, id := range s.Sources.IDs() {
		if r := s.Sources[id]; r.Listed && !r.Findable() {
			messages = append(messages, message.Message{ID: "source-incomplete", Source: s.SourcesFile, Span: r.Span,
				Text: fmt.Sprintf("source %q has no address and no number, so a reader cannot look it up", id),
				Note: "add a line below it: \"address: https://...\", or \"number: EM 8786\" for the number of a publication or " +
					"a DOI; if nobody published it, write \"kind: common-practice\""})
		}
	}
	return messages
}

// uncited advises on sources that nothing rests on.
func uncited(s *Site) message.List {
	if s.Cited == nil {
		return nil
	}
	var messages message.List
	for _, id := range s.Sources.IDs() {
		if s.Sources[id].Listed && !s.Cited[id] {
			messages = append(messages, message.Message{Level: message.Advice, ID: "source-uncited", Source: s.SourcesFile,
				Span: s.Sources[id].Span, Text: fmt.Sprintf("no page and no calculation in use cites source %q", id),
				Note: fmt.Sprintf("cite it, as in [48 lb N/ac](source:%s), or take it out of this file", id)})
		}
	}
	return messages
}
