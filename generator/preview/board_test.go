package preview

import (
	"context"
	"testing"
)

func TestBoardVersions(t *testing.T) {
	ctx := context.Background()
	b := newBoard()
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
	if third.trouble != broken || string(third.files["a"]) != "2" {
		t.Errorf("trouble %v over %q", third.trouble, third.files)
	}
	b.print(map[string][]byte{"a": []byte("2")})
	if fourth := b.wait(ctx, third.version); fourth.trouble != nil {
		t.Error("mended with the bytes from before, and the trouble stays")
	}
}

func TestBoardOfAnotherStartHasOtherVersions(t *testing.T) {
	a, b := newBoard(), newBoard()
	a.print(nil)
	b.started = a.started + "x"
	b.print(nil)
	if a.current.version == b.current.version {
		t.Error("a page of an earlier preview would not be loaded again")
	}
}
