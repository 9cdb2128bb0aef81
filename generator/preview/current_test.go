package preview

import (
	"context"
	"testing"
)

func TestVersions(t *testing.T) {
	ctx := context.Background()
	b := newCurrent()
	b.print(book{"a": []byte("1")})
	first := b.wait(ctx, "")
	first.files.has("a")
	b.print(book{"a": []byte("1")})
	if again := b.wait(ctx, ""); again.version != first.version {
		t.Error("the same bytes are news")
	}
	b.print(book{"a": []byte("2")})
	second := b.wait(ctx, first.version)
	if content(second, "a") != "2" {
		t.Errorf("shown: %q", content(second, "a"))
	}
	b.report(broken)
	third := b.wait(ctx, second.version)
	if third.failure != broken || content(third, "a") != "2" {
		t.Errorf("failure %v over %q", third.failure, content(third, "a"))
	}
	b.print(book{"a": []byte("2")})
	if fourth := b.wait(ctx, third.version); fourth.failure != nil {
		t.Error("mended with the bytes from before, and the failure stays")
	}
}

func TestAnotherStartHasOtherVersions(t *testing.T) {
	a, b := newCurrent(), newCurrent()
	a.print(book{})
	b.started = a.started + "x"
	b.print(book{})
	if a.state.version == b.state.version {
		t.Error("a page of an earlier preview would not be loaded again")
	}
}

// content returns what a state shows at an address.
func content(s *state, address string) string {
	data, _, _ := s.files.file(address)
	return string(data)
}
