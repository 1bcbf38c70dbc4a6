package nitrogen

import "acreleaf/calc/sheet"

// textures are the classes of soil from the lightest to the heaviest. The notes have what another table gives, where
// it is far from ours.
func textures() []sheet.Option {
	var options []sheet.Option
	for _, name := range []string{
		"sand", "loamy-sand", "sandy-loam", "loam", "silt-loam", "sandy-clay-loam", "clay-loam", "silty-clay-loam",
		"sandy-clay", "silty-clay", "clay",
	} {
		options = append(options, sheet.Option{Name: name, Sources: []string{"nmsu-field-capacity"}})
	}
	return options
}

// fieldCapacity is the water that a soil holds once it has drained, as a part of its volume.
func fieldCapacity(s *sheet.Sheet, texture *sheet.Given) sheet.Term {
	return s.Listed("field-capacity", "%", texture, sheet.Cells(map[string]float64{
		"sand": 10, "loamy-sand": 12, "sandy-loam": 18, "loam": 28, "silt-loam": 31, "sandy-clay-loam": 27,
		"clay-loam": 36, "silty-clay-loam": 38, "sandy-clay": 36, "silty-clay": 41, "clay": 42,
	}), sheet.Fact{Sources: []string{"saxton-rawls"}})
}
