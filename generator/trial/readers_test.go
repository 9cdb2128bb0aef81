//go:build judges

package trial

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"fmt"
	"math"
	"mime"
	"net"
	"net/http"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

// packing are the ends of the names of what a server packs on the way.
const packing = ".html .css .js .svg .webmanifest"

// meter serves a copy of the published demo course with the settings that README
// gives, and counts what it sends: every byte on the line, heads of answers too.
type meter struct {
	*outpost
	bytes, requests atomic.Int64
}

func meterOf(t *testing.T) *meter {
	t.Helper()
	m := &meter{outpost: &outpost{handbook: &handbook{dir: filepath.Join(t.TempDir(), "handbook")}, t: t}}
	if err := os.CopyFS(m.dir, os.DirFS(published(t).dir)); err != nil {
		t.Fatal(err)
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	m.home = "http://" + listener.Addr().String() + folder
	server := &http.Server{Handler: m}
	go server.Serve(&countingListener{listener, &m.bytes})
	t.Cleanup(func() { server.Close() })
	return m
}

// countingListener counts what is written to its connections.
type countingListener struct {
	net.Listener
	sent *atomic.Int64
}

func (l *countingListener) Accept() (net.Conn, error) {
	c, err := l.Listener.Accept()
	return &countingConn{c, l.sent}, err
}

type countingConn struct {
	net.Conn
	sent *atomic.Int64
}

func (c *countingConn) Write(data []byte) (int, error) {
	n, err := c.Conn.Write(data)
	c.sent.Add(int64(n))
	return n, err
}

func (m *meter) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	m.requests.Add(1)
	at := strings.TrimPrefix(r.URL.Path, folder)
	data, err := os.ReadFile(filepath.Join(m.dir, filepath.FromSlash(at)))
	if err != nil {
		http.NotFound(w, r)
		return
	}
	head := w.Header()
	head.Set("ETag", fmt.Sprintf("%q", fmt.Sprintf("%x", sha256.Sum256(data))[:16]))
	head.Set("Cache-Control", "no-cache")
	if strings.HasPrefix(at, "assets/") || strings.HasPrefix(at, "pictures/") {
		head.Set("Cache-Control", "public, max-age=31536000, immutable")
	}
	head.Set("Content-Type", types[".bin"])
	if kind := mime.TypeByExtension(path.Ext(at)); types[path.Ext(at)] != "" {
		head.Set("Content-Type", types[path.Ext(at)])
	} else if kind != "" {
		head.Set("Content-Type", kind)
	}
	if end := path.Ext(at); end != "" && strings.Contains(packing, end) {
		head.Set("Content-Encoding", "gzip")
		data = packed(data)
	}
	http.ServeContent(w, r, at, time.Time{}, bytes.NewReader(data))
}

// packed packs as servers do by themselves.
func packed(data []byte) []byte {
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	w.Write(data)
	w.Close()
	return out.Bytes()
}

// spent is what was sent in answer to how many requests.
type spent struct {
	requests int
	kB       float64
}

// taken waits until nothing more is asked for, and returns what was sent since the
// last call.
func (m *meter) taken() spent {
	for last := int64(-1); m.requests.Load() != last; time.Sleep(1500 * time.Millisecond) {
		last = m.requests.Load()
	}
	return spent{int(m.requests.Swap(0)), float64(m.bytes.Swap(0)) / 1000}
}

// reads is a reader's visit: the home page, three lessons and a calculator.
func (b *tab) reads(m *meter, lessons []string) {
	b.t.Helper()
	b.visit(m.home + "index.html")
	for _, address := range lessons {
		b.visit(m.home + address)
		ask[bool](b, `(dispatchEvent(new Event("scroll")), true)`) // who reads may want one step to a screen
		if !b.until(`!document.querySelector("[data-step-in]") || globalThis.atStep`) {
			b.t.Fatalf("%s: the step view does not come", address)
		}
	}
	b.visit(m.home + "calculators/slip-density.html")
	if b.ready(); !b.until("globalThis.atBench") {
		b.t.Fatal("bench mode does not come")
	}
}

// costs are what README says that a reader costs a server, by the first words of each
// line of its table.
var costs = []string{"First visit, nothing kept", "First visit, the handbook kept", "Next visit, nothing kept", "Next visit, the handbook kept", "New edition, one lesson changed"}

// TestReadersCost measures what README says that readers cost, which has to be right
// within a twentieth, and within a request or two.
func TestReadersCost(t *testing.T) {
	t.Parallel()
	m := meterOf(t)
	all := published(t).all(t, "lesson")
	lessons := []string{all[0], all[len(all)/2], all[len(all)-1]}
	found := map[string]spent{}

	plain := onLine(t, "{effectiveType: '4g'}")
	plain.reads(m, lessons)
	found[costs[0]] = m.taken()
	plain.visit("about:blank")
	plain.reads(m, lessons)
	found[costs[2]] = m.taken()

	b := keeper(t)
	b.keepAll(m.home + "index.html")
	b.reads(m, lessons)
	found[costs[1]] = m.taken()
	b.visit("about:blank")
	b.reads(m, lessons)
	found[costs[3]] = m.taken()
	m.republish("slip/coat-a-pot", "A sentence more.")
	b.visit(m.home + "index.html")
	if !b.until(newsSays(newWords)) {
		t.Fatal("the new edition is not taken")
	}
	found[costs[4]] = m.taken()

	for n, said := range readersCost(t) {
		is := found[costs[n]]
		t.Logf("| %s | %d | %.1f |", costs[n], is.requests, is.kB)
		if math.Abs(said.kB-is.kB) > max(1, is.kB/20) || math.Abs(float64(said.requests-is.requests)) > max(2, float64(is.requests)/20) {
			t.Errorf("%s: README says %d requests and %.0f kB, measured %d and %.1f", costs[n], said.requests, said.kB, is.requests, is.kB)
		}
	}
}

// line of the table of what readers cost: what, requests, kB.
var costLine = regexp.MustCompile(`(?m)^\| ([^|]+) \| ([0-9,]+) \| ([0-9,.]+) \|$`)

// readersCost reads the table, and holds the sum that README works out to it.
func readersCost(t *testing.T) []spent {
	t.Helper()
	text, err := os.ReadFile(root + "/README.md")
	if err != nil {
		t.Fatal(err)
	}
	number := func(s string) float64 {
		n, err := strconv.ParseFloat(strings.ReplaceAll(s, ",", ""), 64)
		if err != nil {
			t.Fatalf("README says %q: %v", s, err)
		}
		return n
	}
	by := map[string]spent{}
	for _, line := range costLine.FindAllStringSubmatch(string(text), -1) {
		by[line[1]] = spent{int(number(line[2])), number(line[3])}
	}
	var said []spent
	for _, name := range costs {
		s, ok := by[name]
		if !ok {
			t.Fatalf("README does not say what this costs: %s", name)
		}
		said = append(said, s)
	}
	sum := regexp.MustCompile(`keep the handbook, come back (\d+) times and take (\d+) new editions cost ([0-9,]+) GB and ([0-9,]+) million requests`).FindStringSubmatch(string(text))
	if sum == nil {
		t.Fatal("README works nothing out")
	}
	again, editions := number(sum[1]), number(sum[2])
	gigabytes := said[1].kB + again*said[3].kB + editions*said[4].kB
	millions := float64(said[1].requests) + again*float64(said[3].requests) + editions*float64(said[4].requests)
	if math.Abs(number(sum[3])-gigabytes) > 1 || number(sum[4]) != millions {
		t.Errorf("README works out %s GB and %s million requests, want %.0f and %.0f", sum[3], sum[4], gigabytes, millions)
	}
	return said
}
