package fact

// treeHazards can harm trees, or waste what they were to get.
var treeHazards = []Hazard{
	{
		ID: "feed-burns", Name: Text{English: "a feed that burns"}, Signal: Notice,
		Says:    Text{English: "Too much nitrogen in one feed burns young trees. Give more and smaller feeds."},
		Sources: []string{"growing-produce-babies"},
	},
	{
		ID: "liquid-first-leaf", Name: Text{English: "liquid feed on first-leaf trees"}, Signal: Notice,
		Says: Text{English: "Liquid UAN and CAN-17 burned many first-leaf trees, as a farm advisor of the University " +
			"of California saw, who advises granular material there, at least 18 in from the trunk."},
		Sources: []string{"growing-produce-babies"},
	},
	{
		ID: "liquid-drips", Name: Text{English: "a liquid that drips on few roots"}, Signal: Notice,
		Says: Text{English: "Any liquid feed is strong where it drips, and a first-leaf tree has few roots. Common " +
			"practice there is dry material."},
		Sources: []string{"common-practice"},
	},
	{
		ID: "near-trunk", Name: Text{English: "dry feed near the trunk"}, Signal: Notice,
		Says: Text{English: "Dry material burns near the trunk. Spread it over the wetted ground, at least 18 in from a " +
			"first-leaf trunk, and water it in."},
		Sources: []string{"growing-produce-babies"},
	},
	{
		ID: "season-total", Name: Text{English: "a season's nitrogen above what is printed"}, Signal: Notice,
		Says: Text{English: "More does not make young trees grow faster. It can burn them, and what they leave goes to the " +
			"groundwater. Count what soil and water bring, and put on less."},
		Sources: []string{"growing-produce-babies", "farm-progress-young", "common-practice"},
	},
	{
		ID: "out-of-leaf", Name: Text{English: "a feed out of leaf"}, Signal: Notice,
		Says: Text{English: "Trees take up nitrogen only while they have leaves, and rain takes away what they leave. Feed " +
			"from leaf-out on, and stop early enough for the wood to ripen before frost."},
		Sources: []string{"uc-four-rs"},
	},
	{
		ID: "cap-beyond-source", Name: Text{English: "a limit beyond what its source covers"}, Signal: Notice,
		Says: Text{English: "The limit for one feed is printed for trees of 1 to 5 years, and is not made larger for older " +
			"ones. They bear: split their nitrogen by the stages of the crop."},
		Sources: []string{"growing-produce-babies"},
	},
	{
		ID: "close-feeds", Name: Text{English: "feeds close together"}, Signal: Notice,
		Says:    Text{English: "Feeds that come too close add up to one big one. Start earlier, stop later, or put on less."},
		Sources: []string{"common-practice"},
	},
	{
		ID: "acidity", Name: Text{English: "soil that turns sour"}, Signal: Notice,
		Says: Text{English: "This sours the soil more than most materials do, most of all under an emitter. Watch the pH " +
			"there, and lime where it falls too low."},
		Sources: []string{"uc-nitrogen-table", "cornell-nrcca-37"},
	},
	{
		ID: "waterlogging", Name: Text{English: "waterlogged ground"}, Signal: Notice,
		Says: Text{English: "Do not feed or water a waterlogged root zone. Roots without air take up next to nothing, and " +
			"part of the nitrate is lost to the air as gas."},
		Sources: []string{"ifas-wet-trees"},
	},
	{
		ID: "leaching", Name: Text{English: "nitrogen that leaches"}, Signal: Notice,
		Says: Text{English: "What the roots do not take up can leach to the well. Water gently, and put on no more than " +
			"they take."},
		Sources: []string{"common-practice"},
	},
	{
		ID: "misses-roots", Name: Text{English: "a feed that misses the roots"}, Signal: Notice,
		Says: Text{English: "What falls where no roots are is lost to the tree and can leach. Wet a smaller circle, or " +
			"move the emitter nearer. Do not feed more to make up for it."},
		Sources: []string{"geometry"},
	},
	{
		ID: "leaf-want", Name: Text{English: "a leaf that is short"}, Signal: Notice,
		Says:    Text{English: "Have it looked at this season: water, roots and the sample itself, and then the feed."},
		Sources: []string{"almond-3364", "hazelnut-8786"},
	},
	{
		ID: "leaf-excess", Name: Text{English: "a leaf that has too much"}, Signal: Notice,
		Says:    Text{English: "More of it will not add crop. Put on less, and count what soil and water bring."},
		Sources: []string{"almond-3364", "hazelnut-8786"},
	},
}
