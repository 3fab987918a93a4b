//go:build !js

package web

import (
	"context"
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"
)

// tab is one window of a real Chromium on a folder being served.
type tab struct {
	*testing.T
	ctx    context.Context
	dir    string
	base   string
	server *httptest.Server

	mu    sync.Mutex
	wrong []string // what the console complained of
}

// browse opens a window. Without a browser the test is skipped, unless
// JARMARK_BROWSER=require says there must be one.
func browse(t *testing.T, dir string, width, height int64) *tab {
	t.Helper()
	if testing.Short() {
		t.Skip("starts a browser")
	}
	path, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("JARMARK_BROWSER") == "require" {
			t.Fatal("JARMARK_BROWSER=require, and there is no chromium")
		}
		t.Skip("no chromium here: the page is not tried in a browser")
	}
	server := httptest.NewServer(handlerOf(t, dir))
	t.Cleanup(func() { server.Close() })
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.UserDataDir(t.TempDir()), chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-sync", true),
		chromedp.Flag("force-prefers-reduced-motion", true)) // colours must not be measured half way
	limited, stop := context.WithTimeout(context.Background(), 5*time.Minute) // other work may share the machine
	t.Cleanup(stop)
	allocated, stopBrowser := chromedp.NewExecAllocator(limited, options...)
	t.Cleanup(stopBrowser)
	ctx, closeTab := chromedp.NewContext(allocated)
	t.Cleanup(closeTab)
	b := &tab{T: t, ctx: ctx, dir: dir, base: server.URL, server: server}
	b.do(chromedp.EmulateViewport(width, height))
	messages := chromedp.Console(ctx)
	go b.listen(messages)
	return b
}

func (b *tab) listen(messages func(func(chromedp.ConsoleMessage, error) bool)) {
	for m, err := range messages {
		if err != nil {
			return
		}
		if m.Type == chromedp.ConsoleError || m.IsException() || m.Type == chromedp.ConsoleWarning {
			b.mu.Lock()
			b.wrong = append(b.wrong, m.String()+" "+m.URL)
			b.mu.Unlock()
		}
	}
}

// silent fails when the console complained, but for the answers expected.
func (b *tab) silent(expected ...string) {
	b.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
complaints:
	for _, w := range b.wrong {
		for _, e := range expected {
			if strings.Contains(w, e) {
				continue complaints
			}
		}
		b.Errorf("console: %s", w)
	}
}

func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.Fatal(err)
	}
}

func (b *tab) open(path string) {
	b.Helper()
	b.do(chromedp.Navigate(b.base + path))
	if strings.HasPrefix(path, "/batch/") || path == "/kitchen" {
		b.until("labels are drawn", `document.querySelector("#labels figure, #labels .hush") !== null`)
	}
}

// until waits for a condition in the page.
func (b *tab) until(what, js string) {
	b.Helper()
	for range 800 {
		if ok, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](js)); err == nil && ok {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	state, _ := chromedp.Run(b.ctx, chromedp.Evaluate[string](`location.pathname + ": " + document.querySelector("main").innerText.slice(0, 900)`))
	b.Fatalf("waited in vain: %s\n%s", what, state)
}

// typeIn replaces what a field holds, key by key.
func (b *tab) typeIn(id, text string) {
	b.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`{ const f = document.getElementById(%q); f.scrollIntoView({block: "center"}); f.focus(); f.select(); }`, id)), chromedp.KeyEvent(text))
}

// click waits until the page has answered what was typed: a finding that comes
// under a field moves what stands below it.
func (b *tab) click(selector string) {
	b.Helper()
	b.until("the page rests", `!document.querySelector("#labels.busy")`)
	b.do(chromedp.Click(selector, chromedp.NodeVisible))
}

// says waits until a selector's text holds words.
func (b *tab) says(selector, words string) {
	b.Helper()
	b.until(selector+" says "+words, fmt.Sprintf(`[...document.querySelectorAll(%q)].some((e) => !e.hidden && e.textContent.includes(%q))`, selector, words))
}

// labelSays waits until the drawn labels hold words.
func (b *tab) labelSays(words string) {
	b.Helper()
	b.until("a label says "+words, fmt.Sprintf(`[...document.querySelectorAll("#labels .art")].some((a) => a.shadowRoot.textContent.includes(%q))`, words))
}

func (b *tab) saved() {
	b.Helper()
	b.do(chromedp.KeyEvent("s", chromedp.KeyModifiers(2))) // Control
	b.says("#state", "Saved")
}

// field shows the step of the form a field stands in.
func (b *tab) step(id string) {
	b.Helper()
	b.click(fmt.Sprintf(`[data-goto=%q]`, id))
}

// downloads lets the browser save files into a folder.
func (b *tab) downloads(dir string) {
	b.Helper()
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := chromedp.Call(ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
			Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir})
		return err
	}))
}

// arrived waits for a file to be whole.
func (b *tab) arrived(pattern string) []byte {
	b.Helper()
	for range 400 {
		if found, _ := filepath.Glob(pattern); len(found) == 1 {
			if data, err := os.ReadFile(found[0]); err == nil && strings.Contains(string(data), "%%EOF") {
				return data
			}
		}
		time.Sleep(25 * time.Millisecond)
	}
	b.Fatalf("no file %s arrived", pattern)
	return nil
}
