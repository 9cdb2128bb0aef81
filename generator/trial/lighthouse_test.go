//go:build judges

package trial

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// audited is what Lighthouse says of a page: one line of testdata/lighthouse.mjs.
type audited struct {
	Address string
	Scores  map[string]int // of each category, 0 to 100
	FCP     float64        // ms until something is drawn
	LCP     float64        // ms until the largest piece is
	TBT     float64        // ms for which the page hears nobody
	CLS     float64        // how much shifted, a share of the window
	Bytes   float64        // on the line
	Below   []string       // what keeps a category from 100
}

// lighthouse has Lighthouse audit pages, each so many times.
func lighthouse(categories string, times int, addresses []string) ([]audited, error) {
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		return nil, fmt.Errorf("no browser to judge with: %w", err)
	}
	var said bytes.Buffer
	node := exec.Command("node", append([]string{"testdata/lighthouse.mjs", chromium, categories, strconv.Itoa(times)}, addresses...)...)
	node.Dir, node.Stderr = root, &said
	out, err := node.Output()
	if err != nil {
		return nil, fmt.Errorf("no Lighthouse to judge with: %w\n%s", err, said.Bytes())
	}
	var found []audited
	for lines := json.NewDecoder(bytes.NewReader(out)); ; {
		var a audited
		if err := lines.Decode(&a); err == io.EOF {
			break
		} else if err != nil {
			return nil, err
		}
		found = append(found, a)
	}
	if len(found) != len(addresses) {
		return nil, fmt.Errorf("Lighthouse told of %d pages, not of %d", len(found), len(addresses))
	}
	return found, nil
}

// TestLighthouse wants the most of every kind of page in what a busy machine cannot
// change. No engine may look for the instructor's copy, so it is left out of that.
func TestLighthouse(t *testing.T) {
	t.Parallel()
	h, notes := published(t), publishedNotes(t)
	for _, what := range []struct {
		categories string
		of         *handbook
		pages      []string
	}{
		{"accessibility,best-practices,seo", h, h.samples(t)},
		{"accessibility,best-practices", notes, notes.all(t, "teaching")},
	} {
		var addresses []string
		for _, page := range what.pages {
			addresses = append(addresses, what.of.home+page)
		}
		found, err := lighthouse(what.categories, 1, addresses)
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range found {
			for _, category := range strings.Split(what.categories, ",") {
				if a.Scores[category] != 100 {
					t.Errorf("%s: %s %d, want 100\n%s", a.Address, category, a.Scores[category], strings.Join(a.Below, "\n"))
				}
			}
		}
	}
}

// BenchmarkLighthouse reports the performance of every kind of page as Lighthouse
// reckons it for a phone, the median of three, from a server that packs. It is worth
// something on a quiet machine alone:
//
//	go test -tags judges -run '^$' -bench Lighthouse -benchtime 1x -timeout 1h ./generator/trial
func BenchmarkLighthouse(b *testing.B) {
	h, err := publishing()
	if err != nil {
		b.Fatal(err)
	}
	home := webServers[0].at(b, h.dir)
	for _, page := range h.samples(b) {
		b.Run(kind(page), func(b *testing.B) {
			found, err := lighthouse("performance", 3, []string{home + "/" + page})
			if err != nil {
				b.Fatal(err)
			}
			a := found[0]
			b.ReportMetric(0, "ns/op") // nobody asks how long an audit took
			b.ReportMetric(float64(a.Scores["performance"]), "performance")
			b.ReportMetric(a.FCP, "FCP-ms")
			b.ReportMetric(a.LCP, "LCP-ms")
			b.ReportMetric(a.TBT, "TBT-ms")
			b.ReportMetric(a.CLS, "CLS")
			b.ReportMetric(a.Bytes, "B-on-the-line")
			b.Log(strings.Join(a.Below, "\n"))
		})
	}
}
