package nitrogen

import "acreleaf/calc/sheet"

// textures are the classes of soil from the lightest to the heaviest. The notes have what another table gives, where
// it is far from ours.
func textures() []sheet.Option {
	return []sheet.Option{
		{Name: "sand", Label: "Sand", Note: "New Mexico State University gives 15 %."},
		{Name: "loamy-sand", Label: "Loamy sand", Note: "New Mexico State University gives 18 %."},
		{Name: "sandy-loam", Label: "Sandy loam", Note: "New Mexico State University gives 21 %."},
		{Name: "loam", Label: "Loam", Note: "New Mexico State University gives 31 %."},
		{Name: "silt-loam", Label: "Silt loam", Note: "New Mexico State University gives 35 %."},
		{Name: "sandy-clay-loam", Label: "Sandy clay loam", Note: "New Mexico State University gives 29 %."},
		{Name: "clay-loam", Label: "Clay loam", Note: "New Mexico State University gives 36 %."},
		{Name: "silty-clay-loam", Label: "Silty clay loam", Note: "New Mexico State University gives 40 %."},
		{Name: "sandy-clay", Label: "Sandy clay", Note: "New Mexico State University gives 33 %."},
		{Name: "silty-clay", Label: "Silty clay", Note: "New Mexico State University gives 40 %."},
		{Name: "clay", Label: "Clay", Note: "New Mexico State University gives 44 %. Cracks let water run ahead."},
	}
}

// fieldCapacity is the water that a soil holds once it has drained, as a part of its volume.
func fieldCapacity(s *sheet.Sheet, texture *sheet.Given) sheet.Term {
	return s.Listed("field-capacity", "%", texture, sheet.Cells(map[string]float64{
		"sand": 10, "loamy-sand": 12, "sandy-loam": 18, "loam": 28, "silt-loam": 31, "sandy-clay-loam": 27,
		"clay-loam": 36, "silty-clay-loam": 38, "sandy-clay": 36, "silty-clay": 41, "clay": 42,
	}), sheet.Fact{
		Label: "Field capacity by volume", Reads: "listed for this texture",
		Sources: []string{"saxton-rawls"},
		Note: "For 2.5 % organic matter, at a pull of 33 kPa. Sources differ by a few percent; these are mostly the lower, " +
			"so nitrate goes deeper. 10 % is 1.2 in of water in a foot of soil.",
	})
}
