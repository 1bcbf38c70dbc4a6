package worksheet

import "testing"

// What a rate is for may be said before it, as the subject of the sentence.
func TestRateOfTheSubject(t *testing.T) {
	const sheets = "```worksheet need\ncalculation: tree-rate\nrate: 3 oz N/tree\ntrees: 110 trees/ac\n```\n\n"
	for _, c := range []struct {
		text string
		want int
	}{
		{"A tree gets [3 oz](worked:need.rate) of nitrogen.", 0},
		{"Give each tree about [3 oz N](worked:need.rate).", 0},
		{"Cada árbol recibe [3 oz](worked:need.rate).", 0},
		{"An acre takes [20.6 lb](worked:need.nitrogen).", 0},
		{"An acre takes [3 oz](worked:need.rate).", 1},
		{"A tree is tall. Put on [3 oz](worked:need.rate).", 1},
		{"A tree gets [4 oz](worked:need.rate).", 1},
		{"A tree gets [3 oz product](worked:need.rate).", 1},
	} {
		if _, said := bind(t, sheets+c.text+"\n"); len(said) != c.want {
			t.Errorf("%q: %v", c.text, said)
		}
	}
}
