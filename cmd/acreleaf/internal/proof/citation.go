package proof

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

// citations sees that every published source says who published it. A title alone leads nobody to the work, so that the
// figures which rest on it cannot be looked up: that is a fault and no advice. A rule of thumb, and what somebody
// remembers, has nobody to name.
func citations(s *Site) message.List {
	var said message.List
	for _, id := range s.Sources.IDs() {
		r := s.Sources[id]
		published := r.Kind == config.Standard || r.Kind == config.Handbook || r.Kind == config.WorkedExample
		if published && r.Authors == "" && r.Publisher == "" && r.Year == "" {
			said = append(said, message.Message{ID: "source-incomplete", Source: s.SourcesFile, Span: r.Span,
				Text: fmt.Sprintf("source %q has a title and nothing else that leads a reader to the work", id),
				Note: "add lines below it for what is known: \"authors: ...\", \"year: ...\", \"publisher: ...\""})
		}
	}
	return said
}

// uncited advises on sources that nothing rests on.
func uncited(s *Site) message.List {
	if s.Cited == nil {
		return nil
	}
	var said message.List
	for _, id := range s.Sources.IDs() {
		if !s.Cited[id] {
			said = append(said, message.Message{Level: message.Advice, ID: "source-uncited", Source: s.SourcesFile,
				Span: s.Sources[id].Span, Text: fmt.Sprintf("no page and no calculation in use cites source %q", id),
				Note: fmt.Sprintf("cite it, as in [48 lb N/ac](source:%s), or take it out of this file", id)})
		}
	}
	return said
}
