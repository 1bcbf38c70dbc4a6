package render

import "acreleaf/cmd/acreleaf/internal/wire"

// BlockWords is for the page about one block: what it is printed with, and what the script writes.
type BlockWords struct {
	Known     string   `yaml:"known"`
	KnownWhy  string   `yaml:"known-why"`
	CountedAs Sentence `yaml:"counted-as" blanks:"lacking,range"`
	Form      string   `yaml:"form"` // what a worksheet calls where its numbers are typed
	Answers   string   `yaml:"answers"`
	Feeds     string   `yaml:"feeds"`
	Reasons   string   `yaml:"reasons"`
	ForBlock  Sentence `yaml:"for-block" blanks:"amount"`
	Cautions  string   `yaml:"cautions"`
	Notes     string   `yaml:"notes"`
	Chain     string   `yaml:"chain"`

	Lost     string `yaml:"lost"` // where the script for what follows did not come, or not whole
	Blocks   string `yaml:"blocks"`
	KeptHere string `yaml:"kept-here"`
	Chosen   string `yaml:"chosen"`
	Example  string `yaml:"example"`
	Name     string `yaml:"name"`
	Keep     string `yaml:"keep"`
	Copy     string `yaml:"copy"`
	Rename   string `yaml:"rename"`
	Remove   string `yaml:"remove"`
	Save     string `yaml:"save"`
	Load     string `yaml:"load"`

	ShowBlock     Sentence `yaml:"show-block" blanks:"name"`
	ShowsBlock    string   `yaml:"shows-block"`
	ToExample     string   `yaml:"to-example"`
	NotKnown      string   `yaml:"not-known"`
	BlockLinked   Sentence `yaml:"block-linked" blanks:"name"`
	BlockOld      string   `yaml:"block-old"`
	BySpacing     string   `yaml:"by-spacing"`
	NameCut       string   `yaml:"name-cut"`
	BlockShown    Sentence `yaml:"block-shown" blanks:"name"`
	ExampleShown  string   `yaml:"example-shown"`
	BlockKept     Sentence `yaml:"block-kept" blanks:"name"`
	NameIt        string   `yaml:"name-it"`
	BlockRenamed  Sentence `yaml:"block-renamed" blanks:"name"`
	BlockRemoved  Sentence `yaml:"block-removed" blanks:"name"`
	OtherTab      Sentence `yaml:"other-tab" blanks:"name"`
	ShowIt        string   `yaml:"show-it"`
	AnotherBlock  string   `yaml:"another-block"`
	AsBefore      Sentence `yaml:"as-before" blanks:"name"`
	TheseToo      string   `yaml:"these-too"`
	Untouched     Sentence `yaml:"untouched" blanks:"names"`
	BlocksSaved   Sentence `yaml:"blocks-saved" blanks:"name"`
	BlocksLoaded  Sentence `yaml:"blocks-loaded" blanks:"name"`
	BlocksLarge   Sentence `yaml:"blocks-large" blanks:"name"`
	BlocksDamaged Sentence `yaml:"blocks-damaged" blanks:"name"`
	BlocksOther   Sentence `yaml:"blocks-other" blanks:"name"`
	BlocksNewer   Sentence `yaml:"blocks-newer" blanks:"name"`
	BlocksNotKept string   `yaml:"blocks-not-kept"`
	BlocksNotRead string   `yaml:"blocks-not-readable"`
}

// scriptWords are those that the script for blocks writes.
func (w *BlockWords) scriptWords() map[wire.Word]string {
	return map[wire.Word]string{
		wire.ShowBlock:     w.ShowBlock.pattern(),
		wire.ShowsBlock:    w.ShowsBlock,
		wire.ToExample:     w.ToExample,
		wire.BlockLinked:   w.BlockLinked.pattern(),
		wire.BlockOld:      w.BlockOld,
		wire.BySpacing:     w.BySpacing,
		wire.NameCut:       w.NameCut,
		wire.BlockShown:    w.BlockShown.pattern(),
		wire.ExampleShown:  w.ExampleShown,
		wire.BlockKept:     w.BlockKept.pattern(),
		wire.NameIt:        w.NameIt,
		wire.BlockRenamed:  w.BlockRenamed.pattern(),
		wire.BlockRemoved:  w.BlockRemoved.pattern(),
		wire.OtherTab:      w.OtherTab.pattern(),
		wire.ShowIt:        w.ShowIt,
		wire.AnotherBlock:  w.AnotherBlock,
		wire.AsBefore:      w.AsBefore.pattern(),
		wire.TheseToo:      w.TheseToo,
		wire.Untouched:     w.Untouched.pattern(),
		wire.BlocksSaved:   w.BlocksSaved.pattern(),
		wire.BlocksLoaded:  w.BlocksLoaded.pattern(),
		wire.BlocksLarge:   w.BlocksLarge.pattern(),
		wire.BlocksDamaged: w.BlocksDamaged.pattern(),
		wire.BlocksOther:   w.BlocksOther.pattern(),
		wire.BlocksNewer:   w.BlocksNewer.pattern(),
		wire.BlocksNotKept: w.BlocksNotKept,
		wire.BlocksNotRead: w.BlocksNotRead,
	}
}
