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
var traitWords = map[Trait]struct {
	id, holds string
	called    Text
}{
	Acid:        {"acid", "This material is a strong acid.", Text{"strong acid", "ácido fuerte"}},
	Ammonia:     {"ammonia", "This material holds ammonia.", Text{"ammonia", "amoníaco"}},
	Pressure:    {"pressure", "", Text{"gas under pressure", "gas a presión"}},
	Oxidizer:    {"oxidizer", "", Text{"a nitrate that feeds a fire", "nitrato que aviva el fuego"}},
	Calcium:     {"calcium", "This material holds calcium.", Text{"calcium", "calcio"}},
	Sulfate:     {"sulfate", "This material holds sulfate.", Text{"sulfate", "sulfato"}},
	Phosphate:   {"phosphate", "This material holds phosphate.", Text{"phosphate", "fosfato"}},
	Nitrate:     {"nitrate", "This material holds nitrate.", Text{"nitrate", "nitrato"}},
	Solution:    {"uan", "This material is a solution of urea and ammonium nitrate.", Text{"UAN", "UAN"}},
	Thiosulfate: {"thiosulfate", "This material holds thiosulfate.", Text{"thiosulfate", "tiosulfato"}},
	Chlorine:    {"chlorine", "", Text{"chlorine (bleach)", "cloro (lejía)"}}, // no material has it: it cleans lines
}
