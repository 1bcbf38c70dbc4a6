package fact

// treeHazards can harm trees, or waste what they were to get.
var treeHazards = []Hazard{
	{ID: "feed-burns", Signal: Notice, Sources: []string{"growing-produce-babies"}},
	{ID: "liquid-first-leaf", Signal: Notice, Sources: []string{"growing-produce-babies"}},
	{ID: "liquid-drips", Signal: Notice, Sources: []string{"common-practice"}},
	{ID: "near-trunk", Signal: Notice, Sources: []string{"growing-produce-babies"}},
	{ID: "season-total", Signal: Notice,
		Sources: []string{"growing-produce-babies", "farm-progress-young", "common-practice"}},
	{ID: "out-of-leaf", Signal: Notice, Sources: []string{"uc-four-rs"}},
	{ID: "cap-beyond-source", Signal: Notice, Sources: []string{"growing-produce-babies"}},
	{ID: "close-feeds", Signal: Notice, Sources: []string{"common-practice"}},
	{ID: "acidity", Signal: Notice, Sources: []string{"uc-nitrogen-table", "cornell-nrcca-37"}},
	{ID: "waterlogging", Signal: Notice, Sources: []string{"ifas-wet-trees"}},
	{ID: "leaching", Signal: Notice, Sources: []string{"common-practice"}},
	{ID: "misses-roots", Signal: Notice, Sources: []string{"geometry"}},
	{ID: "leaf-want", Signal: Notice, Sources: []string{"almond-3364", "hazelnut-8786"}},
	{ID: "leaf-excess", Signal: Notice, Sources: []string{"almond-3364", "hazelnut-8786"}},
}
