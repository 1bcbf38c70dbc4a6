package fact

// peopleHazards can harm people.
var peopleHazards = []Hazard{
	{ID: "acid", Signal: Danger, Sources: []string{"nc-sulfuric", "niosh-pocket"}},
	{ID: "ammonia", Signal: Danger,
		Sources: []string{"iowa-ammonia", "minnesota-ammonia", "niosh-pocket", "north-dakota-ammonia"}},
	{ID: "pressure", Signal: Danger, Sources: []string{"niosh-pocket", "iowa-ammonia"}},
	{ID: "fire", Signal: Warning,
		Sources: []string{"epa-ammonium-nitrate", "noaa-potassium-nitrate", "common-practice"}},
	{ID: "backflow", Signal: Warning, Sources: []string{"kansas-backflow", "ufifas-fertigation"}},
	{ID: "drinking-water", Signal: Warning, Sources: []string{"epa-nitrate", "title-22-nitrate"}},
	{ID: "chlorine", Signal: Danger, Sources: []string{"ifas-chlorine", "niosh-pocket", "common-practice"}},
	{ID: "fumigation", Signal: Danger, Sources: []string{"epa-applicators"}},
	{ID: "raw-manure", Signal: Caution, Sources: []string{"usda-organic"}},
	{ID: "nitrate-to-wells", Signal: Caution, Sources: []string{"epa-nitrate"}},
}
