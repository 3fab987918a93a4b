//go:build !js

package main

import (
	"context"
	"encoding/json"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/tracing"
	"github.com/chromedp/chromedp"

	"jarmark/internal/app/site"
)

// built is the site, compressed quickly, once for all tests.
var built = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "jarmark-site-")
	if err == nil {
		err = build(dir, true)
	}
	return dir, err
})

func TestMain(m *testing.M) {
	code := m.Run()
	if dir, err := built(); err == nil && !testing.Short() {
		os.RemoveAll(dir)
	}
	os.Exit(code)
}

// window is one window of a real Chromium on the site.
type window struct {
	*testing.T
	ctx  context.Context
	base string
	stop func() // the server

	mu    sync.Mutex
	wrong []string // what the console complained of
}

// visit opens a window on the site. Without a browser the test is skipped,
// unless JARMARK_BROWSER=require says there must be one.
func visit(t *testing.T, width, height int64) *window {
	t.Helper()
	if testing.Short() {
		t.Skip("builds for the browser, and starts one")
	}
	path, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("JARMARK_BROWSER") == "require" {
			t.Fatal("JARMARK_BROWSER=require, and there is no chromium")
		}
		t.Skip("no chromium here: the static site is not tried in a browser")
	}
	dir, err := built()
	if err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(site.Handler(os.DirFS(dir)))
	t.Cleanup(server.Close)
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.UserDataDir(t.TempDir()), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-sync", true))
	limited, stop := context.WithTimeout(context.Background(), 4*time.Minute) // other work may share the machine
	t.Cleanup(stop)
	allocated, stopBrowser := chromedp.NewExecAllocator(limited, options...)
	t.Cleanup(stopBrowser)
	ctx, closeTab := chromedp.NewContext(allocated)
	t.Cleanup(closeTab)
	w := &window{T: t, ctx: ctx, base: server.URL, stop: server.Close}
	w.do(chromedp.EmulateViewport(width, height))
	go w.listen(chromedp.Console(ctx))
	return w
}

func (w *window) listen(messages func(func(chromedp.ConsoleMessage, error) bool)) {
	for m, err := range messages {
		if err != nil {
			return
		}
		if m.Type == chromedp.ConsoleError || m.IsException() || m.Type == chromedp.ConsoleWarning {
			w.mu.Lock()
			w.wrong = append(w.wrong, m.String()+" "+m.URL)
			w.mu.Unlock()
		}
	}
}

func (w *window) do(steps ...chromedp.Action[chromedp.Void]) {
	w.Helper()
	if err := chromedp.Do(w.ctx, steps...); err != nil {
		w.Fatal(err)
	}
}

// page is how scripts of the tests reach the page in its frame.
const page = `const F = document.getElementById("page"), P = F?.contentDocument, one = (s) => P?.querySelector(s);`

// until waits for a condition; F is the frame, P the page in it, one() a query.
func (w *window) until(what, js string) {
	w.Helper()
	for range 3600 {
		if ok, err := chromedp.Run(w.ctx, chromedp.Evaluate[bool](`(() => { `+page+` return !!(`+js+`) })()`)); err == nil && ok {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	state, _ := chromedp.Run(w.ctx, chromedp.Evaluate[string](`(() => { `+page+` return location.href + " " + document.body.innerText.slice(0, 400) + " | " + (P?.body?.innerText ?? "").slice(0, 900) })()`))
	w.mu.Lock()
	defer w.mu.Unlock()
	w.Fatalf("waited in vain: %s\n%s\nconsole: %s", what, state, strings.Join(w.wrong, "\n"))
}

// run runs a script, waiting for its promise.
func (w *window) run(js string) string {
	w.Helper()
	out, err := chromedp.Run(w.ctx, chromedp.Evaluate[string](`(async () => { `+page+js+`; return "" })()`, chromedp.EvalAwaitPromise))
	if err != nil {
		w.Fatal(err)
	}
	return out
}

// silent fails when the console complained.
func (w *window) silent() {
	w.Helper()
	w.mu.Lock()
	defer w.mu.Unlock()
	for _, m := range w.wrong {
		w.Errorf("console: %s", m)
	}
}

func (w *window) downloads(dir string) {
	w.Helper()
	w.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := chromedp.Call(ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
			Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir})
		return err
	}))
}

// arrived waits for a downloaded file to be whole.
func (w *window) arrived(pattern string) []byte {
	w.Helper()
	size := -1
	for range 1200 {
		if found, _ := filepath.Glob(pattern); len(found) == 1 {
			if data, err := os.ReadFile(found[0]); err == nil && len(data) > 0 && len(data) == size {
				return data
			} else if err == nil {
				size = len(data)
			}
		}
		time.Sleep(50 * time.Millisecond)
	}
	w.Fatalf("no file %s arrived", pattern)
	return nil
}

// traced counts the events of a kind, by name, that the browser traces meanwhile.
func (w *window) traced(kind string, work func()) map[string]int {
	w.Helper()
	var mu sync.Mutex
	seen, done := map[string]int{}, make(chan struct{}, 1)
	err := chromedp.ListenBrowser(w.ctx, func(event any) {
		switch e := event.(type) {
		case *tracing.EventDataCollected:
			mu.Lock()
			defer mu.Unlock()
			for _, v := range e.Value {
				var named struct{ Name string }
				if json.Unmarshal(v, &named) == nil {
					seen[named.Name]++
				}
			}
		case *tracing.EventTracingComplete:
			done <- struct{}{}
		}
	})
	if err == nil {
		_, err = chromedp.CallBrowser(w.ctx, tracing.Start, tracing.StartParams{TraceConfig: &tracing.TraceConfig{IncludedCategories: []string{kind}}})
	}
	if err != nil {
		w.Fatal(err)
	}
	work()
	if _, err := chromedp.CallBrowser(w.ctx, tracing.End, cdp.Empty{}); err != nil {
		w.Fatal(err)
	}
	<-done
	mu.Lock()
	defer mu.Unlock()
	return seen
}

// accessible runs axe-core on the outer page, where .ci/run has fetched it.
func (w *window) accessible() {
	w.Helper()
	script, err := os.ReadFile(os.Getenv("JARMARK_AXE"))
	if err != nil {
		w.Log("without axe-core: JARMARK_AXE does not name its script")
		return
	}
	w.do(chromedp.Evaluate[chromedp.Void](string(script)))
	if found := w.run(`return (await axe.run({ exclude: ["#page"] }, { resultTypes: ["violations"], preload: false })).violations.map((v) => v.id + ": " + v.help + " " + v.nodes.map((n) => n.target).join(" ")).join("\n")`); found != "" {
		w.Errorf("axe-core: %s", found)
	}
}
