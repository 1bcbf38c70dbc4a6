package render

import (
	"bytes"
	"fmt"
	"io/fs"
	"reflect"

	"go.yaml.in/yaml/v3"
)

// Words is every word of the interface in one language, as the file words/<language>.yaml gives them. A key of the
// file is the field's name in the tag yaml.
type Words struct {
	Page      PageWords      `yaml:"page"`
	Foot      FootWords      `yaml:"foot"`
	Date      DateWords      `yaml:"date"`
	Units     UnitWords      `yaml:"units"`
	Worksheet WorksheetWords `yaml:"worksheet"`
	Exercise  ExerciseWords  `yaml:"exercise"`
	Handout   HandoutWords   `yaml:"handout"`
	Course    CourseWords    `yaml:"course"`
	Progress  ProgressWords  `yaml:"progress"`
	Kept      KeptWords      `yaml:"kept"`
	Paper     PaperWords     `yaml:"paper"`
	Block     BlockWords     `yaml:"block"`
	Offline   OfflineWords   `yaml:"offline"`
	Leader    LeaderWords    `yaml:"leader"`
	Table     TableWords     `yaml:"table"`
	Reference ReferenceWords `yaml:"reference"`
	Drawing   DrawingWords   `yaml:"drawing"`
	Kinds     KindWords      `yaml:"kinds"`
	Signals   SignalWords    `yaml:"signals"`
	Home      HomeWords      `yaml:"home"`
	Sources   SourcesWords   `yaml:"sources"`
	Terms     TermsWords     `yaml:"terms"`
	Missing   MissingWords   `yaml:"missing"`
	Numbers   NumberWords    `yaml:"numbers"`
	Sets      SetsWords      `yaml:"sets"`
	Turns     TurnsWords     `yaml:"turns"`

	Calculation CalculationWords `yaml:"calculation"`

	Text TextWords `yaml:"text"`
	Book BookWords `yaml:"book"`

	Packet PacketWords `yaml:"packet"`
}

// BookWords is for what a reader takes along.
type BookWords struct {
	Contents   string `yaml:"contents"`
	Still      string `yaml:"still"`
	Live       string `yaml:"live"`     // before the address of the page
	OneCard    string `yaml:"one-card"` // in the places of these for a page with exercises alone
	Cards      string `yaml:"cards"`
	Answers    string `yaml:"answers"`
	Accessible string `yaml:"accessible"` // what a book tells of itself to those who choose one that they can read
}

// PacketWords is for a page in a file of its own, and for the whole site in one.
type PacketWords struct {
	OnSite   string `yaml:"on-site"` // after what is not in the file
	File     string `yaml:"file"`
	OnePage  string `yaml:"one-page"`
	There    string `yaml:"there"` // before the address of the site
	Ask      string `yaml:"ask"`   // where no address is known
	Together string `yaml:"together"`
	NoScript string `yaml:"no-script"`
}

// PageWords is for the masthead, the line at a glance and the ways to other pages.
type PageWords struct {
	Language      string   `yaml:"language"` // the language's name for itself
	Skip          string   `yaml:"skip"`
	SitePages     string   `yaml:"site-pages"`
	Home          string   `yaml:"home"`
	Sources       string   `yaml:"sources"`
	Languages     string   `yaml:"languages"`
	Untranslated  string   `yaml:"untranslated"` // there is no page in this language
	MadeUp        string   `yaml:"made-up"`
	Reviewed      Sentence `yaml:"reviewed" blanks:"date"`
	ReviewBy      Sentence `yaml:"review-by" blanks:"date"`
	Glance        string   `yaml:"glance"`
	Contents      string   `yaml:"contents"`
	Example       string   `yaml:"example"`
	ExampleFrom   Sentence `yaml:"example-from" blanks:"from"`
	WithoutScript string   `yaml:"without-script"`
	OneCard       string   `yaml:"one-card"` // in its place on a page with exercises alone
}

// FootWords is for the foot of a page.
type FootWords struct {
	Cite            string   `yaml:"cite"`
	Citation        Sentence `yaml:"citation" blanks:"office,title,date"`
	CitationUndated Sentence `yaml:"citation-undated" blanks:"office,title"`
	Changes         string   `yaml:"changes"`
	LastChange      Sentence `yaml:"last-change" blanks:"date"`
	Change          Sentence `yaml:"change" blanks:"date,text"`
	Contact         string   `yaml:"contact"`
	Licence         string   `yaml:"licence"`
	LocalRule       string   `yaml:"local-rule"`
	Invented        string   `yaml:"invented"`
}

// UnitWords is for the switch between the two units of every answer.
type UnitWords struct {
	Show   string `yaml:"show"`
	US     string `yaml:"us"`
	Metric string `yaml:"metric"`
}

// WorksheetWords is for worksheets.
type WorksheetWords struct {
	Kind                     Sentence `yaml:"kind" blanks:"number"`
	Given                    string   `yaml:"given"`
	More                     string   `yaml:"more"`
	MoreOf                   Sentence `yaml:"more-of" blanks:"count"`
	Work                     string   `yaml:"work"`
	Lines                    Sentence `yaml:"lines" blanks:"count"`
	OneLine                  string   `yaml:"one-line"`
	ByLine                   string   `yaml:"by-line"`
	Answer                   string   `yaml:"answer"`
	Optional                 string   `yaml:"optional"`
	Typical                  Sentence `yaml:"typical" blanks:"typical"`
	UnitOf                   Sentence `yaml:"unit-of" blanks:"label"`
	FromWorksheet            Sentence `yaml:"from-worksheet" blanks:"worksheet"`
	FaultRange               Sentence `yaml:"fault-range" blanks:"low,high,unit"`
	FaultRangeChosen         Sentence `yaml:"fault-range-chosen" blanks:"low,high"`
	FaultRangeOptional       Sentence `yaml:"fault-range-optional" blanks:"low,high,unit"`
	FaultRangeOptionalChosen Sentence `yaml:"fault-range-optional-chosen" blanks:"low,high"`
	FaultDay                 Sentence `yaml:"fault-day" blanks:"low,high"`
	FaultDayOptional         Sentence `yaml:"fault-day-optional" blanks:"low,high"`
	FaultLinked              Sentence `yaml:"fault-linked" blanks:"low,high,unit"`
	Order                    string   `yaml:"order"`
	NotDetected              string   `yaml:"not-detected"`
	Above                    string   `yaml:"above"`
	Comma                    Sentence `yaml:"comma" blanks:"number"`
	NoNumber                 Sentence `yaml:"no-number" blanks:"name"`
	NoUnit                   Sentence `yaml:"no-unit" blanks:"name"`
	ReadAs                   Sentence `yaml:"read-as" blanks:"name"`
	Decimal                  string   `yaml:"decimal"`
	Below                    Sentence `yaml:"below" blanks:"high"`
	Early                    string   `yaml:"early"`
	SetAside                 Sentence `yaml:"set-aside" blanks:"value,option"`
	Needed                   Sentence `yaml:"needed" blanks:"option"`
	UseAgain                 Sentence `yaml:"use-again" blanks:"value"`
	Waiting                  string   `yaml:"waiting"`
	PassageWaiting           string   `yaml:"passage-waiting"`
	Said                     Sentence `yaml:"said" blanks:"label,value"`
	Reset                    string   `yaml:"reset"`
	Yours                    string   `yaml:"yours"`
	Beside                   string   `yaml:"beside"`
	Unanswered               string   `yaml:"unanswered"`
	None                     string   `yaml:"none"`
	Constants                string   `yaml:"constants"`
	Code                     string   `yaml:"code"`
}

// ExerciseWords is for exercises.
type ExerciseWords struct {
	Kind     Sentence `yaml:"kind" blanks:"number"`
	Card     string   `yaml:"card"`
	OfCards  Sentence `yaml:"of-cards" blanks:"count"`
	Another  string   `yaml:"another"`
	Digits   Sentence `yaml:"digits" blanks:"count"`
	OneDigit string   `yaml:"one-digit"`
	Unit     string   `yaml:"unit"`
	UnitOf   Sentence `yaml:"unit-of" blanks:"label"`
	Check    string   `yaml:"check"`
	Hint     string   `yaml:"hint"`
	Solution string   `yaml:"solution"`
	Faces    string   `yaml:"faces"`
	Whole    string   `yaml:"whole"`
	ButLast  string   `yaml:"but-last"`
	Names    string   `yaml:"names"`
	Alone    string   `yaml:"alone"`
	More     string   `yaml:"more"`
	Less     string   `yaml:"less"`
	NoCard   Sentence `yaml:"no-card" blanks:"count"`
	Test     string   `yaml:"test"` // above what a laboratory looked for
	Result   string   `yaml:"result"`
}

// HandoutWords is for what is printed for a workshop.
type HandoutWords struct {
	Cards      string   `yaml:"cards"`
	Card       Sentence `yaml:"card" blanks:"number"`
	Work       string   `yaml:"work"`
	Answer     string   `yaml:"answer"`
	Unit       string   `yaml:"unit"`
	Check      Sentence `yaml:"check" blanks:"number"`
	Phone      string   `yaml:"phone"`
	Key        string   `yaml:"key"`
	KeyNote    string   `yaml:"key-note"`
	CardHead   string   `yaml:"card-head"`
	Slips      string   `yaml:"slips"`
	Alike      string   `yaml:"alike"`
	Steps      string   `yaml:"steps"`
	Worked     Sentence `yaml:"worked" blanks:"number"`
	SignIn     string   `yaml:"sign-in"`
	SignInNote string   `yaml:"sign-in-note"`
	Date       string   `yaml:"date"`
	Place      string   `yaml:"place"`
	Number     string   `yaml:"number"`
	Name       string   `yaml:"name"`
	Signature  string   `yaml:"signature"`
}

// KeptWords is for the line that says what the numbers of a page are, and for what keeps a reader's.
type KeptWords struct {
	Live         string `yaml:"live"`
	Cards        string `yaml:"cards"` // in its place on a page with exercises alone
	Undo         string `yaml:"undo"`
	Back         string `yaml:"back"`
	Link         string `yaml:"link"`
	Linked       string `yaml:"linked"`
	LeftOut      string `yaml:"left-out"`
	OtherEdition string `yaml:"other-edition"`
	Unkept       string `yaml:"unkept"`
	Copied       string `yaml:"copied"`
	InAddress    string `yaml:"in-address"`
}

// TableWords is for reckoners.
type TableWords struct {
	Marked    string   `yaml:"marked"`
	Near      string   `yaml:"near"`
	Marking   Sentence `yaml:"marking" blanks:"range"`
	Following Sentence `yaml:"following" blanks:"worksheet"`
}

// KindWords is the name of every kind of source, which is also how sure a constant is.
type KindWords struct {
	Definition     string `yaml:"definition"`
	Standard       string `yaml:"standard"`
	Handbook       string `yaml:"handbook"`
	WorkedExample  string `yaml:"worked-example"`
	Trial          string `yaml:"trial"`
	CommonPractice string `yaml:"common-practice"`
	Memory         string `yaml:"memory"`
}

// SignalWords is the signal words of ANSI Z535.6.
type SignalWords struct {
	Notice  string `yaml:"notice"`
	Caution string `yaml:"caution"`
	Warning string `yaml:"warning"`
	Danger  string `yaml:"danger"`
}

// HomeWords is for the home page.
type HomeWords struct {
	Questions    string   `yaml:"questions"`
	Example      Sentence `yaml:"example" blanks:"label,answer,from"`
	ExampleAlone Sentence `yaml:"example-alone" blanks:"label,answer"`
	Order        string   `yaml:"order"`
	AnySeason    string   `yaml:"any-season"`
	More         string   `yaml:"more"`
}

// SourcesWords is for the bibliography.
type SourcesWords struct {
	Title    string `yaml:"title"`
	Summary  string `yaml:"summary"`
	Cited    string `yaml:"cited"`
	NotCited string `yaml:"not-cited"`
	Visit    string `yaml:"visit"`
	Gives    string `yaml:"gives"`

	Numbered Sentence `yaml:"numbered" blanks:"number,source"`
	Used     string   `yaml:"used"`
	Record   Sentence `yaml:"record" blanks:"date"`
}

// MissingWords is for the page of an address that does not exist.
type MissingWords struct {
	Title   string `yaml:"title"`
	Summary string `yaml:"summary"`
	Next    string `yaml:"next"`
}

// TextWords is for what Markdown adds to an author's text.
type TextWords struct {
	Footnotes    string `yaml:"footnotes"`
	Footnote     string `yaml:"footnote"`
	FootnoteBack string `yaml:"footnote-back"`
	HeadingLink  string `yaml:"heading-link"`
	Table        string `yaml:"table"`
	Code         string `yaml:"code"`
	Example      string `yaml:"example"`
	Written      string `yaml:"written"`
	Made         string `yaml:"made"`
}

// name gives the name of a kind of source; a kind with no name is its own name.
func (k KindWords) name(kind string) string {
	switch kind {
	case "definition":
		return k.Definition
	case "standard":
		return k.Standard
	case "handbook":
		return k.Handbook
	case "worked-example":
		return k.WorkedExample
	case "trial":
		return k.Trial
	case "common-practice":
		return k.CommonPractice
	case "memory":
		return k.Memory
	}
	return kind
}

// word gives the signal word that a note's Signal calls for; another text is its own word.
func (s SignalWords) word(signal string) string {
	switch signal {
	case "NOTICE":
		return s.Notice
	case "CAUTION":
		return s.Caution
	case "WARNING":
		return s.Warning
	case "DANGER":
		return s.Danger
	}
	return signal
}

// LoadWords reads the words of a language from the folder words of files. A key that is missing, empty or not one of
// ours is an error, and so is a sentence that lacks one of its blanks or has one of its own.
func LoadWords(files fs.FS, language string) (*Words, error) {
	name := "words/" + language + ".yaml"
	text, err := fs.ReadFile(files, name)
	if err != nil {
		return nil, fmt.Errorf("no interface words for the language %q: %w", language, err)
	}
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	decoder.KnownFields(true)
	words := new(Words)
	if err := decoder.Decode(words); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if err := checkWords(reflect.ValueOf(words).Elem(), ""); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return words, nil
}

// checkWords walks every field below v, whose key is path.
func checkWords(v reflect.Value, path string) error {
	for i := range v.NumField() {
		field := v.Type().Field(i)
		key := path + field.Tag.Get("yaml")
		if err := checkWord(v.Field(i), key, field.Tag.Get("blanks")); err != nil {
			return err
		}
	}
	return nil
}

func checkWord(v reflect.Value, key, blanks string) error {
	switch word := v.Interface().(type) {
	case string:
		if word == "" {
			return fmt.Errorf("the key %s is missing or empty", key)
		}
	case Sentence:
		return word.check(key, blanks)
	case map[string]string:
		for name, text := range word {
			if text == "" {
				return fmt.Errorf("the key %s.%s is empty", key, name)
			}
		}
	case [12]string:
		for i, name := range word {
			if name == "" {
				return fmt.Errorf("the key %s has no name for month %d", key, i+1)
			}
		}
	default:
		return checkWords(v, key+".")
	}
	return nil
}
