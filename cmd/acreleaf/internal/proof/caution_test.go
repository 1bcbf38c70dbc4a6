package proof

import "testing"

const (
	injection = "```worksheet run\ncalculation: injection\nnitrogen: 6.9 lb N/ac\nacres: 12 ac\nmaterial: UAN-32\n" +
		"run: 6 h\nclean: 2 h\nflush: 1 h\nflow: 300 gpm\n```\n\n"
	ammonia = "```worksheet buy\ncalculation: material-amount\nnitrogen: 40 lb N/ac\nmaterial: 82-0-0\n```\n\n"
)

// A page that handles a hazard warns of that hazard, and one that names it in passing need not.
func TestCautions(t *testing.T) {
	for _, c := range []struct{ name, file, text, want string }{
		{"a calculation", "guides/a.md", injection, "caution-missing"},
		{"a calculation and its warning", "guides/a.md", injection + "> **WARNING** Have backflow protection.", ""},
		{"a quotation that is no signal", "guides/a.md", injection + "> Have backflow protection.", "caution-missing"},
		{"a warning of something else", "guides/a.md", ammonia + "> **DANGER** Acid burns.", "caution-missing"},
		{"a material", "guides/a.md", ammonia + "> **DANGER** Ammonia burns.", ""},
		{"a signal in Spanish", "guides/es-a.md", ammonia + "> **PELIGRO** El amoníaco quema.", ""},
		{"a signal in Spanish of something else", "guides/es-a.md", ammonia + "> **PELIGRO** El ácido quema.",
			"caution-missing"},
		{"a material that is none", "guides/a.md",
			"```worksheet buy\ncalculation: material-amount\nnitrogen: 40 lb N/ac\nmaterial: 12-0-0-26S\n```\n", ""},
		{"a link in passing", "guides/a.md", "Next: [anhydrous ammonia](b.md), [aqua ammonia](b.md).", ""},
		{"one word in passing", "guides/a.md", "Keep sulfuric acid out of this.", ""},
		{"an order", "guides/a.md", "Use a little sulfuric acid to lower the pH.", "caution-missing"},
		{"an order and its warning", "guides/a.md", "Use sulfuric acid.\n\n> **DANGER** Acid burns.", ""},
		{"an order to do another thing", "guides/a.md", "Use lime. Keep sulfuric acid out of this.", ""},
		{"an order to inject", "guides/a.md", "Wait. Inject the feed last.", "caution-missing"},
		{"an order to clean", "guides/a.md", "Flush the lines with acid.", "caution-missing"},
		{"an order with plain acid", "guides/a.md", "Pour the acid in last.", "caution-missing"},
		{"an order to clean with a named acid", "guides/a.md", "Wash it with muriatic acid.", "caution-missing"},
		{"an order to clean, and its warning", "guides/a.md", "Rinse it with acid.\n\n> **DANGER** Acid burns.", ""},
		{"orders without acid as a thing", "guides/a.md", "Apply lime where the soil is acid. Use acid-forming urea. " +
			"Treat the block with acid soil first. Add acid soils to the list. Wash fruit with boric acid.", ""},
		{"an order to clean in Spanish", "guides/es-a.md", "Limpie los goteros con ácido.", "caution-missing"},
		{"an order with plain acid in Spanish", "guides/es-a.md", "Eche el ácido al final.", "caution-missing"},
		{"Spanish orders without acid as a thing", "guides/es-a.md",
			"Ponga cal donde el suelo es ácido. Trate el bloque con ácido húmico.", ""},
		{"an order in Spanish", "guides/es-a.md", "Agregue el ácido sulfúrico al agua.", "caution-missing"},
		{"an order to inject in Spanish", "guides/es-a.md", "Inyecte el abono al final.", "caution-missing"},
		{"twice in one paragraph", "guides/a.md", "Anhydrous ammonia is a gas. Liquid ammonia is cold.", ""},
		{"two paragraphs", "guides/a.md", "Fill aqua ammonia slowly.\n\nRinse after aqua ammonia.", "caution-missing"},
		{"a list", "guides/a.md", "- Fill the ammonia tank.\n- Close the ammonia tank.", "caution-missing"},
		{"a sour soil", "guides/a.md",
			"## An acid soil\n\nThe soil is acid.\n\nAcid soils need lime.\n\nAmino acids help.", ""},
		{"ammonia lost to the air", "guides/a.md",
			"Urea loses ammonia.\n\nAmmonia goes into the air.\n\nAmmonium stays.", ""},
		{"a tool named twice", "guides/a.md", "Close the injector.\n\nThen inject.", ""},
		{"a tool at work", "guides/a.md", "Open the injector.\n\nInject.\n\nStop injecting.", "caution-missing"},
		{"a heading", "guides/a.md", "## When you inject\n\nLook at the clock.", "caution-missing"},
		{"roots that drink", "guides/a.md", "Roots drink the water.\n\nThey drink at noon.", ""},
		{"a well", "guides/a.md", "Is it drinking water?\n\nDo not drink from that well.", "caution-missing"},
		{"a well that is warned of", "guides/a.md",
			"Is it drinking water?\n\nDo not drink from that well.\n\n> **WARNING** Never let infants drink it.", ""},
		{"Spanish words", "guides/es-a.md", "## El agua potable\n\nPregunte.", "caution-missing"},
		{"a Spanish word with an accent in front", "guides/es-a.md",
			"Ácido sulfúrico.\n\nEl ácido sulfúrico.", "caution-missing"},
		{"Spanish words in passing", "guides/es-a.md", "El suelo es ácido.\n\nUn suelo ácido pide cal.", ""},
		{"nitrate in the water", "guides/a.md",
			"Nitrate in drinking water is harmful to babies. Have your drinking water tested.", "caution-missing"},
		{"the other order", "guides/a.md", "Is your drinking water low in nitrate?", "caution-missing"},
		{"a family that drinks", "guides/a.md", "If your family drinks the well water, have it tested.", "caution-missing"},
		{"baby formula", "guides/a.md", "Do not use this well for baby formula.", "caution-missing"},
		{"baby formula that is warned of", "guides/a.md",
			"Do not use this well for baby formula.\n\n> **WARNING** Do not let babies drink it.", ""},
		{"fertilizer through the system", "guides/a.md", "Run fertilizer through the irrigation system.",
			"caution-missing"},
		{"a grade through the drip", "guides/a.md", "Feed UAN-32 through the drip.", "caution-missing"},
		{"water through the drip", "guides/a.md", "Run clean water through the drip lines.", ""},
		{"a gas in the water", "guides/a.md", "Apply NH3 in the water run.", "caution-missing caution-missing"},
		{"a gas that soil loses", "guides/a.md", "A warm soil loses NH3 to the air.", ""},
		{"chlorine", "guides/a.md", "Clean emitters with chlorine.", "caution-missing"},
		{"a salt of chlorine", "guides/a.md", "Use potassium chloride with care.", ""},
		{"fumigation", "guides/a.md", "Fumigate before you plant.", "caution-missing"},
		{"ground that was fumigated", "guides/a.md", "This block was fumigated in the fall.", ""},
		{"fresh manure", "guides/a.md", "Spread fresh manure in the fall.", "caution-missing"},
		{"nitrate in Spanish", "guides/es-a.md", "El nitrato en el agua potable daña a los bebés.", "caution-missing"},
		{"a family in Spanish", "guides/es-a.md", "Si su familia toma el agua del pozo, analícela.", "caution-missing"},
		{"formula in Spanish", "guides/es-a.md", "No use este pozo para la fórmula de los bebés.", "caution-missing"},
		{"through the system in Spanish", "guides/es-a.md", "Pase el fertilizante por el sistema de riego.",
			"caution-missing"},
		{"a grade in Spanish", "guides/es-a.md", "Aplique UAN-32 por el goteo.", "caution-missing"},
		{"a gas in Spanish", "guides/es-a.md", "Aplique NH3 en el agua de riego.", "caution-missing caution-missing"},
		{"chlorine in Spanish", "guides/es-a.md", "Limpie los goteros con cloro.", "caution-missing"},
		{"fumigation in Spanish", "guides/es-a.md", "Fumigue antes de plantar.", "caution-missing"},
		{"the manual", "manual/a.md", injection, ""},
		{"the home page", "home.md", "## Inject\n", ""},
		{"the title", "guides/a.md", "---\ntitle: Injecting safely\nsummary: What to do.\nreviewed: 2026-09-14\n---\n\nGo.",
			"caution-missing"},
	} {
		if got := alone(t, c.file, c.text); got != c.want {
			t.Errorf("%s: %q and not %q", c.name, got, c.want)
		}
	}
}
