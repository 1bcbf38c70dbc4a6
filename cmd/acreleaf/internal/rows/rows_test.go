package rows

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/message"
)

// harvest has one of each kind of given and answer. It is not from a book.
var harvest = sheet.New("harvest", func(s *sheet.Sheet) {
	bloom := s.Given("bloom", "days", sheet.Field{Label: "Full bloom", Date: true,
		Typical: 20840, Low: sheet.FirstDay, High: sheet.LastDay})
	wait := s.Given("wait", "days", sheet.Field{Label: "Days to harvest", Typical: 150, Low: 1, High: 250})
	load := s.Given("load", "lb", sheet.Field{Label: "Load", Typical: 100, Low: 0, High: 1e9, Optional: true, Lab: true})
	price := s.Given("unit-price", "$/lb", sheet.Field{Label: "Price", Typical: 2, Low: 0, High: 50, Optional: true})
	shaken := s.Choice("shaken", []sheet.Option{{Name: "by-hand"}, {Name: "once"}}, sheet.Field{Label: "Shaken"})
	s.Answer("day", "days", bloom.Plus(wait), sheet.Says{Label: "Harvest", Date: true})
	s.Answer("worth", "$", load.Times(price), sheet.Says{Label: "Worth", When: s.Stated(load).And(s.Stated(price))})
	s.Say(sheet.Note, shaken.Is("by-hand"), "Bring poles.")
	s.Say(sheet.Caution, wait.Less(s.Constant("early", "100 days", sheet.Fact{
		Sources: []string{"memory"}})), `{wait} is early; say "no, thanks".`)
})

// run works a text, and gives what comes out and what is said.
func run(t *testing.T, s *sheet.Sheet, text string, typed map[string]string) (out, said string) {
	t.Helper()
	var written, told bytes.Buffer
	entries := map[string]sheet.Entry{}
	for name, text := range typed {
		entry, err := s.FindGiven(name).Read(text)
		if err != nil {
			t.Fatal(err)
		}
		entries[name] = entry
	}
	tally, err := Job{Sheet: s, Typed: entries, Name: "blocks.csv", In: strings.NewReader(text), Out: &written,
		Report:   func(m message.Message) { message.Printer{}.PrintOne(&told, m) },
		Progress: func(int) {}}.Run()
	if err != nil {
		t.Fatal(err)
	}
	if (tally.Faults > 0) != (told.Len() > 0) || tally.Faulty > tally.Faults || tally.Faulty > tally.Rows {
		t.Errorf("%+v, and it said\n%s", tally, &told)
	}
	return written.String(), told.String()
}

const harvestHeader = "bloom,wait,shaken,load (lb),Unit price ($/lb)"

// What a good row may look like, and what comes out of it.
func TestRows(t *testing.T) {
	for _, c := range []struct{ name, row, want string }{
		{"a date", "2027-02-14,150 days,once,,", "2027-07-14,,,,"},
		{"dates from and to", "2027-02-14 to 2027-02-20,150 days,once,,", "2027-07-14 to 2027-07-20,,,,"},
		{"a number in the unit of its column", "2027-02-14,150 days,once,100,2.5", "2027-07-14,250,,,"},
		{"money with its sign", "2027-02-14,150 days,once,100,$2.50", "2027-07-14,250,,,"},
		{"a cell's own unit", "2027-02-14,150 days,once,16 oz,$2/oz", "2027-07-14,32,,,"},
		{"a range in the unit of its column", "2027-02-14,150 days,once,100 to 200,2–3", "2027-07-14,200 to 600,,,"},
		{"one of two is missing", "2027-02-14,150 days,once,100,", "2027-07-14,,,,"},
		{"spaces around", " 2027-02-14 , 150 days , once , 100 , 2 ", "2027-07-14,200,,,"},
		{"thousands", `2027-02-14,150 days,once,"1,200",2`, "2027-07-14,2400,,,"},
		{"thousands parted by a space", "2027-02-14,150 days,once,1 200,2", "2027-07-14,2400,,,"},
		{"thousands parted by a narrow space, with a unit", "2027-02-14,150 days,once,1\u202F200 lb,2", "2027-07-14,2400,,,"},
		{"a choice in capitals", "2027-02-14,150 days,ONCE,,", "2027-07-14,,,,"},
		{"a note", "2027-02-14,150 days,by-hand,,", "2027-07-14,,Bring poles.,,"},
		{"a caution", "2027-02-14,90 days,once,,", `2027-05-15,,,"CAUTION: 90 days is early; say ""no, thanks"".",`},
		{"a caution for a part", "2027-02-14,90 to 110 days,once,,", `2027-05-15 to 2027-06-04,,,"CAUTION: ` +
			`For some of these numbers: 90 to 100 days is early; say ""no, thanks"".",`},
		{"below what a lab finds", "2027-02-14,150 days,once,<5,2", `2027-07-14,0 to 10,"Load: the lab found less than ` +
			`it can measure, so it may be anything from 0 to 5 lb. The answers are for that range.",,`},
		{"small and large", "2027-02-14,150 days,once,0.0000001,1", "2027-07-14,1e-07,,,"},
		{"all digits", "2027-02-14,150 days,once,0.1,3", "2027-07-14,0.30000000000000004,,,"},
	} {
		out, said := run(t, harvest, harvestHeader+"\n"+c.row+"\n", nil)
		want := harvestHeader + ",day,worth ($),notes,cautions,error\n" + c.row + "," + c.want + "\n"
		if diff := cmp.Diff(want, out); diff != "" || said != "" {
			t.Errorf("%s (-want +got):\n%s%s", c.name, diff, said)
		}
	}
}

// What was given in one row is not there in the next.
func TestRowsDoNotMix(t *testing.T) {
	out, said := run(t, harvest, harvestHeader+"\n"+
		"2027-02-14,150 days,once,100,2\n"+"2027-02-14,150 days,once,,\n"+"2027-02-14,150 days,once,x,2\n"+
		"2027-02-14,150 days,once,100,\n", nil)
	rows := strings.Split(out, "\n")
	for i, end := range []string{"2,2027-07-14,200,,,", ",,2027-07-14,,,,", "such as 12 ppm NO3-N.\"", ",2027-07-14,,,,"} {
		if !strings.HasSuffix(rows[i+1], end) {
			t.Errorf("row %d is %s", i+1, rows[i+1])
		}
	}
	if strings.Count(said, "error:") != 1 || !strings.HasPrefix(said, "blocks.csv:4:26: error: load: ") {
		t.Errorf("said\n%s", said)
	}
}

// The output has the separator, the line ends and the byte order mark of the input.
func TestRowsKeepTheFormOfTheFile(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"wait,bloom\n1 days,2027-02-14\n", "wait,bloom,day,worth ($),notes,cautions,error\n" +
			"1 days,2027-02-14,2027-02-15,,,%,\n"},
		{"wait;bloom\r\n1 days;2027-02-14", "wait;bloom;day;worth ($);notes;cautions;error\r\n" +
			"1 days;2027-02-14;2027-02-15;;;%;\r\n"},
		{"\uFEFFwait\tbloom\n1 days\t2027-02-14", "\uFEFFwait\tbloom\tday\tworth ($)\tnotes\tcautions\terror\n" +
			"1 days\t2027-02-14\t2027-02-15\t\t\t%\t\n"},
		{"wait,bloom,\"a;b;c;d\"\n1 days,2027-02-14,\"x\"\n", "wait,bloom,\"a;b;c;d\",day,worth ($),notes,cautions,error\n" +
			"1 days,2027-02-14,\"x\",2027-02-15,,,%,\n"},
		{"wait,bloom,6\" pipe\n1 days,2027-02-14,5\"\n", "wait,bloom,\"6\"\" pipe\",day,worth ($),notes,cautions,error\n" +
			"1 days,2027-02-14,\"5\"\"\",2027-02-15,,,%,\n"},
		{"wait,bloom,a\n1 days,2027-02-14,-1\n1 days,2027-02-14,=1+1\n1 days,2027-02-14,@x\n",
			"wait,bloom,a,day,worth ($),notes,cautions,error\n1 days,2027-02-14,-1,2027-02-15,,,%,\n" +
				"1 days,2027-02-14,=1+1,2027-02-15,,,%,\n1 days,2027-02-14,@x,2027-02-15,,,%,\n"},
	} {
		out, said := run(t, harvest, c.text, map[string]string{"shaken": "once"})
		caution := `"CAUTION: 1 day is early; say ""no, thanks""."`
		if diff := cmp.Diff(strings.ReplaceAll(c.want, "%", caution), out); diff != "" || said != "" {
			t.Errorf("%q (-want +got):\n%s%s", c.text, diff, said)
		}
	}
}

// What we write ourselves is never a formula to a spreadsheet, whatever the cell that it quotes.
func TestRowsWriteNoFormulas(t *testing.T) {
	for _, cell := range []string{"=1+1", "+1", "-1", "@x", "\t=1", "=", "-", "+44 lb", "@sum(a1) lb"} {
		out, said := run(t, harvest, harvestHeader+"\n"+"2027-02-14,"+cell+","+cell+","+cell+",\n", nil)
		row := strings.Split(out, "\n")[1]
		fault := strings.SplitN(row, ",", 10)[9]
		if said == "" || !strings.HasPrefix(strings.TrimPrefix(fault, `"`), "wait: ") {
			t.Errorf("%q: the fault is %s", cell, fault)
		}
	}
}
