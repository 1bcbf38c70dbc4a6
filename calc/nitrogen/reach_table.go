package nitrogen

import "acreleaf/calc/sheet"

// textures are the classes of soil from the lightest to the heaviest. The notes have what another table gives, where
// it is far from ours.
func textures() []sheet.Option {
	return []sheet.Option{
		texture("sand", "Sand", "15 %."),
		texture("loamy-sand", "Loamy sand", "18 %."),
		texture("sandy-loam", "Sandy loam", "21 %."),
		texture("loam", "Loam", "31 %."),
		texture("silt-loam", "Silt loam", "35 %."),
		texture("sandy-clay-loam", "Sandy clay loam", "29 %."),
		texture("clay-loam", "Clay loam", "36 %."),
		texture("silty-clay-loam", "Silty clay loam", "40 %."),
		texture("sandy-clay", "Sandy clay", "33 %."),
		texture("silty-clay", "Silty clay", "40 %."),
		texture("clay", "Clay", "44 %. Cracks let water run ahead."),
	}
}

// texture is an option, with the figure of the other table.
func texture(name, label, other string) sheet.Option {
	return sheet.Option{Name: name, Label: label, Note: "New Mexico State University gives " + other,
		Sources: []string{"nmsu-field-capacity"}}
}

// fieldCapacity is the water that a soil holds once it has drained, as a part of its volume.
func fieldCapacity(s *sheet.Sheet, texture *sheet.Given) sheet.Term {
	return s.Listed("field-capacity", "%", texture, sheet.Cells(map[string]float64{
		"sand": 10, "loamy-sand": 12, "sandy-loam": 18, "loam": 28, "silt-loam": 31, "sandy-clay-loam": 27,
		"clay-loam": 36, "silty-clay-loam": 38, "sandy-clay": 36, "silty-clay": 41, "clay": 42,
	}), sheet.Fact{
		Label: "Field capacity by volume", Reads: "listed for this texture",
		Sources: []string{"saxton-rawls"},
		Note: "By their equation for the middle of each texture, 2.5 % organic matter and a pull of 33 kPa. Sources " +
			"differ by a few percent; these are mostly the lower, so nitrate goes deeper. 10 % is 1.2 in of water in a foot " +
			"of soil.",
	})
}
