package wire

// Data is the data block of a page: the module that works every worksheet, and which cells of it the script must know.
// A list that is empty is left out, and the script has an empty one in its place.
type Data struct {
	Module []byte    `json:"m"`                // hexadecimal: a server packs it better than base64
	Sheets []Part    `json:"sheets"`           // in the order they are worked
	Fixed  []Fixed   `json:"fixed,omitempty"`  // inputs that no field sets
	Guards []Guarded `json:"guards,omitempty"` // values that are left out while their guard is 0
	Trends []Trend   `json:"trends,omitempty"` // what ranges are told of values that the module does not show
	Tables []Grid    `json:"tables,omitempty"` // the reckoners

	Exercises []Varying `json:"exercises,omitempty"`
	Marker    int       `json:"marker,omitempty"` // the first cell of the function that marks answers
}

// A Part is a worksheet's part in the page's module.
type Part struct {
	Refusals []int `json:"refusals"`        // cells that withhold its answers when they are not 0
	After    []int `json:"after,omitempty"` // the sheets whose answers it takes
}

// Fixed is an input with its number, or with the two ends of a range.
type Fixed struct {
	Cell int
	Low  float64
	High float64 `json:",omitempty"`
}

// Guarded is a cell whose value is there or not, and the cell that is 0 while it is not.
type Guarded struct{ Cell, Guard int }

// A Trend says that the value of a cell never goes down when that of another goes up (1), or never up (0).
type Trend struct{ Of, From, Up int }

// A Grid is a reckoner: one answer over a grid of two givens.
type Grid struct {
	Of     int     `json:"of"` // its sheet
	Down   Axis    `json:"down"`
	Across Axis    `json:"across"`
	Show   int     `json:"show"`
	Mark   *Span   `json:"mark,omitempty"`   // in the unit of the cell shown
	Follow *Follow `json:"follow,omitempty"` // the reader's own two numbers
}

// An Axis is the cell of a given, and its values along one side of a grid.
type Axis struct {
	Cell   int
	Values []float64
}

// A Span is the two ends of what a grid marks.
type Span struct{ Low, High End }

// An End is a number, or open where it is infinite.
type End float64

// Follow is the cells of the two numbers that a grid follows.
type Follow struct{ Down, Across int }

// A Varying is an exercise: a question whose numbers vary from card to card.
type Varying struct {
	Sheets []int  `json:"sheets"` // those of its calculations, and those that answers are put into
	Deal   Deal   `json:"deal"`
	Cards  int    `json:"cards"` // how many there are
	Picks  []Pick `json:"picks"` // the givens that vary, in the order of the deal; then lines of a report
	Asks   []Ask  `json:"asks"`  // the steps of the work, in order; what is asked is among them
}

// A Deal gives card n the place (offset + stride × n) modulo of in the list of all combinations.
type Deal struct{ Offset, Stride, Of int }

// A Pick is what varies from card to card: the cells that it fills, its values, and how each is written. A line of a
// report that nobody asks about has no cells, and a deal of its own.
type Pick struct {
	Cells  []int     `json:"cells"`
	Values []float64 `json:"values"`
	Names  []string  `json:"names"`
	Alone  *Deal     `json:"alone,omitempty"`
}

// An Ask is one thing that is asked: the cell of the right answer, the digits that are asked for (0 for a choice), the
// cell that an answer is put into, and the cell of what is right for the answers before (-1 where none comes before).
type Ask struct {
	Right, Digits, Answer, Again int
	Slips                        []Slip
}

// A Slip is a known wrong way to work an answer: the cell of what it gives, the cell that is 0 while nobody can make it
// (-1 for always), and 1 where it is the slip before this one, from the answers before.
type Slip struct{ Value, Open, Again int }

// A Syllabus is the data block of the page of a course.
type Syllabus struct {
	Code    string         `json:"code"` // what a code of a record has for the course and its edition
	Lessons []CourseLesson `json:"lessons"`
}

// A CourseLesson is a lesson of a course, in its place.
type CourseLesson struct {
	Name      string  `json:"name"` // the last part of its address
	Exercises []Check `json:"exercises"`
}

// A Check is an exercise of a lesson.
type Check struct {
	Name  string `json:"name"`
	Title string `json:"title"`
	Asks  int    `json:"asks"`  // how many answers a card asks for
	Cards int    `json:"cards"` // how many there are
}
