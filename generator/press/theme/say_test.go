package theme

import (
	"testing"

	"slipbook/generator/course"
)

func TestDuration(t *testing.T) {
	p := studio(t)
	for _, c := range []struct {
		minutes course.Duration
		want    string
	}{
		{1, "about 1 minute"},
		{20, "about 20 minutes"},
		{60, "about 1 hour"},
		{75, "about 1 hour 15 minutes"},
		{61, "about 1 hour 1 minutes"},
		{119, "about 1 hour 59 minutes"},
		{120, "about 2 hours"},
		{121, "about 2 hours 1 minutes"},
		{150, "about 2 hours 30 minutes"},
		{24 * 60, "about 24 hours"},
		{3 * 24 * 60, "about 3 days"},
	} {
		t.Run(c.want, func(t *testing.T) {
			if got, err := p.words.duration(c.minutes); got != c.want || err != nil {
				t.Errorf("%d minutes: %q, %v", c.minutes, got, err)
			}
		})
	}
}

func TestDate(t *testing.T) {
	p := studio(t)
	for _, c := range []struct{ iso, want string }{
		{"2026-11-04", "4 November 2026"},
		{"2026-02", "February 2026"},
		{"2026", "2026"},
	} {
		t.Run(c.iso, func(t *testing.T) {
			if got, err := p.words.date(c.iso); got != c.want || err != nil {
				t.Errorf("%q, %v", got, err)
			}
		})
	}
}
