package wire

import "slices"

// The attributes of a page's elements.
const (
	Sheet     = "data-sheet"      // the worksheet that an element belongs to: its place in the list of sheets
	Cell      = "data-cell"       // the cell that a field fills
	Presence  = "data-presence"   // the cell that is 0 while a field is empty
	Others    = "data-others"     // the cell for the kind of quantity, or the form, that a field is told in
	Low       = "data-low"        // the least that a field allows, in the unit of its cell
	High      = "data-high"       // the most that a field allows
	Start     = "data-start"      // the example's number with all of its digits, where the field does not show it so
	StartHigh = "data-start-high" // its upper end, where the example has a range
	Day       = "data-day"        // the number is a day
	Lab       = "data-lab"        // a laboratory measures it, so it may be less than a number
	For       = "data-for"        // the cells of the choices that a field belongs to
	UnitFor   = "data-unit-for"   // the field that a list of units belongs to
	Other     = "data-other"      // it is of the second kind of quantity
	Form      = "data-form"       // the form that a unit tells an amount in
	Limit     = "data-limit"      // the end of the allowed range that a word of a fault states: low or high

	Show  = "data-show"  // the cell whose value an element shows
	By    = "data-by"    // the factor from the unit of the cell to the one that is shown
	SI    = "data-si"    // the factor to the other system of units
	Unit  = "data-unit"  // what the unit beside a number is called in the other system
	Typed = "data-typed" // a reader may have typed the number, so all of its digits are shown
	List  = "data-list"  // the list of choices that calls the value by a name
	Guard = "data-guard" // the cell that is 0 while the value is left out
	Value = "data-value" // a figure with all of its digits
	Call  = "data-call"  // in English, what a line of the work says of two numbers: the larger of
	Scale = "data-scale" // what a unit hides in a line of the work: a million where ppm is told
	Kind  = "data-kind"  // the cell that tells which kind of quantity is shown
	Cents = "data-cents" // the numbers of a table are money

	When     = "data-when"      // the cell that is 0 while a sentence or a line does not hold
	Refusal  = "data-refusal"   // the sentence says why there is no answer
	Partly   = "data-partly"    // how a sentence begins that holds for a part of a range
	VoidFor  = "data-void-for"  // the worksheet that a sentence is shown for while it waits for a number
	Reset    = "data-reset"     // the worksheet that a button takes back to its example
	LiveOnly = "data-live-only" // a control that is of use once the page is live
	Link     = "data-link"      // a button that puts the page's numbers into its address
	Take     = "data-take"      // a button that opens what takes a worksheet along
	PrintAll = "data-print"     // the button that prints a page with all that is folded

	Table  = "data-table" // the reckoner that an answer belongs to: its place in the list of tables
	Row    = "data-row"   // the row of an answer of a reckoner
	Column = "data-col"   // its column

	Drawn = "data-drawn" // the rule that shapes follow, and the cells that it takes, with guards: "root-share 12 13/4"

	Exercise  = "data-exercise"   // an exercise: its place in the list of exercises
	Picked    = "data-picked"     // the given that a number of its story is, by its place in the list of those that vary
	Asked     = "data-asked"      // a part of it, by its place in the list of what is asked
	Minutes   = "data-minutes"    // how many the plan of a workshop has for an exercise
	Course    = "data-course"     // the way from a lesson to the page of its course
	Fact      = "data-fact"       // the fact of a block that a field asks for, or that an answer is
	Unknown   = "data-unknown"    // what a field of a block counts as while nobody knows it, as it is typed
	UnknownIn = "data-unknown-in" // the unit of that, where there are several
	Later     = "data-later"      // what it counts as in trees that are older than first leaf, where that is not the same
	First     = "data-first"      // that is for first leaf; of older trees the field is left empty
	Untested  = "data-untested"   // the fact that warnings wait for while nobody knows it: what comes next is said then

	Lesson = "data-lesson" // its name there
	Fits   = "data-fits"   // the factor from a unit to that of the answer; empty for one that does not fit

	There = "data-there" // where the pages are listed that are kept on the device
	Away  = "data-away"  // the sentence that names the page which is not kept
)

// Inputs are the attributes that name a cell which the page writes to, and Outputs those that name one which it reads.
var (
	Inputs  = []string{Cell, Presence, Others}
	Outputs = []string{Show, When}
)

// A Word is a word or a sentence that the script writes itself. The press gives them to the script.
type Word string

// The words, by the file of words that each is of.
const (
	To             Word = "to"
	Said           Word = "said"
	Below          Word = "below"
	Order          Word = "order"
	NotDetected    Word = "not-detected"
	Above          Word = "above"
	Comma          Word = "comma"
	NoNumber       Word = "no-number"
	NoUnit         Word = "no-unit"
	ReadAs         Word = "read-as"
	Decimal        Word = "decimal"
	Early          Word = "early"
	Sometimes      Word = "partly"
	SetAside       Word = "set-aside"
	Needed         Word = "needed"
	UseAgain       Word = "use-again"
	Perhaps        Word = "perhaps"
	Narrow         Word = "narrow"
	DayPattern     Word = "day"
	Months         Word = "months"
	Beside         Word = "beside"
	Waiting        Word = "waiting"
	PassageWaiting Word = "passage-waiting"
	Unanswered     Word = "unanswered"
	None           Word = "none"
	Undo           Word = "undo"

	Kept         Word = "kept"
	Linked       Word = "linked"
	LeftOut      Word = "left-out"
	OtherEdition Word = "other-edition"
	Unkept       Word = "unkept"
	Copied       Word = "copied"
	InAddress    Word = "in-address"

	LinkNumbers  Word = "link-numbers"
	CopyAnswer   Word = "copy-answer"
	SaveTable    Word = "save-table"
	AnswerCopied Word = "answer-copied"
	NotCopied    Word = "not-copied"
	NoAnswer     Word = "no-answer"
	TableSaved   Word = "table-saved"
	Columns      Word = "columns"
	About        Word = "about"
	Point        Word = "point"
	FromExample  Word = "from-example"
	FromReader   Word = "from-reader"
	FromBlock    Word = "from-block"
	Code         Word = "code"
	CodePage     Word = "code-page"
	CodeFull     Word = "code-full"
	NoAddress    Word = "no-address"

	Elapsed Word = "elapsed"
	Left    Word = "left"
	Over    Word = "over"
	Count   Word = "count"
	Counted Word = "counted"
	HeardOf Word = "heard-of"
	Cleared Word = "cleared"
	PutBack Word = "put-back"

	ShowBlock     Word = "show-block"
	ShowsBlock    Word = "shows-block"
	ToExample     Word = "to-example"
	BlockLinked   Word = "block-linked"
	BlockOld      Word = "block-old"
	BySpacing     Word = "by-spacing"
	NameCut       Word = "name-cut"
	BlockShown    Word = "block-shown"
	ExampleShown  Word = "example-shown"
	BlockKept     Word = "block-kept"
	NameIt        Word = "name-it"
	BlockRenamed  Word = "block-renamed"
	BlockRemoved  Word = "block-removed"
	OtherTab      Word = "other-tab"
	ShowIt        Word = "show-it"
	AnotherBlock  Word = "another-block"
	AsBefore      Word = "as-before"
	TheseToo      Word = "these-too"
	Untouched     Word = "untouched"
	BlocksSaved   Word = "blocks-saved"
	BlocksLoaded  Word = "blocks-loaded"
	BlocksLarge   Word = "blocks-large"
	BlocksDamaged Word = "blocks-damaged"
	BlocksOther   Word = "blocks-other"
	BlocksNewer   Word = "blocks-newer"
	BlocksNotKept Word = "blocks-not-kept"
	BlocksNotRead Word = "blocks-not-readable"

	NotKept      Word = "not-kept"
	NotReadable  Word = "not-readable"
	Stays        Word = "stays"
	OnCard       Word = "on-card"
	OnCardOpen   Word = "on-card-open"
	CardOf       Word = "card-of"
	BackToday    Word = "back-today"
	BackOn       Word = "back-on"
	OpenedOn     Word = "opened-on"
	FinishedOn   Word = "finished-on"
	Begun        Word = "lesson-begun"
	Score        Word = "score"
	GoOn         Word = "go-on"
	AllDone      Word = "all-done"
	Due          Word = "due-card"
	Where        Word = "where-kept"
	Through      Word = "lessons-finished"
	Unfinished   Word = "unfinished"
	RightOf      Word = "right-of"
	Saved        Word = "saved"
	Loaded       Word = "loaded"
	FileLarge    Word = "file-large"
	FileDamaged  Word = "file-damaged"
	FileNewer    Word = "file-newer"
	FileOther    Word = "file-other"
	FileEdition  Word = "file-edition"
	RecordClear  Word = "record-cleared"
	RecordIsBack Word = "is-back"

	Offline       Word = "offline"
	KeepAll       Word = "keep-all"
	KeepRest      Word = "keep-rest"
	Keeping       Word = "keeping"
	KeepPage      Word = "keep-page"
	KeepNone      Word = "keep-none"
	KeepWhole     Word = "keep-whole"
	KeepDrop      Word = "keep-drop"
	KeepGone      Word = "keep-gone"
	KeepSignal    Word = "keep-signal"
	KeepChanged   Word = "keep-changed"
	KeepRoom      Word = "keep-room"
	KeepRefused   Word = "keep-refused"
	Size          Word = "size"
	Edition       Word = "new-edition"
	EditionUse    Word = "edition-use"
	EditionLater  Word = "edition-later"
	EditionFailed Word = "edition-failed"

	FindWord   Word = "find-word"
	FindGo     Word = "find-go"
	FoundWords Word = "found-words"
)

// WordsOfPage are those of the script that makes a page live, WordsOfAfter those of the one that comes after,
// WordsOfPaper those of the one that takes a page along, WordsOfPractice those of the one for exercises, WordsOfWall
// those of the one of the leader's page, WordsOfBlock those of the one that shows a block, WordsOfBlocks those of the
// page about one, WordsOfCourse those of the one of courses and lessons, WordsOfOffline those of the one that keeps
// pages on the device, WordsOfDrawing those of the one for drawings, and WordsOfFind those of the one that finds a word
// in the index of terms.
var (
	WordsOfPage = []Word{To, Said, Below, Order, NotDetected, Above, Comma, NoNumber, NoUnit, ReadAs, Decimal, Early,
		Sometimes, SetAside, Needed, UseAgain, Perhaps, Narrow, DayPattern, Months, Beside, Waiting, PassageWaiting,
		Unanswered, None, Undo}
	WordsOfAfter = []Word{To, DayPattern, Months, Undo, Kept, Linked, LeftOut, OtherEdition, Unkept, Copied, InAddress}
	WordsOfPaper = []Word{To, LinkNumbers, CopyAnswer, SaveTable, AnswerCopied, NotCopied,
		NoAnswer, TableSaved, Columns, About, Point, FromExample, FromReader, FromBlock, Code, CodePage, CodeFull,
		NoAddress}
	WordsOfPractice = []Word{To, Decimal, Sometimes, Perhaps, Narrow, DayPattern, Months}
	WordsOfWall     = append(slices.Clone(WordsOfPractice), Elapsed, Left, Over, Count, Counted, HeardOf, Cleared, PutBack)
	WordsOfBlock    = []Word{ShowBlock, ShowsBlock, ToExample, BlockOld, BySpacing}
	WordsOfBlocks   = []Word{LeftOut, Copied, InAddress, PutBack, BlockLinked, NameCut, BlockShown,
		AnotherBlock, AsBefore, TheseToo, Untouched, ExampleShown, BlockKept, NameIt, BlockRenamed, BlockRemoved, OtherTab,
		ShowIt, BlocksSaved, BlocksLoaded, BlocksLarge, BlocksDamaged, BlocksOther, BlocksNewer, BlocksNotKept, BlocksNotRead}
	WordsOfCourse = []Word{PutBack, NotKept, NotReadable, Stays, OnCard, OnCardOpen, CardOf, BackToday, BackOn, OpenedOn,
		FinishedOn, Begun, Score, GoOn, AllDone, Due, Where, Through, Unfinished, RightOf, Saved, Loaded, FileLarge,
		FileDamaged, FileNewer, FileOther, FileEdition, RecordClear, RecordIsBack}
	WordsOfDrawing = []Word{Months}
	WordsOfOffline = []Word{Offline, KeepAll, KeepRest, Keeping, KeepPage, KeepNone, KeepWhole, KeepDrop,
		KeepGone, KeepSignal, KeepChanged, KeepRoom, KeepRefused, Size, Edition, EditionUse, EditionLater, EditionFailed}
	WordsOfFind = []Word{FindWord, FindGo, FoundWords}
)
