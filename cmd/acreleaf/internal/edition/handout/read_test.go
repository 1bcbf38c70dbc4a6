package handout

import (
	"html"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Reading a handout as a person does: from the HTML alone.

func between(text, from, to string) string {
	_, text, _ = strings.Cut(text, from)
	text, _, _ = strings.Cut(text, to)
	return text
}

var tags = regexp.MustCompile(`<[^>]*>`)

// plain is the text of a piece of HTML.
func plain(piece string) string { return html.UnescapeString(tags.ReplaceAllString(piece, "")) }

// pieces are the parts of a text between two marks.
func pieces(text, from, to string) []string {
	var list []string
	for _, piece := range strings.Split(text, from)[1:] {
		piece, _, _ = strings.Cut(piece, to)
		list = append(list, piece)
	}
	return list
}

// cardsIn reads the cards: number, title, story, address of the code, lines of the report, and what is asked.
func cardsIn(t *testing.T, page string) [][]string {
	t.Helper()
	var list [][]string
	for _, card := range pieces(page, "<article>", "</article>") {
		one := []string{
			plain(between(card, `<p class="number">`, "</p>")), plain(between(card, "<h2>", "</h2>")),
			plain(between(card, `<p class="story">`, "</p>")), html.UnescapeString(between(card, `<a class="code" href="`, `"`)),
		}
		for _, line := range pieces(between(card, "<tbody>", "</tbody>"), "<tr>", "</tr>") {
			one = append(one, plain(line))
		}
		for _, ask := range pieces(between(card, "<ol class=\"asks\">", "</ol>"), "<li><p>", "</li>\n") {
			label, options, _ := strings.Cut(ask, "</p>")
			one = append(one, plain(label))
			for _, option := range pieces(options, "</i> ", "</li>") {
				one = append(one, plain(option))
			}
		}
		list = append(list, one)
	}
	return list
}

// keyIn reads the key: of each exercise its rows, with the units that are in the heads of the columns.
func keyIn(t *testing.T, page string) [][][]string {
	t.Helper()
	var list [][][]string
	for _, section := range pieces(page, "<section>", "</section>") {
		var rows [][]string
		for i, table := range pieces(section, "<table>", "</table>") {
			units := unitsOf(between(table, "<thead>", "</thead>"))
			for j, row := range pieces(between(table, "<tbody>", "</tbody>"), "<tr>", "</tr>") {
				cells := cellsOf(row, units)
				if i == 0 {
					rows = append(rows, cells)
				} else if cells[0] != rows[j][0] {
					t.Fatalf("row %d is of card %s in one table, and of %s in another", j, rows[j][0], cells[0])
				} else {
					rows[j] = append(rows[j], cells[1:]...)
				}
			}
		}
		list = append(list, rows)
	}
	return list
}

// stepsIn reads the tables of steps: of each exercise, by the number of the card.
func stepsIn(t *testing.T, page string) []map[int][]string {
	t.Helper()
	var list []map[int][]string
	for _, section := range pieces(page, "<section>", "</section>") {
		cards := map[int][]string{}
		for _, table := range pieces(section, `<table class="steps">`, "</table>") {
			heads := cell.FindAllStringSubmatch(between(table, "<thead>", "</thead>"), -1)
			for _, row := range pieces(between(table, "<tbody>", "</tbody>"), "<tr>", "</tr>") {
				cells := cell.FindAllStringSubmatch(row, -1)
				number, err := strconv.Atoi(cells[0][1])
				if err != nil || len(cells) != len(heads) {
					t.Fatalf("a row of %d cells below %d heads: %s", len(cells), len(heads), row)
				}
				for i, found := range cells[1:] {
					head := heads[i+1][1]
					text := plain(between(head, "<b>", "</b>")) + ": " + found[1]
					if unit := plain(between(head, "<span>", "</span>")); unit != "" {
						text += " " + unit
					}
					cards[number] = append(cards[number], text)
				}
			}
		}
		list = append(list, cards)
	}
	return list
}

var head = regexp.MustCompile(`<th (rowspan)?[^>]*>(.*?)</th>`)

// unitsOf are the units in the heads of the columns, in order: those of what is given are in the first row, and those
// of the answers in the second.
func unitsOf(thead string) []string {
	var units []string
	rows := pieces(thead, "<tr>", "</tr>")
	for i, row := range rows {
		for _, found := range head.FindAllStringSubmatch(row, -1) {
			if whole := found[1] != ""; whole == (i == 0) {
				units = append(units, plain(between(found[2], "<span>", "</span>")))
			}
		}
	}
	return units
}

var cell = regexp.MustCompile(`<t[hd][^>]*>(.*?)</t[hd]>`)

func cellsOf(row string, units []string) []string {
	var cells []string
	for i, found := range cell.FindAllStringSubmatch(row, -1) {
		text := plain(found[1])
		if units[i] != "" {
			text += " " + units[i]
		}
		cells = append(cells, text)
	}
	return cells
}

// slipsIn reads what the key says of the slips of each exercise.
func slipsIn(page string) [][]string {
	var list [][]string
	for _, section := range pieces(page, "<section>", "</section>") {
		var slips []string
		for _, slip := range pieces(section, "<dd>", "</dd>") {
			slips = append(slips, plain(slip))
		}
		list = append(list, slips)
	}
	return list
}
