package preview

import (
	"bufio"
	"context"
	"errors"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"
)

// serve serves files with limits of its own until the test ends.
func serve(t *testing.T, files Handbook, l limits) (*pages, string) {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	p := shown(files)
	p.write = l.write
	server := newServer(context.Background(), p, l)
	go func() { _ = server.Serve(listener) }()
	t.Cleanup(func() { _ = server.Close() })
	return p, listener.Addr().String()
}

// ask opens a connection and asks for an address.
func ask(t *testing.T, server, address string) net.Conn {
	t.Helper()
	c, err := net.Dial("tcp", server)
	must(t, err)
	t.Cleanup(func() { _ = c.Close() })
	must(t, c.SetDeadline(time.Now().Add(20*time.Second)))
	_, err = io.WriteString(c, "GET "+address+" HTTP/1.1\r\nHost: localhost\r\n\r\n")
	must(t, err)
	return c
}

// TestReadersWhoDoNothingAreClosed asks for much and reads nothing, and asks
// for little and then nothing more.
func TestReadersWhoDoNothingAreClosed(t *testing.T) {
	const much = 64 << 20
	_, server := serve(t, book{"index.html": []byte("<p>x"), "much.bin": make([]byte, much)}, limits{200 * time.Millisecond, 200 * time.Millisecond})
	silent, idle := ask(t, server, "/much.bin"), ask(t, server, "/")
	time.Sleep(time.Second)
	if n, _ := io.Copy(io.Discard, silent); n >= much {
		t.Errorf("who read nothing for a second was sent all %d bytes", n)
	}
	if _, err := io.ReadAll(idle); err != nil {
		t.Errorf("who asked for nothing more was not closed: %v", err)
	}
}

// TestListeningPagesOutliveTheLimits waits longer than an answer may take, and
// wants to hear of the next change, and the answer to a slow first build.
func TestListeningPagesOutliveTheLimits(t *testing.T) {
	p, server := serve(t, book{"index.html": []byte("first")}, limits{200 * time.Millisecond, time.Minute})
	lines := bufio.NewScanner(ask(t, server, eventsAt))
	time.Sleep(time.Second)
	p.current.print(book{"index.html": []byte("second")})
	versions := 0
	for versions < 2 && lines.Scan() {
		if strings.HasPrefix(lines.Text(), "data: ") {
			versions++
		}
	}
	if versions < 2 {
		t.Errorf("%d versions were told: %v", versions, lines.Err())
	}
	slow, server := serve(t, nil, limits{200 * time.Millisecond, time.Minute})
	slow.current = newCurrent()
	waiting := ask(t, server, "/")
	time.Sleep(time.Second)
	slow.current.print(book{"index.html": []byte("built at last")})
	answer := make([]byte, 1<<12)
	n, err := io.ReadAtLeast(waiting, answer, 200)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) || !strings.Contains(string(answer[:n]), "200 OK") {
		t.Errorf("%q, %v", answer[:n], err)
	}
}

// TestALimitIsForOneAnswer asks again on a connection that had an answer longer
// ago than an answer may take.
func TestALimitIsForOneAnswer(t *testing.T) {
	_, server := serve(t, book{"index.html": []byte("<p>x")}, limits{200 * time.Millisecond, time.Minute})
	c := ask(t, server, "/")
	answers := bufio.NewReader(c)
	first, err := http.ReadResponse(answers, nil)
	must(t, err)
	_, err = io.Copy(io.Discard, first.Body)
	must(t, err)
	time.Sleep(600 * time.Millisecond)
	_, err = io.WriteString(c, "POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 0\r\n\r\n")
	must(t, err)
	if second, err := http.ReadResponse(answers, nil); err != nil || second.StatusCode != http.StatusMethodNotAllowed {
		t.Errorf("answered with %v, %v", second, err)
	}
}

func TestTheUsualLimits(t *testing.T) {
	if usual.write <= heartbeat || usual.idle <= 0 || usual.idle > 5*time.Minute {
		t.Errorf("limits %v with a heartbeat of %v", usual, heartbeat)
	}
}
