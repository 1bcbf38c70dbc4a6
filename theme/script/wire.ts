// What a printed page holds for its script. Made from package wire, and not to be changed by hand:
// go test ./cmd/acreleaf/internal/wire -update

/** An attribute of an element. */
export type Attribute =
  | "data-sheet" // the worksheet that an element belongs to: its place in the list of sheets
  | "data-cell" // the cell that a field fills
  | "data-presence" // the cell that is 0 while a field is empty
  | "data-others" // the cell for the kind of quantity, or the form, that a field is told in
  | "data-low" // the least that a field allows, in the unit of its cell
  | "data-high" // the most that a field allows
  | "data-start" // the example's number with all of its digits, where the field does not show it so
  | "data-start-high" // its upper end, where the example has a range
  | "data-day" // the number is a day
  | "data-lab" // a laboratory measures it, so it may be less than a number
  | "data-for" // the cells of the choices that a field belongs to
  | "data-unit-for" // the field that a list of units belongs to
  | "data-other" // it is of the second kind of quantity
  | "data-form" // the form that a unit tells an amount in
  | "data-limit" // the end of the allowed range that a word of a fault states: low or high
  | "data-show" // the cell whose value an element shows
  | "data-by" // the factor from the unit of the cell to the one that is shown
  | "data-si" // the factor to the other system of units
  | "data-unit" // what the unit beside a number is called in the other system
  | "data-typed" // a reader may have typed the number, so all of its digits are shown
  | "data-list" // the list of choices that calls the value by a name
  | "data-guard" // the cell that is 0 while the value is left out
  | "data-value" // a figure with all of its digits
  | "data-call" // in English, what a line of the work says of two numbers: the larger of
  | "data-scale" // what a unit hides in a line of the work: a million where ppm is told
  | "data-kind" // the cell that tells which kind of quantity is shown
  | "data-cents" // the numbers of a table are money
  | "data-when" // the cell that is 0 while a sentence or a line does not hold
  | "data-refusal" // the sentence says why there is no answer
  | "data-partly" // how a sentence begins that holds for a part of a range
  | "data-void-for" // the worksheet that a sentence is shown for while it waits for a number
  | "data-reset" // the worksheet that a button takes back to its example
  | "data-live-only" // a control that is of use once the page is live
  | "data-link" // a button that puts the page's numbers into its address
  | "data-take" // a button that opens what takes a worksheet along
  | "data-print" // the button that prints a page with all that is folded
  | "data-table" // the reckoner that an answer belongs to: its place in the list of tables
  | "data-row" // the row of an answer of a reckoner
  | "data-col" // its column
  | "data-drawn" // the rule that shapes follow, and the cells that it takes, with guards: "root-share 12 13/4"
  | "data-exercise" // an exercise: its place in the list of exercises
  | "data-picked" // the given that a number of its story is, by its place in the list of those that vary
  | "data-asked" // a part of it, by its place in the list of what is asked
  | "data-minutes" // how many the plan of a workshop has for an exercise
  | "data-course" // the way from a lesson to the page of its course
  | "data-fact" // the fact of a block that a field asks for, or that an answer is
  | "data-unknown" // what a field of a block counts as while nobody knows it, as it is typed
  | "data-unknown-in" // the unit of that, where there are several
  | "data-later" // what it counts as in trees that are older than first leaf, where that is not the same
  | "data-first" // that is for first leaf; of older trees the field is left empty
  | "data-untested" // the fact that warnings wait for while nobody knows it: what comes next is said then
  | "data-lesson" // its name there
  | "data-fits" // the factor from a unit to that of the answer; empty for one that does not fit
  | "data-there" // where the pages are listed that are kept on the device
  | "data-away" // the sentence that names the page which is not kept
;

/** A word or a sentence that the script writes itself. */
export type Word =
  | "to"
  | "said"
  | "below"
  | "order"
  | "not-detected"
  | "above"
  | "comma"
  | "no-number"
  | "no-unit"
  | "read-as"
  | "decimal"
  | "early"
  | "partly"
  | "set-aside"
  | "needed"
  | "use-again"
  | "perhaps"
  | "narrow"
  | "day"
  | "months"
  | "beside"
  | "waiting"
  | "passage-waiting"
  | "unanswered"
  | "none"
  | "undo"
  | "kept"
  | "linked"
  | "left-out"
  | "other-edition"
  | "unkept"
  | "copied"
  | "in-address"
  | "link-numbers"
  | "copy-answer"
  | "save-table"
  | "answer-copied"
  | "not-copied"
  | "no-answer"
  | "table-saved"
  | "columns"
  | "about"
  | "point"
  | "from-example"
  | "from-reader"
  | "from-block"
  | "code"
  | "code-page"
  | "code-full"
  | "no-address"
  | "elapsed"
  | "left"
  | "over"
  | "count"
  | "counted"
  | "heard-of"
  | "cleared"
  | "put-back"
  | "show-block"
  | "shows-block"
  | "to-example"
  | "block-linked"
  | "block-old"
  | "by-spacing"
  | "name-cut"
  | "block-shown"
  | "example-shown"
  | "block-kept"
  | "name-it"
  | "block-renamed"
  | "block-removed"
  | "other-tab"
  | "show-it"
  | "another-block"
  | "as-before"
  | "these-too"
  | "untouched"
  | "blocks-saved"
  | "blocks-loaded"
  | "blocks-large"
  | "blocks-damaged"
  | "blocks-other"
  | "blocks-newer"
  | "blocks-not-kept"
  | "blocks-not-readable"
  | "not-kept"
  | "not-readable"
  | "stays"
  | "on-card"
  | "on-card-open"
  | "card-of"
  | "back-today"
  | "back-on"
  | "opened-on"
  | "finished-on"
  | "lesson-begun"
  | "score"
  | "go-on"
  | "all-done"
  | "due-card"
  | "where-kept"
  | "lessons-finished"
  | "unfinished"
  | "right-of"
  | "saved"
  | "loaded"
  | "file-large"
  | "file-damaged"
  | "file-newer"
  | "file-other"
  | "file-edition"
  | "record-cleared"
  | "is-back"
  | "offline"
  | "keep-all"
  | "keep-rest"
  | "keeping"
  | "keep-page"
  | "keep-none"
  | "keep-whole"
  | "keep-drop"
  | "keep-gone"
  | "keep-signal"
  | "keep-changed"
  | "keep-room"
  | "keep-refused"
  | "size"
  | "new-edition"
  | "edition-use"
  | "edition-later"
  | "edition-failed"
  | "find-word"
  | "find-go"
  | "found-words"
;

/** Data is the data block of a page: the module that works every worksheet, and which cells of it the script must know.
 * A list that is empty is left out, and the script has an empty one in its place. */
export interface Data {
  m: string; // hexadecimal: a server packs it better than base64
  sheets: Part[]; // in the order they are worked
  fixed?: Fixed[]; // inputs that no field sets
  guards?: Guarded[]; // values that are left out while their guard is 0
  trends?: Trend[]; // what ranges are told of values that the module does not show
  tables?: Grid[]; // the reckoners
  exercises?: Varying[];
  marker?: number; // the first cell of the function that marks answers
}

/** A Part is a worksheet's part in the page's module. */
export interface Part {
  refusals: number[]; // cells that withhold its answers when they are not 0
  after?: number[]; // the sheets whose answers it takes
}

/** Fixed is an input with its number, or with the two ends of a range. */
export type Fixed = [cell: number, low: number, high?: number];

/** Guarded is a cell whose value is there or not, and the cell that is 0 while it is not. */
export type Guarded = [cell: number, guard: number];

/** A Trend says that the value of a cell never goes down when that of another goes up (1), or never up (0). */
export type Trend = [of: number, from: number, up: number];

/** A Grid is a reckoner: one answer over a grid of two givens. */
export interface Grid {
  of: number; // its sheet
  down: Axis;
  across: Axis;
  show: number;
  mark?: Span; // in the unit of the cell shown
  follow?: Follow; // the reader's own two numbers
}

/** An Axis is the cell of a given, and its values along one side of a grid. */
export type Axis = [cell: number, values: number[]];

/** A Span is the two ends of what a grid marks. */
export type Span = [low: End, high: End];

/** An End is a number, or open where it is infinite. */
export type End = number | null;

/** Follow is the cells of the two numbers that a grid follows. */
export type Follow = [down: number, across: number];

/** A Varying is an exercise: a question whose numbers vary from card to card. */
export interface Varying {
  sheets: number[]; // those of its calculations, and those that answers are put into
  deal: Deal;
  cards: number; // how many there are
  picks: Pick[]; // the givens that vary, in the order of the deal; then lines of a report
  asks: Ask[]; // the steps of the work, in order; what is asked is among them
}

/** A Deal gives card n the place (offset + stride × n) modulo of in the list of all combinations. */
export type Deal = [offset: number, stride: number, of: number];

/** A Pick is what varies from card to card: the cells that it fills, its values, and how each is written. A line of a
 * report that nobody asks about has no cells, and a deal of its own. */
export interface Pick {
  cells: number[];
  values: number[];
  names: string[];
  alone?: Deal;
}

/** An Ask is one thing that is asked: the cell of the right answer, the digits that are asked for (0 for a choice), the
 * cell that an answer is put into, and the cell of what is right for the answers before (-1 where none comes before). */
export type Ask = [right: number, digits: number, answer: number, again: number, slips: Slip[]];

/** A Slip is a known wrong way to work an answer: the cell of what it gives, the cell that is 0 while nobody can make it
 * (-1 for always), and 1 where it is the slip before this one, from the answers before. */
export type Slip = [value: number, open: number, again: number];

/** A Syllabus is the data block of the page of a course. */
export interface Syllabus {
  code: string; // what a code of a record has for the course and its edition
  lessons: CourseLesson[];
}

/** A CourseLesson is a lesson of a course, in its place. */
export interface CourseLesson {
  name: string; // the last part of its address
  exercises: Check[];
}

/** A Check is an exercise of a lesson. */
export interface Check {
  name: string;
  title: string;
  asks: number; // how many answers a card asks for
  cards: number; // how many there are
}
