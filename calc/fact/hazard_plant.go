package fact

// plantHazards can harm equipment, or cost money: lines, tanks, and a number that is not what it seems.
var plantHazards = []Hazard{
	{ID: "no-mixing", Signal: Notice, Sources: []string{"ucanr-mixing", "nrcs-nm-jar"}},
	{ID: "never-mixing", Signal: Notice, Sources: []string{"ucanr-mixing"}},
	{ID: "hard-water", Signal: Notice, Sources: []string{"ucanr-mixing"}},
	{ID: "salts-out", Signal: Notice, Sources: []string{"fluid-weights", "uan-article"}},
	{ID: "short-flush", Signal: Notice, Sources: []string{"ufifas-fertigation"}},
	{ID: "uneven-feed", Signal: Notice, Sources: []string{"ufifas-fertigation"}},
	{ID: "check-numbers", Signal: Notice, Sources: []string{"common-practice"}},
}
