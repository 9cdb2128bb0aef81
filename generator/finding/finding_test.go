package finding

import "testing"

func TestStop(t *testing.T) {
	tests := []struct {
		name string
		list List
		want bool
	}{
		{"nothing", nil, false},
		{"a warning", List{{Rule: odd}}, false},
		{"an error among warnings", List{{Rule: odd}, {Rule: broken}, {Rule: odd}}, true},
	}
	for _, tt := range tests {
		if got := tt.list.Stop(); got != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}

func TestSortDropsRepeatsApart(t *testing.T) {
	a := Finding{"a.md", 1, 1, odd, "same words", "Do this."}
	b := Finding{"a.md", 1, 1, odd, "same words", "Do that."}
	list := List{a, b, a}
	list.Sort()
	if len(list) != 2 || list[0] != b || list[1] != a {
		t.Errorf("got %v", list)
	}
}
