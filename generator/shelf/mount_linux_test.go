package shelf

import "testing"

func TestMounted(t *testing.T) {
	for path, want := range map[string]bool{"/proc": true, t.TempDir(): false, "/proc/self": false, "/not there": false} {
		if got := mounted(path); got != want {
			t.Errorf("%s: mounted %v, want %v", path, got, want)
		}
	}
}
