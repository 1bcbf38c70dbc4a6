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
	Chlorine                      // chlorine or bleach, for lines
)

// Traits lists the traits, one bit each.
func Traits() []Trait {
	var all []Trait
	for t := Acid; t <= Chlorine; t <<= 1 {
		all = append(all, t)
	}
	return all
}

// traitWords say what a material with a trait holds, and what the trait is called among those that it must not meet.
var traitWords = map[Trait]struct{ id, holds, called string }{
	Acid:        {"acid", "This material is a strong acid.", "strong acid"},
	Ammonia:     {"ammonia", "This material holds ammonia.", "ammonia"},
	Pressure:    {"pressure", "", "gas under pressure"},
	Oxidizer:    {"oxidizer", "", "a nitrate that feeds a fire"},
	Calcium:     {"calcium", "This material holds calcium.", "calcium"},
	Sulfate:     {"sulfate", "This material holds sulfate.", "sulfate"},
	Phosphate:   {"phosphate", "This material holds phosphate.", "phosphate"},
	Nitrate:     {"nitrate", "This material holds nitrate.", "nitrate"},
	Solution:    {"uan", "This material is a solution of urea and ammonium nitrate.", "UAN"},
	Thiosulfate: {"thiosulfate", "This material holds thiosulfate.", "thiosulfate"},
	Chlorine:    {"chlorine", "", "chlorine (bleach)"}, // no material has it: it is what lines are cleaned with
}
