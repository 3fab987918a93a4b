//go:build !js

package web

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"
)

// probe waits in the page until every label drawn shows a word, and gives the
// milliseconds from the key that was pressed to the frame that showed it.
const probe = `new Promise((done) => {
	const seen = () => {
		const arts = [...document.querySelectorAll("#labels .art")], on = document.querySelector("#labels").getBoundingClientRect();
		const near = arts.filter((a) => { const at = a.getBoundingClientRect(); return at.top < on.bottom && at.bottom > on.top; });
		const which = %q, shows = (a) => a.shadowRoot.textContent.includes(%q);
		const how = which === "all" ? arts.length >= 9 && arts.every(shows) : which === "sight" ? near.length > 0 && near.every(shows) : arts.some(shows);
		if (how) setTimeout(() => done(performance.now() - window.pressed)); else requestAnimationFrame(seen);
	};
	seen();
})`

// From a key typed to the label on the screen, with one piece shown and with
// all. Timings are logged, not asserted: JARMARK_SPEED=1 asks for them.
func TestBrowserSpeed(t *testing.T) {
	if os.Getenv("JARMARK_SPEED") == "" {
		t.Skip("measures; JARMARK_SPEED=1 asks for it")
	}
	b := browse(t, kitchenDir(t), 1280, 800)
	b.open("/batch/plum.toml")
	b.do(chromedp.Evaluate[chromedp.Void](`addEventListener("keydown", (e) => { window.pressed = e.timeStamp; }, true)`))
	// Words that stand on the first label, on every one, and typed fast.
	b.keys("one piece", "f-name", "any", 300*time.Millisecond)
	b.do(chromedp.Evaluate[chromedp.Void](`for (const c of document.querySelectorAll(".chips [data-piece]")) if (c.ariaPressed === "false") c.click()`))
	b.until("all pieces are drawn", `document.querySelectorAll("#labels .art").length >= 9`)
	b.keys("all pieces, the first on the screen", "f-name", "any", 300*time.Millisecond)
	b.keys("all pieces, each in sight", "f-name", "sight", 300*time.Millisecond)
	b.keys("all pieces, also those out of sight", "f-name", "all", 300*time.Millisecond)
}

// busy is the processor time, in milliseconds, the page's own thread has taken
// so far: a figure that other work on the machine moves little.
func (b *tab) busy() (ms float64) {
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		if _, err := chromedp.Call(ctx, performance.Enable, performance.EnableParams{TimeDomain: performance.EnableTimeDomainThreadTicks}); err != nil {
			return err
		}
		got, err := chromedp.Call(ctx, performance.GetMetrics, cdp.Empty{})
		for _, m := range got.Metrics {
			if m.Name == "TaskDuration" {
				ms = m.Value * 1000
			}
		}
		return err
	}))
	return ms
}

// keys types letters one after another into a field, each when the one before
// is on the labels and a pause has passed.
func (b *tab) keys(what, id, how string, pause time.Duration) {
	b.typeIn(id, "Plum jam ")
	time.Sleep(time.Second)
	took, begun := []float64{}, b.busy()
	word := ""
	for i := range 40 {
		letter := string(rune('a' + i%26))
		if word += letter; len(word) > 8 {
			b.typeIn(id, "Plum jam ")
			time.Sleep(pause)
			word = letter
		}
		b.do(chromedp.KeyEvent(letter))
		ms, err := chromedp.Run(b.ctx, chromedp.Evaluate[float64](fmt.Sprintf(probe, how, word), chromedp.EvalAwaitPromise))
		if err != nil {
			b.Fatal(err)
		}
		took = append(took, ms)
		time.Sleep(pause)
	}
	busy := (b.busy() - begun) / float64(len(took))
	slices.Sort(took)
	load, _ := os.ReadFile("/proc/loadavg") // not there on every system
	one, _, _ := strings.Cut(string(load), " ")
	b.Logf("%s: p50 %.0f ms, p95 %.0f ms, longest %.0f ms of %d keys, the page's thread %.0f ms a key, load %s", what, took[len(took)/2], took[len(took)*95/100], took[len(took)-1], len(took), busy, one)
}
