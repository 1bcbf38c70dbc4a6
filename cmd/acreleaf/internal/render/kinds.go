package render

import "acreleaf/cmd/acreleaf/internal/kind"

// NumberWords show the place of a page among those of its kind.
type NumberWords struct {
	Guide    Sentence `yaml:"guide" blanks:"number"`
	Workshop Sentence `yaml:"workshop" blanks:"number"`
	Lesson   Sentence `yaml:"lesson" blanks:"number"`
	Manual   Sentence `yaml:"manual" blanks:"number"`
}

// TurnsWords are for the ways to the pages before and after, by kind.
type TurnsWords struct {
	Guide  TurnWords `yaml:"guide"`
	Manual TurnWords `yaml:"manual"`
}

// TurnWords are for the ways to the pages before and after.
type TurnWords struct {
	Order    string `yaml:"order"`
	Previous string `yaml:"previous"`
	Next     string `yaml:"next"`
}

// number is nil for a kind whose pages have no number.
func (w *Words) number(k kind.Kind) *Sentence {
	return map[kind.Kind]*Sentence{
		kind.Guide: &w.Numbers.Guide, kind.Workshop: &w.Numbers.Workshop, kind.Lesson: &w.Numbers.Lesson,
		kind.Manual: &w.Numbers.Manual,
	}[k]
}

// turn is nil for a kind whose pages do not lead to each other.
func (w *Words) turn(k kind.Kind) *TurnWords {
	return map[kind.Kind]*TurnWords{kind.Guide: &w.Turns.Guide, kind.Manual: &w.Turns.Manual}[k]
}
