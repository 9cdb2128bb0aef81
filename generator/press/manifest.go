package press

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"

	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/course"
)

// manifest tells a phone how to install the handbook: its names, its icons, and the
// first page. Its addresses are counted from the manifest, so it holds in any folder.
func manifest(c *course.Course, b *assets.Bundle) []byte {
	type icon struct {
		Source  string `json:"src"`
		Sizes   string `json:"sizes"`
		Type    string `json:"type"`
		Purpose string `json:"purpose,omitempty"`
	}
	icons := []icon{{b.Icon, "any", "image/svg+xml", ""}}
	for _, made := range b.Phone.Icons {
		purpose := ""
		if made.Whole {
			purpose = "maskable"
		}
		icons = append(icons, icon{made.Address, fmt.Sprintf("%[1]dx%[1]d", made.Side), "image/png", purpose})
	}
	var text bytes.Buffer
	out := json.NewEncoder(&text)
	out.SetIndent("", "  ")
	out.SetEscapeHTML(false)
	// What is encoded is texts, so it never fails.
	_ = out.Encode(struct {
		ID          string `json:"id"`
		Name        string `json:"name"`
		ShortName   string `json:"short_name"`
		Description string `json:"description,omitempty"`
		Language    string `json:"lang"`
		Start       string `json:"start_url"`
		Scope       string `json:"scope"`
		Display     string `json:"display"`
		Background  string `json:"background_color,omitempty"`
		Theme       string `json:"theme_color,omitempty"`
		Icons       []icon `json:"icons"`
	}{
		"./", c.Title, cmp.Or(c.Studio.Name, c.Title), c.Description, c.Language,
		address.Home, "./", "standalone", b.Phone.Ground, b.Phone.Ground, icons,
	})
	return text.Bytes()
}
