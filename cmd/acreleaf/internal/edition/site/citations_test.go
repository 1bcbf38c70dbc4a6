package site

import (
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
)

const citingGuide = "An acre is [43,560 ft2](source:field-book \"in one acre\"), and [6 in](source:row-book) thick. " +
	"It is [43,560 ft2](source:field-book).\n\n" +
	"```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n" +
	"```worksheet label\ncalculation: nitrate-basis\nof: soil\nreported: 53 ppm NO3\n```\n"

// citing is a site with two sources of its own, and a figure of one that the calculations know.
func citing() fstest.MapFS {
	files := content(map[string]string{"soil": guide("Soil", 1, citingGuide)})
	files["sources.yaml"] = &fstest.MapFile{Data: []byte("row-book:\n  title: The book of rows\n  kind: memory\n" +
		"  figures:\n    6 in: the layer that a rule is for\n" +
		"field-book:\n  authors: Field office\n  year: 2001\n  title: The field book\n  number: FB 7\n  kind: handbook\n" +
		"  figures:\n    43560 ft2: in an acre\n" +
		"montana-soil:\n  figures:\n    2 lb N/ac: for each ppm in 6 in\n")}
	return files
}

var (
	citePattern = regexp.MustCompile(`id="taken_(\d+)" href="#source_(\d+)" role="doc-biblioref"`)
	backPattern = regexp.MustCompile(`href="#taken_(\d+)" role="doc-backlink"`)
)

// TestCitations holds, on a guide and on the page of a calculation, that sources are numbered as they are first used,
// and that every place leads to its source and every source back to all of its places.
func TestCitations(t *testing.T) {
	made := mustMake(t, citing())
	for _, name := range []string{"guides/soil/index.html", "calculations/soil-nitrogen/index.html"} {
		_, list, _ := strings.Cut(made[name], `role="doc-bibliography"`)
		if list == "" {
			t.Fatalf("%s has no list of sources", name)
		}
		of := map[string]string{} // the number of the source by the place that it is used at
		most := 0
		for _, found := range citePattern.FindAllStringSubmatch(made[name], -1) {
			of[found[1]] = found[2]
			number, err := strconv.Atoi(found[2])
			if err != nil || number > most+1 {
				t.Errorf("%s: source %d is used before source %d (%v)", name, number, most+1, err)
			}
			most = max(most, number)
		}
		back := map[string]string{}
		for i, entry := range strings.Split(list, `<li id="source_`)[1:] {
			number, entry, _ := strings.Cut(entry, `"`)
			if want := strconv.Itoa(i + 1); number != want {
				t.Errorf("%s: source %s stands at place %s of the list", name, number, want)
			}
			for _, found := range backPattern.FindAllStringSubmatch(entry, -1) {
				back[found[1]] = number
			}
		}
		if len(of) == 0 || !maps.Equal(of, back) {
			t.Errorf("%s: places lead to %v, and sources lead back to %v", name, of, back)
		}
	}
}

// TestCitationsJoin holds what the list of a guide says: a work is once, whoever names it, and a definition, which
// needs no page, does not be in it.
func TestCitationsJoin(t *testing.T) {
	made := mustMake(t, citing())
	_, list, _ := strings.Cut(made["guides/soil/index.html"], `role="doc-bibliography"`)
	tags := regexp.MustCompile(`<[^>]*>`)
	var got []string
	for _, entry := range strings.Split(list, `<li id="source_`)[1:] {
		_, entry, _ = strings.Cut(entry, ">")
		entry, _, _ = strings.Cut(entry, "</li>")
		got = append(got, strings.TrimSpace(tags.ReplaceAllString(strings.ReplaceAll(entry, "</p><p>", " "), "")))
	}
	want := []string{
		"Field office. 2001. The field book. FB 7. Handbook Used for 43,560 ft2 (2)",
		"The book of rows. From memory, not yet checked Used for 6 in",
		"Montana State University. Soil Scoop: questions to ask about soil tests. Handbook " +
			"Used for 2 lb/ac per ppm, 6 in",
		"Common practice. Used for 24 in, 200 lb N/ac present",
		"International Union of Pure and Applied Chemistry. Abridged standard atomic weights. Commission on Isotopic " +
			"Abundances and Atomic Weights. doi 10.1515/pac-2015-0305. Standard Used for 14.007, 62.004",
		"U.S. Environmental Protection Agency. 40 CFR 141.62: maximum contaminant levels for inorganic contaminants. " +
			"Code of Federal Regulations. 40 CFR 141.62. Standard Used for 10 ppm NO3-N",
		"State of California. 22 CCR 64482: required additional health information. California Code of Regulations. " +
			"22 CCR 64482. Standard Used for 5 ppm NO3-N",
	}
	if !slices.Equal(got, want) {
		t.Errorf("the list is\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	for _, part := range []string{
		`†1 <b>43,560 ft2</b>: in one acre. Field office 2001. <i>Handbook</i>`,
		`†2 <b>6 in</b>: the layer that a rule is for. The book of rows. <i>From memory`,
		`aria-label="Source 1: Field office 2001">†1</a>`,
		`Montana State University †3</a>. <i>Handbook</i>`,
	} {
		if !strings.Contains(made["guides/soil/index.html"], part) {
			t.Errorf("the guide does not say %q", part)
		}
	}
	if !strings.Contains(made["sources/index.html"], "<li><b>43560 ft2</b>: in an acre</li>") {
		t.Error("the bibliography does not say what a source gives")
	}
	if scoop := after(made["sources/index.html"], `<li id="montana-soil">`); !strings.Contains(scoop, "../guides/soil/") {
		t.Error("the bibliography does not say that a guide rests on a source through its calculation")
	}
}

// after is what a text has after a mark, as far as the next item that has an id.
func after(text, mark string) string {
	_, rest, _ := strings.Cut(text, mark)
	rest, _, _ = strings.Cut(rest, "<li id=")
	return rest
}

// TestCitationsOfReckoner holds that a reckoner says what it rests on when no worksheet of its page does.
func TestCitationsOfReckoner(t *testing.T) {
	files := citing()
	const table = "```reckoner\ncalculation: soil-nitrogen\ndown: depth = 6, 12 in\nacross: nitrate = 5, 10 ppm NO3-N\n" +
		"show: nitrogen\n```\n"
	const line = "<p>Where these numbers come from: 2 lb/ac per ppm <a class=\"cite\" id=\"taken_1\" href=\"#source_1\" " +
		"role=\"doc-biblioref\" aria-label=\"Source 1: Montana State University\">†1</a>, "
	files["guides/alone.md"] = &fstest.MapFile{Data: []byte(guide("Alone", 2, table))}
	files["guides/soil.md"] = &fstest.MapFile{Data: []byte(guide("Soil", 1, citingGuide+"\n"+table))}
	made := mustMake(t, files)
	if !strings.Contains(made["guides/alone/index.html"], line) {
		t.Errorf("the reckoner does not say %q", line)
	}
	if strings.Contains(made["guides/soil/index.html"], "<p>Where these") {
		t.Error("a reckoner says again what its worksheet says")
	}
}
