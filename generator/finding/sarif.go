package finding

import (
	"encoding/json"
	"io"
	"net/url"
	"slices"
)

// contentBase is the name under which the report speaks of the content folder.
// Where that folder lies is the reader's to know; no path of the machine that
// made the report stands in it.
const contentBase = "CONTENT"

// The types below are the part of SARIF 2.1.0 (OASIS) that a list of findings
// needs. Their JSON names are the standard's.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool       sarifTool            `json:"tool"`
		Bases      map[string]sarifBase `json:"originalUriBaseIds"`
		ColumnKind string               `json:"columnKind"`
		Results    []sarifResult        `json:"results"`
	}
	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct {
		Name  string      `json:"name"`
		Rules []sarifRule `json:"rules"`
	}
	sarifRule struct {
		ID      string        `json:"id"`
		Means   sarifMessage  `json:"shortDescription"`
		Source  *sarifMessage `json:"help,omitempty"`
		Default sarifLevel    `json:"defaultConfiguration"`
	}
	sarifLevel struct {
		Level string `json:"level"`
	}
	sarifBase struct {
		Means sarifMessage `json:"description"`
	}
	sarifResult struct {
		RuleID    string          `json:"ruleId"`
		RuleIndex int             `json:"ruleIndex"`
		Level     string          `json:"level"`
		Message   sarifMessage    `json:"message"`
		Locations []sarifLocation `json:"locations"`
	}
	sarifMessage struct {
		Text string `json:"text"`
	}
	sarifLocation struct {
		Place sarifPlace `json:"physicalLocation"`
	}
	sarifPlace struct {
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   sarifRegion   `json:"region"`
	}
	sarifArtifact struct {
		URI  string `json:"uri"`
		Base string `json:"uriBaseId"`
	}
	sarifRegion struct {
		Line   int `json:"startLine"`
		Column int `json:"startColumn"`
	}
)

// writeSARIF prints the findings as one run. Columns are Unicode code points,
// which columnKind says. SARIF's levels are the names of our severities.
func (l List) writeSARIF(w io.Writer) error {
	run := sarifRun{
		Tool:       sarifTool{sarifDriver{Name: "slipbook", Rules: sarifRules()}},
		Bases:      map[string]sarifBase{contentBase: {sarifMessage{"The content folder of the course."}}},
		ColumnKind: "unicodeCodePoints",
		Results:    make([]sarifResult, len(l)),
	}
	for i, f := range l {
		run.Results[i] = sarifResult{
			RuleID:    f.Rule.ID,
			RuleIndex: slices.Index(Rules(), f.Rule),
			Level:     f.Rule.Severity.String(),
			Message:   sarifMessage{f.Text + ". " + f.Do},
			Locations: []sarifLocation{{sarifPlace{
				// URL escapes spaces and the like, and a colon in a first segment.
				sarifArtifact{(&url.URL{Path: f.File}).String(), contentBase},
				sarifRegion{f.Line, f.Column},
			}}},
		}
	}
	return writeIndented(w, sarifLog{
		Schema:  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
		Version: "2.1.0",
		Runs:    []sarifRun{run},
	})
}

func sarifRules() []sarifRule {
	rules := make([]sarifRule, len(Rules()))
	for i, r := range Rules() {
		rules[i] = sarifRule{r.ID, sarifMessage{r.Means}, nil, sarifLevel{r.Severity.String()}}
		if r.Source != "" {
			rules[i].Source = &sarifMessage{"Source of the rule: " + r.Source + "."}
		}
	}
	return rules
}

// writeIndented writes a value as JSON for people and programs.
func writeIndented(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}
