package message

import (
	"io"
	"net/url"
	"slices"
	"strings"
)

// What SARIF writes is a log file of the Static Analysis Results Interchange Format, version 2.1.0 with errata 01
// (OASIS, 2023), for editors and code review. The numbers are those of its sections.
const (
	sarifVersion = "2.1.0" // 3.13.2
	sarifSchema  = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)

type (
	sarifLog struct {
		Version string     `json:"version"` // comes first, 3.13.2
		Schema  string     `json:"$schema"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool       sarifTool     `json:"tool"`
		ColumnKind string        `json:"columnKind"`
		Results    []sarifResult `json:"results"` // empty when all is well, and not left out, 3.14.23
	}
	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct {
		Name  string      `json:"name"`
		Rules []sarifRule `json:"rules"`
	}
	sarifRule struct {
		ID string `json:"id"`
	}
	sarifResult struct {
		RuleID    string          `json:"ruleId"`
		RuleIndex int             `json:"ruleIndex"`
		Level     string          `json:"level"`
		Message   sarifText       `json:"message"`
		Locations []sarifLocation `json:"locations"` // empty when the message has no place, 3.27.12
	}
	sarifText struct {
		Text string `json:"text"`
	}
	sarifLocation struct {
		Physical sarifPhysical `json:"physicalLocation"`
	}
	sarifPhysical struct {
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   sarifRegion   `json:"region"`
	}
	sarifArtifact struct {
		URI string `json:"uri"`
	}
	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn"`
		EndLine     int `json:"endLine"`
		EndColumn   int `json:"endColumn"` // of the character after the region, 3.30.8
	}
)

// SARIF writes the messages as one SARIF log, in the order given. Nothing in it tells of this machine or of the hour,
// so that the same messages give the same bytes.
func SARIF(w io.Writer, l List) error {
	var ids []string
	for _, m := range l {
		ids = append(ids, m.ID)
	}
	slices.Sort(ids)
	ids = slices.Compact(ids)
	run := sarifRun{ColumnKind: "unicodeCodePoints", Results: make([]sarifResult, len(l))}
	run.Tool.Driver = sarifDriver{Name: "Acreleaf", Rules: make([]sarifRule, len(ids))}
	for i, id := range ids {
		run.Tool.Driver.Rules[i].ID = id
	}
	for i, p := range Place(l) {
		rule, _ := slices.BinarySearch(ids, p.ID)
		result := sarifResult{RuleID: p.ID, RuleIndex: rule, Level: "error",
			Message:   sarifText{sarifEscape(strings.Join(append([]string{p.Text}, p.Note...), "\n"))},
			Locations: []sarifLocation{}}
		if p.Level == Advice {
			result.Level = "note"
		}
		if l[i].Source != nil {
			result.Locations = append(result.Locations, sarifLocation{sarifPhysical{
				sarifArtifact{sarifURI(l[i].Source.Name)},
				sarifRegion{p.Line, p.Column, p.EndLine, p.EndColumn}}})
		}
		run.Results[i] = result
	}
	return encode(w, sarifLog{Version: sarifVersion, Schema: sarifSchema, Runs: []sarifRun{run}})
}

// sarifURI is a slash path as a relative reference (3.4.3; RFC 3986, 4.2), with its odd characters in per cent.
func sarifURI(name string) string { return (&url.URL{Path: name}).String() }

// sarifEscape doubles braces, which would be places for arguments (3.11.5), and breaks up what would be read as a link
// (3.11.6): an author is told what to type, brackets and all.
func sarifEscape(text string) string {
	return strings.NewReplacer("{", "{{", "}", "}}", "](", `\](`).Replace(text)
}
