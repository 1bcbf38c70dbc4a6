package render

import (
	"html/template"

	"acreleaf/cmd/acreleaf/internal/kind"
)

// A Site is what every page of one language of a site states about it. An empty text leaves its part out.
type Site struct {
	Language      string // BCP 47 code of the pages, such as "en"
	Office        string // the office that publishes
	Crop          string // what the office writes about, in a word or two
	Tagline       string
	Invented      bool   // the office is made up, and every page says so
	Notice        string // says in a sentence that the content is invented
	Base          string // absolute address of the site with its trailing slash; empty when none is set
	Licence       string
	Contact       string
	ContactHref   string
	LocalRule     string // the notice that local rules are above the bulletin
	Style         string // way from the site's root to the style sheet
	Icon          string // way from the site's root to its icon
	Ranges        string // way from the site's root to the script that works ranges; the page's script loads it
	Practice      string // way from the site's root to the script for exercises; the page's script loads it
	CardStyle     string // way from the site's root to the style of exercises
	BlockScript   string // way from the site's root to the script for blocks; a page loads it where one is kept
	BlocksScript  string // the same of the page about one block
	BlockStyle    string // way from the site's root to the style of the page about one block
	CourseStyle   string // way from the site's root to the style of courses and lessons
	CourseScript  string // way from the site's root to the script of courses and lessons
	Wall          string // way from the site's root to the script of the leader's page, in the place of Practice
	WallStyle     string // way from the site's root to the style of the leader's page
	After         string // way from the site's root to the script for what comes after; the page's script loads it
	Paper         string // way from the site's root to the script that takes a page along; a page loads it later still
	DrawingScript string // way from the site's root to the script for drawings; a page that has one loads it
	DrawingStyle  string // way from the site's root to the style of drawings
	Script        string // way from the site's root to the script; empty for a site without one
	Card          string // way from the site's root to the picture that a message shows which links to a page
	Offline       string // way from the site's root to the script that keeps pages on the device
	Find          string // way from the site's root to the script that finds a word in the index of terms

	LanguageScript string // way from the site's root to what takes the language of a first visit; empty for one language
}

// A Link is a place to go to and its text.
type Link struct{ Href, Text string }

// A Language is one language that a page can be read in.
type Language struct {
	Code, Name string // "es", "Español"
	Href       string // way from this page to its twin
	Address    string // way from the site's root to its twin, for hreflang: "es/guides/soil/"
	Current    bool   // the language of this page

	// Index leads from the index of words to that one, in that language.
	Index string

	// Lacks says, in that language, that there is no twin in it. Name and Href are then those of its home page.
	Lacks string
}

// A Page is what the frame of any page needs. Ways are relative to the page, so that the site works in any folder.
type Page struct {
	Root      string // way to the site's root, "" at the root itself, else with its trailing slash: "../../"
	Home      string // way to the home page
	Up        *Link  // way to the list of the pages of its kind; nil for none
	Sources   string // way to the bibliography; empty when there is none
	Terms     string // way to the index of terms
	Address   string // way from the site's root to this page: "guides/soil/"
	Title     string
	Summary   string
	Languages []Language // where the site has several: those of this page, and those that it lacks
	Unlisted  bool       // search engines are asked not to list it
	Feed      string     // way from the site's root to the feed of the language, for its home page; empty for none
	Astray    bool       // it is served at any address, so that it can have no script

	TitleLang   string // where it is not the language of the page; so is SummaryLang of the summary
	SummaryLang string
}

// A Guide is a bulletin with its worksheets, or a page of the author's manual.
type Guide struct {
	Page     Page
	Kind     kind.Kind
	Contents []Link // the parts of the page
	Crop     string // when it differs from the site's
	Season   string // when in the season its work falls, such as "before bloom"
	Number   int    // place in the season's order; 0 for none
	Reviewed string // date as 2026-09-14; empty for never
	Changed  string // the day of the last change, or else of the last review; empty for neither
	Changes  []Change
	ReviewBy string // date by which it should be reviewed again; empty for none
	Glance   []Glance
	From     string        // the numbers that all of its answers are worked from; empty where they are not the same
	Body     template.HTML // the text, made from Markdown
	Module   []byte        // the JSON of the data block "module"; nil for a guide without worksheets
	Cited    []Reference   // what its numbers rest on, in the order of their numbers
	Previous *Link         // the guide before it in the season; nil for none
	Next     *Link
	Lesson   *Lesson // nil for a page that is none
	Course   *Course // for the page of a course
	Block    *Block  // for the page about one block

	Exercises, Drawings bool // whether its text has any
}

// A Change is what somebody changed on a page, and on which day: 2026-09-14. The newest comes first.
type Change struct{ Day, Text string }

// A Glance is one answer in the line at the top of a guide.
type Glance struct {
	Sheet int    // index of the worksheet that answers
	Href  string // way to the worksheet: "#worksheet-soil"
	Shown Shown
	Label string // what it is
	Lang  string // of the label, where it is not that of the page
}

// A Piece is a run of text, or a value of a worksheet.
type Piece struct {
	Text  string
	Shown *Shown // nil for plain text
}

// Home lists the guides in the order of the season's work.
type Home struct {
	Page      Page
	Intro     template.HTML // the text of content/home.md; may be empty
	Module    []byte        // as in Guide
	Cited     []Reference   // as in Guide
	Questions []Question
	Seasons   []Season
	More      []Link // ways to the lists of the other pages
}

// A Season is a stretch of the year and the guides whose work falls in it.
type Season struct {
	Name   string // empty for guides of any time of year
	Guides []Entry
}

// An Index lists the pages of a folder.
type Index struct {
	Page    Page
	Of      kind.Kind // what it lists
	Entries []Entry
	Course  *Course // in place of the entries, for the folder of a course
}

// An Entry is a page as a list has it.
type Entry struct {
	Number               int
	Title, Summary, Href string
	Lang, SummaryLang    string // of the title and the summary, where these are not in the language of the page
	Example              Example
}

// An Example is what a page works out for its own numbers. The zero Example is none.
type Example struct {
	Label  string // what it is: "Nitrogen in this layer"
	Lang   string // of the label, where it is not that of the page
	Answer string // "48 lb N/ac"
	From   string // "12 ppm NO3-N, 12 in"
}

// A Question is one that people come with, and the page that answers it.
type Question struct{ Text, Href, Summary string }

// Sources is the bibliography.
type Sources struct {
	Page    Page
	Entries []Source
}

// A Source is one entry of the bibliography, at the anchor of its ID.
type Source struct {
	ID                              string
	Authors, Year, Title, Publisher string
	Address                         string // web address; empty for none
	Number                          string // by which a library finds it; empty for none
	Kind                            string // one of the kinds of package calc/fact
	Note                            string
	TitleLang, NoteLang             string // where they are not the language of the page
	Figures                         []Figured
	Cited                           []Link // the guides that use it
}

// Figured is a figure that a source gives, and what it is the figure of.
type Figured struct{ Text, For, Lang string } // Lang where For is not in the language of the page

// Missing is the page for an address that does not exist. A host serves it at any depth, so the ways of its Page
// must be absolute when the site's base address is known.
type Missing struct {
	Page   Page
	Ways   []Link
	Others []MissingIn // the same in the other languages of the site, since a host has one such page for all
}

// MissingIn is what the page for a missing address says in one more language.
type MissingIn struct {
	Lang  string
	Words *Words
	Ways  []Link
}
