//go:build !wasm

package words

import (
	"embed"
	"fmt"
	"slices"
	"strings"
	"sync"

	"go.yaml.in/yaml/v4"
)

// Default is the language where none is asked for, and where one is asked for
// that has no file.
const Default = "en-US"

//go:embed *.yaml
var files embed.FS

// lies says over which file another lies and holds only what differs. A file
// that is not named here is whole.
var lies = map[string]string{"en-GB": "en-US"}

// tables are the languages' tables, each read when it is first asked for.
var tables sync.Map // of language to *Table

// Languages lists the languages that have words, in their order.
func Languages() []string {
	entries, err := files.ReadDir(".")
	if err != nil {
		panic(err) // an embedded folder is always there
	}
	var languages []string
	for _, e := range entries {
		languages = append(languages, strings.TrimSuffix(e.Name(), ".yaml"))
	}
	return languages
}

// Known returns the language whose words answer somebody who asks for one: the
// same, or another of the same first part ("en-AU" is answered in en-US). known
// is false where none is, and the default stands in.
func Known(language string) (tag string, known bool) {
	languages := Languages()
	for _, l := range languages {
		if strings.EqualFold(l, language) {
			return l, true
		}
	}
	first, _, _ := strings.Cut(strings.ToLower(language), "-")
	if strings.HasPrefix(strings.ToLower(Default), first+"-") {
		return Default, true
	}
	for _, l := range languages {
		if own, _, _ := strings.Cut(strings.ToLower(l), "-"); own == first {
			return l, true
		}
	}
	return Default, false
}

// In returns the words of a language, or of the one that stands in for it.
func In(language string) *Table {
	if t, ok := tables.Load(language); ok {
		return t.(*Table)
	}
	tag, _ := Known(language)
	t, ok := tables.Load(tag)
	if !ok {
		t, _ = tables.LoadOrStore(tag, mustRead(tag))
	}
	tables.Store(language, t)
	return t.(*Table)
}

// mustRead reads a language's embedded file. A file that cannot be read is a
// mistake of the program, which a test finds.
func mustRead(tag string) *Table {
	entries := map[string]string{}
	for _, file := range []string{lies[tag], tag} {
		if file == "" {
			continue
		}
		if err := readFile(file, entries); err != nil {
			panic(err)
		}
	}
	t := &Table{Language: tag, choose: ruleOf(tag)}
	for id, text := range entries {
		t.entries = append(t.entries, entry{id, text})
	}
	slices.SortFunc(t.entries, func(a, b entry) int { return strings.Compare(a.id, b.id) })
	return t
}

// readFile adds the sentences of one file to those that were read before.
func readFile(tag string, entries map[string]string) error {
	data, err := files.ReadFile(tag + ".yaml")
	if err != nil {
		return err
	}
	var tree map[string]any
	if err := yaml.Unmarshal(data, &tree); err != nil {
		return fmt.Errorf("%s.yaml: %w", tag, err)
	}
	return flatten("", tree, entries)
}

// flatten turns the tree of a file into sentences by id: the keys on the way to
// each, joined by stops.
func flatten(prefix string, tree map[string]any, entries map[string]string) error {
	for key, value := range tree {
		switch v := value.(type) {
		case map[string]any:
			if err := flatten(prefix+key+".", v, entries); err != nil {
				return err
			}
		case string:
			if strings.ContainsAny(v, "\n\t") {
				return fmt.Errorf("%s%s holds a tab or a new line", prefix, key)
			}
			entries[prefix+key] = v
		default:
			return fmt.Errorf("%s%s is no text: write it between quotation marks", prefix, key)
		}
	}
	return nil
}

// printed are the parts of ids of what only pages and the command line print.
var printed = []string{".title", ".purpose", ".help", ".example", ".table.", ".formula.", ".answer.", ".column.", "plan.mix."}

// Reactor returns the words that answers and drawings can say, without those
// that only a page prints: what travels to the WebAssembly reactor.
func (t *Table) Reactor() *Table {
	few := &Table{Language: t.Language, choose: t.choose}
	for _, e := range t.entries {
		if !slices.ContainsFunc(printed, func(part string) bool {
			return strings.HasSuffix(e.id, part) || strings.HasSuffix(part, ".") && strings.Contains(e.id, part)
		}) {
			few.entries = append(few.entries, e)
		}
	}
	return few
}

// IDs lists the ids of a table in their order.
func (t *Table) IDs() []string {
	ids := make([]string, len(t.entries))
	for i, e := range t.entries {
		ids[i] = e.id
	}
	return ids
}
