package site

import (
	"regexp"
	"strings"
	"testing"
)

// A range on a worksheet that nothing links to changes no byte of another worksheet, and no answer that a sentence
// states: the size of a feed of 20 to 40 lb of nitrogen an acre, for 110 trees in first leaf, is 0.75 to 1 oz.
func TestUnlinkedRangesChangeNoBytes(t *testing.T) {
	feeds := "Each is [0.75 to 1 oz a tree](worked:feeds.each).\n\n" + block("feeds", "feed-schedule",
		"nitrogen: 20 to 40 lb N/ac", "trees: 110 trees/ac", "leaf: 1", "first: 2027-04-15", "last: 2027-07-15",
		"material: 21-0-0-24S")
	section := regexp.MustCompile(`(?s)<section[^>]* id="worksheet-feeds".*?</section>`)
	made := map[string]string{}
	for name, numbers := range map[string][]string{
		"single": {"12", "12", "7", "12"}, "ranges": {"11 to 12", "11 to 13", "7 to 8", "9 to 18"},
	} {
		guides := map[string]string{"feeds": guide("Feeds", 1, feeds+
			block("soil", "soil-nitrogen", "nitrate: "+numbers[0]+" ppm NO3-N", "depth: "+numbers[1]+" in")+
			block("well", "water-nitrogen", "nitrate: "+numbers[2]+" ppm NO3-N", "water: "+numbers[3]+" in"))}
		for path, text := range mustMake(t, content(guides)) {
			if strings.Contains(path, "feeds/index.html") {
				made[name] = section.FindString(text)
			}
		}
	}
	if made["single"] == "" || made["single"] != made["ranges"] {
		t.Errorf("beside single numbers the worksheet is\n%s\nbeside ranges\n%s", made["single"], made["ranges"])
	}
}

func block(name, calculation string, lines ...string) string {
	return "```worksheet " + name + "\ncalculation: " + calculation + "\n" + strings.Join(lines, "\n") + "\n```\n\n"
}
