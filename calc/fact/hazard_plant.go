package fact

// plantHazards can harm equipment, or cost money: lines, tanks, and a number that is not what it seems.
var plantHazards = []Hazard{
	{
		ID: "no-mixing", Name: Text{English: "materials in one tank"}, Signal: Notice,
		Says: Text{English: "Do not mix materials in one tank or line. If the labels of both allow it, and neither " +
			"is acid or ammonia, first try a jar of them in your own water overnight, with goggles on: cloud, grit or heat " +
			"means no. Flush the lines between two materials."},
		Sources: []string{"ucanr-mixing", "nrcs-nm-jar"},
	},
	{
		ID: "never-mixing", Name: Text{English: "materials that are dangerous to mix"}, Signal: Notice,
		Says:    Text{English: "Do not mix. Flush the lines between two materials."},
		Sources: []string{"ucanr-mixing"},
	},
	{
		ID: "hard-water", Name: Text{English: "lime that plugs emitters"}, Signal: Notice,
		Says: Text{English: "Ammonia raises the pH of irrigation water. Then lime settles out of hard water and plugs " +
			"emitters: have the water tested for hardness first."},
		Sources: []string{"ucanr-mixing"},
	},
	{
		ID: "salts-out", Name: Text{English: "a solution that salts out"}, Signal: Notice,
		Says:    Text{English: "Do not leave it in a tank or a line that gets so cold: the salt plugs both."},
		Sources: []string{"fluid-weights", "uan-article"},
	},
	{
		ID: "short-flush", Name: Text{English: "a flush that is too short"}, Signal: Notice,
		Says: Text{English: "Water takes 20 to 30 minutes to the farthest emitter, and feed that stays in the lines feeds " +
			"slime and misses the far trees. Flush for 30 minutes or more."},
		Sources: []string{"ufifas-fertigation"},
	},
	{
		ID: "uneven-feed", Name: Text{English: "a feed that is uneven"}, Signal: Notice,
		Says: Text{English: "Near trees get more than far ones when the lines are not full, or the feed goes in within 30 " +
			"minutes. Run the water longer."},
		Sources: []string{"ufifas-fertigation"},
	},
	{
		ID: "check-numbers", Name: Text{English: "a number that is out of the ordinary"}, Signal: Notice,
		Says:    Text{English: "Check it before you go by the answer."},
		Sources: []string{"common-practice"},
	},
}
