package render

import "acreleaf/cmd/acreleaf/internal/kind"

// NumberWords show the place of a page among those of its kind.
type NumberWords struct {
	Guide    Sentence `yaml:"guide" blanks:"number"`
	Workshop Sentence `yaml:"workshop" blanks:"number"`
	Manual   Sentence `yaml:"manual" blanks:"number"`
}

// SetsWords are for the lists of the pages of a kind.
type SetsWords struct {
	Guide       SetWords `yaml:"guide"`
	Workshop    SetWords `yaml:"workshop"`
	Lesson      SetWords `yaml:"lesson"`
	Manual      SetWords `yaml:"manual"`
	Calculation SetWords `yaml:"calculation"`
}

// SetWords name all pages of a kind, and say what they are about.
type SetWords struct {
	All   string `yaml:"all"`
	About string `yaml:"about"`
}

// TurnsWords are for the ways to the pages before and after, by kind.
type TurnsWords struct {
	Guide  TurnWords `yaml:"guide"`
	Lesson TurnWords `yaml:"lesson"`
	Manual TurnWords `yaml:"manual"`
}

// TurnWords are for the ways to the pages before and after.
type TurnWords struct {
	Order    string `yaml:"order"`
	Previous string `yaml:"previous"`
	Next     string `yaml:"next"`
}

// Set is nil for a kind that is in no folder.
func (w *Words) Set(k kind.Kind) *SetWords {
	return map[kind.Kind]*SetWords{
		kind.Guide: &w.Sets.Guide, kind.Workshop: &w.Sets.Workshop, kind.Lesson: &w.Sets.Lesson,
		kind.Manual: &w.Sets.Manual, kind.Calculation: &w.Sets.Calculation,
	}[k]
}

// number is nil for a kind whose pages have no number.
func (w *Words) number(k kind.Kind) *Sentence {
	return map[kind.Kind]*Sentence{
		kind.Guide: &w.Numbers.Guide, kind.Workshop: &w.Numbers.Workshop, kind.Manual: &w.Numbers.Manual,
	}[k]
}

// turn is nil for a kind whose pages do not lead to each other.
func (w *Words) turn(k kind.Kind) *TurnWords {
	return map[kind.Kind]*TurnWords{
		kind.Guide: &w.Turns.Guide, kind.Lesson: &w.Turns.Lesson, kind.Manual: &w.Turns.Manual,
	}[k]
}
