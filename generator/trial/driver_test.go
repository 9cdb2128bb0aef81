//go:build judges

package trial

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/chromedp/chromedp/kb"
)

// driver is a browser of another engine than Chromium's, steered by the commands of
// the W3C's WebDriver. Firefox understands them on a socket of its own (Marionette),
// WebKit by way of a server.
type driver struct {
	call   func(command command, parameters any) (json.RawMessage, error)
	close  func()
	prints bool // WebKit's server knows no such command
}

// command is a command of WebDriver: its name in Firefox, and its method and place in
// the standard, below the session's.
type command struct{ name, method, place string }

var (
	navigate  = command{"WebDriver:Navigate", "POST", "/url"}
	refresh   = command{"WebDriver:Refresh", "POST", "/refresh"}
	evaluate  = command{"WebDriver:ExecuteAsyncScript", "POST", "/execute/async"}
	perform   = command{"WebDriver:PerformActions", "POST", "/actions"}
	resize    = command{"WebDriver:SetWindowRect", "POST", "/window/rect"}
	timeouts  = command{"WebDriver:SetTimeouts", "POST", "/timeouts"}
	printPage = command{"WebDriver:Print", "POST", "/print"}
)

// do gives a command whose answer nobody wants.
func (d *driver) do(c command, parameters any) error {
	_, err := d.call(c, parameters)
	return err
}

// errLeft says that a page was left before it could answer. The next one can be asked.
var errLeft = errors.New("the page was left meanwhile")

// ask returns the value of a JavaScript expression, awaited, as JSON. What the page
// throws is an error.
func (d *driver) ask(expression string) (json.RawMessage, error) {
	script := `const done = arguments[arguments.length - 1]
new Promise(kept => kept((` + expression + `))).then(value => done({value: value ?? null}), fault => done({fault: String(fault)}))`
	found, err := d.call(evaluate, map[string]any{"script": script, "args": []any{}})
	if err != nil {
		return nil, err
	}
	var said struct {
		Value json.RawMessage
		Fault string
	}
	if err := json.Unmarshal(found, &said); err != nil {
		return nil, err
	}
	switch {
	case said.Fault != "":
		return nil, errors.New(said.Fault)
	case said.Value == nil:
		return nil, errLeft
	}
	return said.Value, nil
}

// theirKeys are the keys without a letter, as the standard writes them, by how
// Chromium's protocol does.
var theirKeys = strings.NewReplacer(kb.Backspace, "\uE003", kb.Tab, "\uE004", kb.Enter, "\uE007", kb.Escape, "\uE00C",
	kb.ArrowLeft, "\uE012", kb.ArrowRight, "\uE014", kb.ArrowDown, "\uE015", kb.ArrowUp, "\uE013")

// keys presses keys, one after the other, in the box that has the focus.
func (d *driver) keys(text string) error {
	var presses []map[string]any
	for _, letter := range theirKeys.Replace(text) {
		for _, kind := range []string{"keyDown", "keyUp"} {
			presses = append(presses, map[string]any{"type": kind, "value": string(letter)})
		}
	}
	return d.do(perform, map[string]any{"actions": []any{map[string]any{"type": "key", "id": "keys", "actions": presses}}})
}

// press presses the pointer's button at a point of the window, in CSS pixels.
func (d *driver) press(x, y int) error {
	moves := []map[string]any{
		{"type": "pointerMove", "x": x, "y": y, "duration": 0},
		{"type": "pointerDown", "button": 0},
		{"type": "pointerUp", "button": 0},
	}
	return d.do(perform, map[string]any{"actions": []any{map[string]any{"type": "pointer", "id": "finger", "actions": moves}}})
}

// print returns the page printed on paper of a size in centimetres, as PDF.
func (d *driver) print(width, height float64) ([]byte, error) {
	found, err := d.call(printPage, map[string]any{"page": map[string]float64{"width": width, "height": height}})
	if err != nil {
		return nil, err
	}
	var pdf []byte // in base64
	return pdf, json.Unmarshal(found, &pdf)
}

// begin starts a program, and returns how to end it with all that it started.
func begin(variables []string, name string, arguments ...string) (func(), error) {
	program := exec.Command(name, arguments...)
	program.Env = append(os.Environ(), variables...)
	program.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	if err := program.Start(); err != nil {
		return nil, fmt.Errorf("an engine to judge with is missing: %w", err)
	}
	return func() {
		syscall.Kill(-program.Process.Pid, syscall.SIGKILL)
		program.Wait()
	}, nil
}

// startFirefox starts Firefox with a new profile and connects to its socket.
func startFirefox() (*driver, error) {
	profile, err := os.MkdirTemp(workshop, "firefox-")
	if err != nil {
		return nil, err
	}
	// With port 0 it takes one that is free, and writes down which.
	preferences := `user_pref("marionette.port", 0);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("app.update.disabledForTesting", true);
`
	if err := os.WriteFile(filepath.Join(profile, "user.js"), []byte(preferences), 0o600); err != nil {
		return nil, err
	}
	end, err := begin(nil, "firefox-esr", "--headless", "--marionette", "--no-remote", "--profile", profile)
	if err != nil {
		return nil, err
	}
	var line net.Conn
	if !eventually(func() bool {
		port, _ := os.ReadFile(filepath.Join(profile, "MarionetteActivePort"))
		line, err = net.Dial("tcp", "127.0.0.1:"+cmp.Or(strings.TrimSpace(string(port)), "1"))
		return err == nil
	}) {
		end()
		return nil, fmt.Errorf("Firefox does not listen: %w", err)
	}
	m := &marionette{line: line, answers: bufio.NewReader(line)}
	d := &driver{call: m.call, close: func() { line.Close(); end() }, prints: true}
	if _, err = m.receive(); err == nil { // its greeting
		err = d.do(command{name: "WebDriver:NewSession"}, map[string]any{"capabilities": map[string]any{}})
	}
	return d, err
}

// marionette speaks Firefox's protocol: the length of each message, a colon, and JSON.
type marionette struct {
	line    net.Conn
	answers *bufio.Reader
	asked   int
}

// call gives a command and waits for its answer.
func (m *marionette) call(c command, parameters any) (json.RawMessage, error) {
	m.asked++
	message, err := json.Marshal([]any{0, m.asked, c.name, parameters})
	if err != nil {
		return nil, err
	}
	m.line.SetDeadline(time.Now().Add(patience))
	if _, err := fmt.Fprintf(m.line, "%d:%s", len(message), message); err != nil {
		return nil, err
	}
	answer, err := m.receive()
	if err != nil {
		return nil, err
	}
	var parts []json.RawMessage // 1, the number of the command, what went wrong, the answer
	if err := json.Unmarshal(answer, &parts); err != nil || len(parts) != 4 {
		return nil, fmt.Errorf("%s: answered %.200s", c.name, answer)
	}
	if string(parts[2]) != "null" {
		return nil, fmt.Errorf("%s: %.400s", c.name, parts[2])
	}
	return unwrapped(parts[3])
}

// receive reads a message.
func (m *marionette) receive() ([]byte, error) {
	m.line.SetDeadline(time.Now().Add(patience))
	head, err := m.answers.ReadString(':')
	if err != nil {
		return nil, err
	}
	size, err := strconv.Atoi(strings.TrimSuffix(head, ":"))
	if err != nil {
		return nil, err
	}
	message := make([]byte, size)
	_, err = io.ReadFull(m.answers, message)
	return message, err
}

// unwrapped returns what stands under "value" in an answer, which not all have.
func unwrapped(answer []byte) (json.RawMessage, error) {
	var held struct{ Value json.RawMessage }
	if err := json.Unmarshal(answer, &held); err != nil || held.Value == nil {
		return answer, nil
	}
	return held.Value, nil
}

// startWebKit starts WebKit's server and has it open a window, on a screen that
// nobody sees.
func startWebKit() (*driver, error) {
	browsers, _ := filepath.Glob("/usr/lib/*/webkit2gtk-4.*/MiniBrowser")
	if len(browsers) == 0 {
		return nil, errors.New("an engine to judge with is missing: no MiniBrowser of WebKitGTK in /usr/lib")
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0") // finds a port that is free
	if err != nil {
		return nil, err
	}
	_, port, _ := net.SplitHostPort(listener.Addr().String())
	listener.Close()
	end, err := begin([]string{"WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS=1"},
		"xvfb-run", "-a", "WebKitWebDriver", "--host=127.0.0.1", "--port="+port)
	if err != nil {
		return nil, err
	}
	w := &webDriver{server: "http://127.0.0.1:" + port + "/session"}
	wish := map[string]any{"capabilities": map[string]any{"alwaysMatch": map[string]any{
		"webkitgtk:browserOptions": map[string]any{"binary": browsers[0], "args": []string{"--automation"}},
	}}}
	var session json.RawMessage
	if !eventually(func() bool {
		session, err = w.call(command{method: "POST"}, wish)
		return err == nil
	}) {
		end()
		return nil, fmt.Errorf("WebKit does not open a window: %w", err)
	}
	var opened struct{ SessionID string }
	if err := json.Unmarshal(session, &opened); err != nil {
		end()
		return nil, err
	}
	w.server += "/" + opened.SessionID
	return &driver{call: w.call, close: end}, nil
}

// webDriver speaks the standard's protocol: requests with JSON.
type webDriver struct{ server string }

func (w *webDriver) call(c command, parameters any) (json.RawMessage, error) {
	body, err := json.Marshal(parameters)
	if err != nil {
		return nil, err
	}
	request, err := http.NewRequest(c.method, w.server+c.place, bytes.NewReader(body))
	if err != nil {
		return nil, err
	}
	client := http.Client{Timeout: patience}
	response, err := client.Do(request)
	if err != nil {
		return nil, err
	}
	defer response.Body.Close()
	answer, err := io.ReadAll(response.Body)
	if err != nil {
		return nil, err
	}
	if response.StatusCode != http.StatusOK {
		return nil, fmt.Errorf("%s %s: %.400s", c.method, c.place, answer)
	}
	return unwrapped(answer)
}

// engines are the engines beside Chromium's.
var engines = []struct {
	name  string
	start func() (*driver, error)
}{
	{"Firefox", startFirefox},
	{"WebKit", startWebKit},
}

// inEachEngine runs a test in a window of each engine, Chromium's first. In the others
// it is a window with nothing kept, for this test alone.
func inEachEngine(t *testing.T, test func(t *testing.T, b *tab)) {
	t.Run("Chromium", func(t *testing.T) {
		t.Parallel()
		test(t, open(t))
	})
	for _, e := range engines {
		t.Run(e.name, func(t *testing.T) {
			t.Parallel()
			d, err := e.start()
			if err != nil {
				t.Fatal(err)
			}
			t.Cleanup(d.close)
			if err := d.do(timeouts, map[string]any{"script": patience.Milliseconds(), "pageLoad": patience.Milliseconds()}); err != nil {
				t.Fatal(err)
			}
			test(t, &tab{t: t, ctx: t.Context(), driver: d})
		})
	}
}
