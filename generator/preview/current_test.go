package preview

import (
	"context"
	"testing"
)

func TestVersions(t *testing.T) {
	ctx := context.Background()
	b := newCurrent()
	b.print(map[string][]byte{"a": []byte("1")})
	first := b.wait(ctx, "")
	b.print(map[string][]byte{"a": []byte("1")})
	if again := b.wait(ctx, ""); again != first {
		t.Error("the same bytes are news")
	}
	b.print(map[string][]byte{"a": []byte("2")})
	second := b.wait(ctx, first.version)
	if string(second.files["a"]) != "2" {
		t.Errorf("shown: %q", second.files)
	}
	b.report(broken)
	third := b.wait(ctx, second.version)
	if third.failure != broken || string(third.files["a"]) != "2" {
		t.Errorf("failure %v over %q", third.failure, third.files)
	}
	b.print(map[string][]byte{"a": []byte("2")})
	if fourth := b.wait(ctx, third.version); fourth.failure != nil {
		t.Error("mended with the bytes from before, and the failure stays")
	}
}

func TestAnotherStartHasOtherVersions(t *testing.T) {
	a, b := newCurrent(), newCurrent()
	a.print(nil)
	b.started = a.started + "x"
	b.print(nil)
	if a.state.version == b.state.version {
		t.Error("a page of an earlier preview would not be loaded again")
	}
}
