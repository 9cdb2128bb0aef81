package assets

import (
	"bytes"
	"compress/gzip"
	"io"
	"strings"
	"testing"
)

func TestPackIsGzipWithoutNameOrTime(t *testing.T) {
	text := []byte(strings.Repeat("slip ", 1000))
	packed, err := pack(text)
	if err != nil {
		t.Fatal(err)
	}
	again, err := pack(text)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(packed, again) {
		t.Error("the same data was packed into different bytes")
	}
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	if r.Name != "" || !r.ModTime.IsZero() {
		t.Errorf("header has name %q, time %v", r.Name, r.ModTime)
	}
	if got, err := io.ReadAll(r); err != nil || !bytes.Equal(got, text) {
		t.Errorf("unpacked %d bytes (%v), want the %d packed", len(got), err, len(text))
	}
}
