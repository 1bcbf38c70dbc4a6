package fact

// A Trait is what a material must be handled for, or kept apart for.
type Trait uint16

// The traits. A material may have several.
const (
	Acid        Trait = 1 << iota // a strong acid
	Ammonia                       // gives off ammonia gas
	Pressure                      // a gas that is kept under pressure
	Oxidizer                      // a nitrate that feeds a fire
	Calcium                       // dissolved calcium
	Sulfate                       // dissolved sulfate
	Phosphate                     // dissolved phosphate
	Nitrate                       // dissolved nitrate
	Solution                      // urea and ammonium nitrate in one solution: UAN
	Thiosulfate                   // dissolved thiosulfate
	Chlorine                      // chlorine or bleach, for lines: no material has it
)

// Traits lists the traits, one bit each.
func Traits() []Trait {
	var all []Trait
	for t := Acid; t <= Chlorine; t <<= 1 {
		all = append(all, t)
	}
	return all
}

// traitIDs name the traits in the ids of hazards and of their texts.
var traitIDs = map[Trait]string{
	Acid: "acid", Ammonia: "ammonia", Pressure: "pressure", Oxidizer: "oxidizer", Calcium: "calcium", Sulfate: "sulfate",
	Phosphate: "phosphate", Nitrate: "nitrate", Solution: "uan", Thiosulfate: "thiosulfate", Chlorine: "chlorine",
}

// called is what a trait is called among those that another must not meet.
func (t Trait) called() Text { return text("trait." + traitIDs[t] + ".called") }
