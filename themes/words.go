package themes

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"time"

	"go.yaml.in/yaml/v4"
)

const (
	wordsFolder = "words"      // a file of words for each language
	wordsFile   = "words.yaml" // what the words of one language are called in an opened theme
	overKey     = "over"       // in a file of words: the language over which it lies, holding only what differs
	whole       = "en-US"      // the language where there is no other that fits
)

// Languages lists the languages that a theme has words in, in their order.
func Languages(theme fs.FS) ([]string, error) {
	entries, err := fs.ReadDir(theme, wordsFolder)
	var all []string
	for _, e := range entries {
		all = append(all, strings.TrimSuffix(e.Name(), path.Ext(e.Name())))
	}
	return all, err
}

// speaking returns the language in which a theme speaks to readers of another:
// the same, or the whole one of the same first part ("en-AU" is answered in
// en-US), or another of that; else the whole one.
func speaking(languages []string, language string) string {
	first, _, _ := strings.Cut(language, "-")
	for _, fits := range []func(string) bool{
		func(l string) bool { return strings.EqualFold(l, language) },
		func(l string) bool { return l == whole && strings.EqualFold(first, "en") },
		func(l string) bool { own, _, _ := strings.Cut(l, "-"); return strings.EqualFold(own, first) },
	} {
		if at := slices.IndexFunc(languages, fits); at >= 0 {
			return languages[at]
		}
	}
	return whole
}

// Words returns a theme's words in a language by key: those of its file, over
// those of the file that it lies over.
func Words(theme fs.FS, language string) (map[string]string, error) {
	words := map[string]string{}
	for depth := 0; language != ""; depth++ {
		file := path.Join(wordsFolder, language+".yaml")
		data, err := fs.ReadFile(theme, file)
		if err != nil {
			return nil, err
		}
		own := map[string]string{}
		if err := yaml.Load(data, &own); err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		if language = own[overKey]; language != "" && depth > 8 {
			return nil, fmt.Errorf("%s: the files of words lie over each other in a circle", file)
		}
		delete(own, overKey)
		maps.Copy(own, words) // what lies over the rest holds
		words = own
	}
	return words, nil
}

// spoken is a theme in one language: its words.yaml holds the words of that.
type spoken struct {
	fs.FS
	words []byte
}

// in makes a theme speak a language, or the one that stands in for it.
func in(theme fs.FS, language string) (fs.FS, error) {
	languages, err := Languages(theme)
	if err != nil {
		return nil, err
	}
	words, err := Words(theme, speaking(languages, language))
	if err != nil {
		return nil, err
	}
	data, err := yaml.Dump(words)
	return spoken{theme, data}, err
}

// Open completes fs.FS.
func (s spoken) Open(name string) (fs.File, error) {
	switch name {
	case wordsFile:
		return memory{bytes.NewReader(s.words)}, nil
	case ".":
		entries, err := s.ReadDir(name)
		if err != nil {
			return nil, err
		}
		file, err := s.FS.Open(name)
		return &root{File: file, left: entries}, err
	}
	return s.FS.Open(name)
}

// root is the theme's folder as an open file.
type root struct {
	fs.File
	left []fs.DirEntry
}

// ReadDir completes fs.ReadDirFile.
func (r *root) ReadDir(n int) ([]fs.DirEntry, error) {
	if n <= 0 || n > len(r.left) {
		if n > 0 && len(r.left) == 0 {
			return nil, io.EOF
		}
		n = len(r.left)
	}
	entries := r.left[:n]
	r.left = r.left[n:]
	return entries, nil
}

// ReadFile completes fs.ReadFileFS.
func (s spoken) ReadFile(name string) ([]byte, error) {
	if name == wordsFile {
		return slices.Clone(s.words), nil
	}
	return fs.ReadFile(s.FS, name)
}

// ReadDir completes fs.ReadDirFS.
func (s spoken) ReadDir(name string) ([]fs.DirEntry, error) {
	entries, err := fs.ReadDir(s.FS, name)
	if name == "." && err == nil {
		entries = append(entries, fs.FileInfoToDirEntry(memory{bytes.NewReader(s.words)}))
		slices.SortFunc(entries, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	}
	return entries, err
}

// memory is words.yaml as an open file, and what is known of it.
type memory struct{ *bytes.Reader }

func (m memory) Stat() (fs.FileInfo, error) { return m, nil }
func (m memory) Close() error               { return nil }
func (m memory) Name() string               { return wordsFile }
func (m memory) Mode() fs.FileMode          { return 0o444 }
func (m memory) ModTime() time.Time         { return time.Time{} }
func (m memory) IsDir() bool                { return false }
func (m memory) Sys() any                   { return nil }
