package preview

import (
	"errors"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

func TestListenRefusesOtherMachines(t *testing.T) {
	for _, c := range []struct{ name, address, want string }{
		{"every machine", ":8300", "127.0.0.1:8300"},
		{"every machine by number", "0.0.0.0:8300", "to this machine only"},
		{"every machine, version 6", "[::]:8300", "to this machine only"},
		{"the studio's network", "192.168.1.20:8300", "to this machine only"},
		{"a name", "kiln.example:8300", "to this machine only"},
		{"port alone", "8300", "write it as 127.0.0.1:8300"},
		{"nothing", "", "write it as 127.0.0.1:8300"},
		{"no port", "127.0.0.1", "write it as 127.0.0.1:8300"},
		{"port is a word", "127.0.0.1:http", "not a number"},
		{"port too large", "127.0.0.1:65536", "not a number"},
		{"port below zero", "127.0.0.1:-1", "not a number"},
		{"empty port", "127.0.0.1:", "not a number"},
	} {
		t.Run(c.name, func(t *testing.T) {
			l, err := listen(c.address)
			if err == nil {
				l.Close()
			}
			if _, ok := errors.AsType[*Refusal](err); !ok || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want a refusal with %q in it", err, c.want)
			}
		})
	}
}

func TestListenAcceptsThisMachine(t *testing.T) {
	for _, address := range []string{"127.0.0.1:0", "localhost:0", "127.0.0.2:0"} {
		l, err := listen(address)
		if err != nil {
			t.Errorf("%s: %v", address, err)
			continue
		}
		if ip := l.Addr().(*net.TCPAddr).IP; !ip.IsLoopback() {
			t.Errorf("%s listens on %s", address, ip)
		}
		l.Close()
	}
}

func TestListenSaysThatThePortIsInUse(t *testing.T) {
	first, err := listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	_, err = listen(first.Addr().String())
	if err == nil || !strings.Contains(err.Error(), "is in use, perhaps by another slipbook; end that one, or choose another port, such as --address 127.0.0.1:") {
		t.Errorf("error %v", err)
	}
}

func TestNextPort(t *testing.T) {
	for port, want := range map[string]string{"8300": "8301", "80": "8301", "65535": "8301", "65534": "65535"} {
		if got := next(port); got != want {
			t.Errorf("after %s comes %s, want %s", port, got, want)
		}
	}
}

func TestGuard(t *testing.T) {
	inner := http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(http.StatusOK) })
	for _, c := range []struct {
		at, host string
		want     int
	}{
		{"127.0.0.1:8300", "127.0.0.1:8300", 200},
		{"127.0.0.1:8300", "localhost:8300", 200},
		{"127.0.0.1:8300", "LocalHost:8300", 200},
		{"127.0.0.1:8300", "[::1]:8300", 200},
		{"127.0.0.2:8300", "127.0.0.2:8300", 200},
		{"127.0.0.1:8300", "127.0.0.2:8300", 421},
		{"127.0.0.1:8300", "localhost:8301", 421},
		{"127.0.0.1:8300", "localhost", 421},
		{"127.0.0.1:80", "localhost", 200},
		{"127.0.0.1:80", "[::1]", 200},
		{"127.0.0.1:80", "kiln.example", 421},
		{"127.0.0.1:8300", "kiln.example:8300", 421},
		{"127.0.0.1:8300", "localhost.kiln.example:8300", 421},
		{"127.0.0.1:8300", "", 421},
	} {
		at, err := net.ResolveTCPAddr("tcp", c.at)
		if err != nil {
			t.Fatal(err)
		}
		r := httptest.NewRequest("GET", "/", nil)
		r.Host = c.host
		w := httptest.NewRecorder()
		guard(at, inner).ServeHTTP(w, r)
		if w.Code != c.want {
			t.Errorf("server at %s, host %q: %d, want %d", c.at, c.host, w.Code, c.want)
		}
	}
}
