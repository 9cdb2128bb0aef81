package preview

import (
	"errors"
	"fmt"
	"net"
	"net/http"
	"net/netip"
	"strconv"
	"strings"
	"syscall"
)

// Refusal is the error for an address that is not served: another one
// has to be chosen.
type Refusal struct{ words string }

// Error returns the words for a person.
func (r *Refusal) Error() string { return r.words }

// listen opens the address, which must mean this machine and nobody else: what
// is being written is not published yet.
func listen(address string) (net.Listener, error) {
	host, port, err := net.SplitHostPort(address)
	if err != nil {
		return nil, &Refusal{fmt.Sprintf("the address %q is not a machine and a port; write it as 127.0.0.1:8300", address)}
	}
	if n, err := strconv.ParseUint(port, 10, 16); err != nil || strconv.FormatUint(n, 10) != port {
		return nil, &Refusal{fmt.Sprintf("the port %q in the address %q is not a number from 0 to 65535; write the address as 127.0.0.1:8300", port, address)}
	}
	if host == "localhost" {
		host = "127.0.0.1" // whatever the system's list of hosts says
	}
	if ip, err := netip.ParseAddr(host); err != nil || !ip.IsLoopback() {
		return nil, &Refusal{fmt.Sprintf("the address %q could be reached from other machines; unfinished work is shown to this machine only: write 127.0.0.1:%s, and use publish for others", address, port)}
	}
	listener, err := net.Listen("tcp", net.JoinHostPort(host, port))
	switch {
	case errors.Is(err, syscall.EADDRINUSE):
		return nil, fmt.Errorf("port %s is in use, perhaps by another slipbook; end that one, or choose another port, such as --address %s", port, net.JoinHostPort(host, next(port)))
	case errors.Is(err, syscall.EACCES):
		return nil, fmt.Errorf("port %s is kept for the system; choose one from 1024 on, such as --address %s", port, net.JoinHostPort(host, "8300"))
	case err != nil:
		return nil, fmt.Errorf("the address %s could not be opened: %w; try --address 127.0.0.1:8300", address, err)
	}
	return listener, nil
}

// next returns the port after this one.
func next(port string) string {
	n, err := strconv.Atoi(port)
	if err != nil || n < 1024 || n >= 65535 {
		return "8301"
	}
	return strconv.Itoa(n + 1)
}

// guard lets through only requests that name this server as the reader's own
// machine. A page elsewhere can make its own name point here and would then
// read the handbook from within a browser; its name gives it away.
func guard(at net.Addr, inner http.Handler) http.Handler {
	host, port, err := net.SplitHostPort(at.String())
	if err != nil {
		panic(err) // a listener's address always has both
	}
	allowed := map[string]bool{}
	for _, name := range []string{"localhost", "127.0.0.1", "::1", host} {
		allowed[net.JoinHostPort(name, port)] = true
		if port == "80" {
			allowed[strings.TrimSuffix(net.JoinHostPort(name, port), ":80")] = true
		}
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !allowed[strings.ToLower(r.Host)] {
			http.Error(w, "This handbook answers to localhost only. Open the address that it printed when it started.", http.StatusMisdirectedRequest)
			return
		}
		inner.ServeHTTP(w, r)
	})
}
