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

// hazard reads the hazard that a check tells of, "" for none. It brings its own signal word.
func hazard(c *config.Table) string {
	id := c.Text("hazard")
	if id == "" {
		return ""
	}
	h, known := fact.FindHazard(id)
	if !known {
		note := "write one of: " + strings.Join(HazardIDs(), ", ")
		if near, found := message.Nearest(id, HazardIDs()); found {
			note = "write hazard: " + near
		}
		c.Fault("hazard", "calculation-hazard", "there is no hazard “"+id+"”", note)
		return ""
	}
	if word := c.Text("signal"); word != "" && !strings.EqualFold(word, h.Signal.String()) {
		c.Fault("signal", "calculation-signal", "the hazard "+id+" has the signal word "+h.Signal.String()+
			", and this check says “"+word+"”", "take the signal out")
	}
	return id
}
