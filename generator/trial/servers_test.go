//go:build judges

package trial

import (
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"testing"

	"slipbook/calculators/catalog"
)

// webServer is a server as a studio may have one: the program, and how it serves a
// folder at a port, as a folder of its own below the root.
type webServer struct {
	name  string
	start func(dir, port string) (func(), error)
}

// nginxSettings serves a folder with one process, and keeps all that it writes there.
// It knows no types, so that all depends on what browsers make of files without any.
const nginxSettings = `daemon off; master_process off; pid %[1]s/pid; error_log %[1]s/errors;
events {}
http {
	access_log off; client_body_temp_path %[1]s/body; proxy_temp_path %[1]s/proxy; fastcgi_temp_path %[1]s/fastcgi;
	uwsgi_temp_path %[1]s/uwsgi; scgi_temp_path %[1]s/scgi;
	types { text/html html; text/css css; text/javascript js; image/svg+xml svg; }
	gzip %[4]s; gzip_types *; gzip_min_length 1;
	server { listen 127.0.0.1:%[3]s; root %[2]s; }
}
`

// nginx starts nginx, which packs everything or nothing.
func nginx(packing string) func(dir, port string) (func(), error) {
	return func(dir, port string) (func(), error) {
		own, err := os.MkdirTemp(workshop, "nginx-")
		if err != nil {
			return nil, err
		}
		settings := filepath.Join(own, "settings")
		if err := os.WriteFile(settings, fmt.Appendf(nil, nginxSettings, own, dir, port, packing), 0o600); err != nil {
			return nil, err
		}
		return begin(nil, "nginx", "-p", own, "-c", settings)
	}
}

var webServers = []webServer{
	{"nginx, packed", nginx("on")},
	{"nginx, not packed", nginx("off")},
	{"busybox httpd", func(dir, port string) (func(), error) {
		return begin(nil, "busybox", "httpd", "-f", "-h", dir, "-p", "127.0.0.1:"+port)
	}},
	{"python http.server", func(dir, port string) (func(), error) {
		return begin(nil, "python3", "-m", "http.server", "-b", "127.0.0.1", "-d", dir, port)
	}},
}

// TestWebServers opens a lesson, a calculator and a plan as common servers serve them,
// at the root and in a folder.
func TestWebServers(t *testing.T) {
	t.Parallel()
	h := published(t)
	tree, err := os.MkdirTemp(workshop, "served-")
	if err != nil {
		t.Fatal(err)
	}
	for _, in := range []string{tree, filepath.Join(tree, "a", "b")} {
		if err := os.CopyFS(in, os.DirFS(h.dir)); err != nil {
			t.Fatal(err)
		}
	}
	for _, s := range webServers {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			home := s.at(t, tree)
			b := open(t)
			for _, in := range []string{"/", "/a/b/"} {
				b.worksAt(home + in)
			}
		})
	}
}

// at starts a server for a folder, and returns the address of its root.
func (s webServer) at(t testing.TB, dir string) string {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0") // finds a port that is free
	if err != nil {
		t.Fatal(err)
	}
	_, port, _ := net.SplitHostPort(listener.Addr().String())
	listener.Close()
	end, err := s.start(dir, port)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(end)
	home := "http://127.0.0.1:" + port
	if !eventually(func() bool {
		response, err := http.Get(home + "/index.html")
		if err == nil {
			response.Body.Close()
		}
		return err == nil && response.StatusCode == http.StatusOK
	}) {
		t.Fatal("the server does not answer")
	}
	return home
}

// worksAt goes from the root of a handbook to a lesson, and has a calculator and a
// state's plan answer.
func (b *tab) worksAt(home string) {
	b.t.Helper()
	b.heard()
	b.visit(home)
	b.goBy(`main a[href$="states/leather-hard.html"]`)
	b.ready()
	b.goBy(`main a[href^="../slip/"]`)
	c := catalog.Find("slip-density")
	b.visit(home + "calculators/" + c.Name + ".html")
	f := &form{tab: b, calc: c}
	b.ready()
	s := settings(b.t)
	f.fill(c.Example.Given, false)
	f.agree(c.Example.Given, s)
	if said, _ := b.heard(); len(said) > 0 {
		b.t.Errorf("on the console: %v", said)
	}
}
