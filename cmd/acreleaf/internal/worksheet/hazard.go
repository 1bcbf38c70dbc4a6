package worksheet

import (
	"slices"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

// HazardIDs lists the ids of the hazards that a check may tell of, by the alphabet.
func HazardIDs() []string {
	var ids []string
	for _, h := range fact.Hazards() {
		ids = append(ids, h.ID)
	}
	slices.Sort(ids)
	return ids
}

// hazard reads the hazard that a check tells of, nil for none. It brings its own signal word.
func (r *definitionReader) hazard(c *config.Table) *fact.Hazard {
	id := c.Text("hazard")
	if id == "" {
		return nil
	}
	h, known := fact.FindHazard(id)
	ids := HazardIDs()
	for _, own := range r.hazards {
		ids = append(ids, own.ID)
		if own.ID == id {
			h, known = own.Hazard, true
		}
	}
	if !known {
		note := "write one of: " + strings.Join(ids, ", ") + "; or add it to site.yaml, below hazards:"
		if near, found := message.Nearest(id, ids); found {
			note = "write hazard: " + near + "; or add it to site.yaml, below hazards:"
		}
		c.Fault("hazard", "calculation-hazard", "there is no hazard “"+id+"”", note)
		return nil
	}
	if word := c.Text("signal"); word != "" && !strings.EqualFold(word, h.Signal.String()) {
		c.Fault("signal", "calculation-signal", "the hazard "+id+" has the signal word "+h.Signal.String()+
			", and this check says “"+word+"”", "take the signal out")
	}
	return &h
}
