package catalog_test

import (
	"math/rand/v2"
	"net/url"
	"regexp"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/catalog/catalogtest"
	"slipbook/calculators/form"
	"slipbook/calculators/stage/stagetest"
)

// TestNoIDIsShown wants no id to reach a reader in place of its words, in
// hundreds of answers of every calculator, good and bad.
func TestNoIDIsShown(t *testing.T) {
	id := regexp.MustCompile(`\b(form|amount|judge|doubt|shared|plan|quantity|hazard|language)\.[a-z]+[a-z.-]*[a-z]|\.(say|draw|note|caution|next|label|choice)\.`)
	random := rand.New(rand.NewPCG(11, 2026))
	settings := form.Plain()
	settings.Table, settings.Bodies = stagetest.Table(), catalogtest.Bodies
	for _, c := range catalog.All() {
		for range 300 {
			request := catalogtest.Any(random, c)
			answer, err := url.QueryUnescape(string(catalog.Respond([]byte(request), settings)))
			if err != nil {
				t.Fatal(err)
			}
			if found := id.FindString(answer); found != "" {
				t.Fatalf("%s: %q in %s", request, found, answer)
			}
		}
	}
}
