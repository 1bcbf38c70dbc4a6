package words

import "sync"

// Practice are the sentences that mark an answer to an exercise. A name in braces is filled in.
type Practice struct {
	Right       string `key:"right"` // {answer}
	UnitMissing string `key:"unit-missing"`
	UnitWrong   string `key:"unit-wrong"`
	Carried     string `key:"carried"`
	Slip        string `key:"slip"`       // {slip}
	SlipAgain   string `key:"slip-again"` // of one that was worked from an earlier answer
	Either      string `key:"either"`     // before several slips
	Shifted     string `key:"shifted"`
	Rounded     string `key:"rounded"` // {answer}
	Unknown     string `key:"unknown"`
	Hint        string `key:"hint"`   // {hint}
	Unread      string `key:"unread"` // of what is not one number
	Unchosen    string `key:"unchosen"`
	Unordered   string `key:"unordered"`
}

var practices sync.Map // of *Practice by language

// OfPractice are the sentences in a language.
func OfPractice(language string) *Practice { return told[Practice](&practices, practice, language) }
