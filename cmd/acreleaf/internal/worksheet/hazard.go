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
	if id == "" && !c.Empty("hazard") {
		return nil // there is none, or it is no text, which was told
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
		note := "write one of: " + inLines(ids) + "; or add it to site.yaml, below hazards:"
		if id == "" {
			note = "write one of: " + inLines(ids) + "; or take the line out"
		}
		if near, found := message.Nearest(id, ids); found {
			note = "write hazard: " + near + "; or add it to site.yaml, below hazards:"
		}
		c.Fault("hazard", "calculation-hazard", noHazard(id), note)
		return nil
	}
	if word := c.Text("signal"); word != "" && !strings.EqualFold(word, h.Signal.String()) {
		c.Fault("signal", "calculation-signal", "the hazard "+id+" has the signal word "+h.Signal.String()+
			", and this check says “"+word+"”", "take the signal out")
	}
	return &h
}

func noHazard(id string) string {
	if id == "" {
		return "this check names no hazard after hazard:"
	}
	return "there is no hazard “" + id + "”"
}

// inLines lists ids in lines that are not too long to be printed whole.
func inLines(ids []string) string {
	const inLine = 8
	var lines []string
	for some := range slices.Chunk(ids, inLine) {
		lines = append(lines, strings.Join(some, ", "))
	}
	return strings.Join(lines, ",\n")
}
