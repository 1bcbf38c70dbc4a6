package render_test

import "acreleaf/cmd/acreleaf/internal/render"

func calculationPage() *render.Calculation {
	return &render.Calculation{
		Page: render.Page{Root: "../../", Home: "../../", Sources: "../../sources/", Address: "calculations/soil-nitrogen/",
			Title: "Nitrogen in the soil", Summary: "Turns a soil report into pounds of nitrogen an acre."},
		Name: "soil-nitrogen",
		Givens: []render.Asked{{Name: "nitrate", Label: "Nitrate on the report", Hint: "Choose the form.",
			Takes: "0 to 200 ppm NO3-N", Typical: "12 ppm NO3-N"}, {Name: "form", Label: "Form", Typical: "Nitrogen, as N",
			Options: []render.Told{{Text: "Nitrogen, as N"}, {Text: "Nitrate", Lang: "en"}}, Names: []string{"n", "no3"}}},
		Answers: []render.Asked{{Name: "nitrogen", Label: "Nitrogen in this layer", Takes: "lb N/ac"}},
		Tables: []render.Figures{{
			ID: "figures-material", Caption: render.Told{Text: "Material"},
			Columns: []render.Told{{Text: "Nitrogen, %"}, {Text: "Density, lb/gal"}},
			Rows: []render.FigureRow{
				{
					Name: "UAN-32", Label: render.Told{Text: "UAN-32, a solution"},
					Note:  render.Told{Text: "Read its density on the ticket."},
					Cells: []render.FigureCell{{Text: "32"}, {Text: "11.1", Sources: []int{1, 2}}},
				},
				{Name: "46-0-0", Label: render.Told{Text: "46-0-0, urea"},
					Cells: []render.FigureCell{{Text: "46"}, {Text: "–"}}},
			},
		}},
		Slips:     []render.Told{{Text: "A report in NO3 was read as NO3-N."}},
		Constants: soil().Constants,
		Cited: []render.Reference{
			{
				Entry: render.Source{Authors: "Roe, J.", Title: "Soil Scoop", Kind: "handbook"},
				Uses:  []render.Use{{Cite: 2, Text: "2,000,000 lb"}},
			},
			{
				Entry: render.Source{Authors: "IUPAC", Year: "2021", Title: "Weights", Kind: "standard"},
				Uses:  []render.Use{{Cite: 3, Text: "0.2259"}},
			},
		},
		Used: []render.Link{{Href: "../../guides/soil/", Text: "Nitrogen already in your soil"}},
		Code: `<pre class="code"><code><span class="keyword">var</span> soilNitrogen = ` +
			`sheet.New(<span class="string">"soil-nitrogen"</span>, <span class="keyword">func</span>(s *sheet.Sheet) ` +
			"{ <span class=\"comment\">// one sampled layer</span>\n</code></pre>",
	}
}
