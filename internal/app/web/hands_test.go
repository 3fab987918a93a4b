//go:build !js

package web

import (
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// contrast is the ratio of a chosen element's text to what lies behind it while
// the mouse is on it (WCAG 2.2, 1.4.3: relative luminance).
const contrast = `((e) => {
	const parts = (c) => c.match(/[\d.]+/g).map(Number);
	const light = ([r, g, b]) => [r, g, b].map((v) => (v /= 255) <= .04045 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4).reduce((n, v, i) => n + v * [.2126, .7152, .0722][i], 0);
	let x = e, back;
	for (;;) { back = parts(getComputedStyle(x).backgroundColor); if (back.length === 3 || back[3] > 0) break; x = x.parentElement; }
	const [a, b] = [light(parts(getComputedStyle(e).color)), light(back)].sort((p, q) => q - p);
	return !e.matches(":hover") ? -1 : (a + .05) / (b + .05);
})(document.querySelector(%q))`

// What was just clicked can be read while the mouse is still on it, light and
// dark: 4.5 to 1 (WCAG 2.2, 1.4.3).
func TestBrowserHoveredCanBeRead(t *testing.T) {
	b := browse(t, kitchenDir(t), 1280, 800)
	for _, night := range []bool{false, true} {
		if night {
			b.do(chromedp.Func(dark))
		}
		b.open("/batch/plum.toml")
		for _, s := range []string{`[data-goto="jars"]`, `.chips [data-piece="lid"]`, "#print", "#save"} {
			if s == "#print" {
				b.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("printing").showModal = () => {}`))
			}
			b.click(s)
			if ratio, err := chromedp.Run(b.ctx, chromedp.Evaluate[float64](fmt.Sprintf(contrast, s))); err != nil || ratio < 4.5 {
				t.Errorf("%s, dark %v: %.2f to 1, %v", s, night, ratio, err)
			}
		}
	}
}

// Work that came back may be dropped, saved meanwhile or not: the file is again
// as it was, and nothing conflicts with itself.
func TestBrowserDropsWhatCameBack(t *testing.T) {
	for _, first := range []bool{true, false} {
		dir := kitchenDir(t)
		b := browse(t, dir, 1280, 800)
		b.open("/batch/plum.toml")
		left := fmt.Sprintf(`JSON.stringify({ text: %q, changes: [], base: %q })`, strings.Replace(plum, "Plum jam", "Plum jam left over", 1), mark([]byte(plum)))
		b.do(chromedp.Evaluate[chromedp.Void](`sessionStorage.setItem("draft:plum.toml", ` + left + `)`))
		b.open("/batch/plum.toml")
		b.says("#notices", "unsaved changes from before")
		b.labelSays("left over")
		if first {
			b.onDisk("plum.toml", "left over")
			b.says("#state", "Saved")
		}
		b.do(chromedp.Evaluate[chromedp.Void](`[...document.querySelectorAll("#notices button")].find((x) => x.textContent === "Drop them").click()`))
		b.until("the form is as before", `document.getElementById("f-name").value === "Plum jam"`)
		b.typeIn("f-serve", "toast")
		b.onDisk("plum.toml", "toast")
		b.says("#state", "Saved")
		if now := get(t, dir, "plum.toml"); strings.Contains(now, "left over") || !strings.Contains(now, "toast") {
			t.Errorf("the file holds\n%s", now)
		}
		if open, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](`document.getElementById("conflict").open || document.querySelector('#notices [data-key="conflict"]') !== null`)); err != nil || open {
			t.Errorf("it conflicts with itself, %v", err)
		}
		b.silent("409")
	}
}

// The dialog for printing reads numbers as people write them, prints on Enter,
// and says so when a field holds no number.
func TestBrowserPrintDialog(t *testing.T) {
	dir := kitchenDir(t)
	b := browse(t, dir, 1280, 800)
	var mu sync.Mutex
	var asked []string
	inner := b.server.Config.Handler
	b.server.Config.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/do/print" {
			body := make([]byte, 1<<16)
			n, _ := r.Body.Read(body)
			mu.Lock()
			asked = append(asked, string(body[:n]))
			mu.Unlock()
			w.Header().Set("Content-Type", jsonType)
			fmt.Fprint(w, `{"url":"favicon.ico","name":"x.pdf"}`)
			return
		}
		inner.ServeHTTP(w, r)
	})
	last := func() string {
		mu.Lock()
		defer mu.Unlock()
		if len(asked) == 0 {
			return ""
		}
		return asked[len(asked)-1]
	}
	count := func() int {
		mu.Lock()
		defer mu.Unlock()
		return len(asked)
	}
	b.open("/batch/plum.toml")
	b.click(`.chips [data-piece="lid"]`)
	b.until("the lids are drawn", `document.querySelectorAll("#labels .art").length === 2`)
	b.click("#print")
	b.until("the sheet is shown", `document.querySelectorAll("#print-sheets input").length === 1`)
	for text, want := range map[string]string{"1,000": `"copies":1000`, "12": `"copies":12`, " 7 ": `"copies":7`, "": `"copies":0`} {
		b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`{ const f = document.getElementById("print-copies"); f.value = %q; f.focus(); }`, text)))
		before := count()
		b.do(chromedp.KeyEvent("\r"))
		for range 200 {
			if count() > before {
				break
			}
			time.Sleep(20 * time.Millisecond)
		}
		if !strings.Contains(last(), want) {
			t.Errorf("copies %q, Enter: asked for %s", text, last())
		}
		b.until("it stays open", `document.getElementById("printing").open`)
	}
	n := count()
	for _, text := range []string{"1e9", "abc", "1.5", "-2", "1,00"} {
		b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`document.getElementById("print-copies").value = %q`, text)))
		b.click("#print-save")
		b.says("#printing-state", "write a whole number")
	}
	b.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("print-copies").value = ""; document.querySelector("#print-sheets input").value = "abc"`))
	b.click("#print-save")
	b.says("#printing-state", "Labels gone: write a whole number")
	if count() != n {
		t.Errorf("printed all the same: %s", last())
	}
	b.do(chromedp.Evaluate[chromedp.Void](`{
		document.querySelector("#print-sheets input").value = "";
		document.querySelector("#printing details").open = true;
		document.getElementById("print-as").value = "png 600";
		for (const id of ["print-lines", "print-trimmed"]) document.getElementById(id).checked = true;
		const given = new DataTransfer();
		given.items.add(new File(["abc"], "shop.icc"));
		document.getElementById("print-profile").files = given.files;
	}`))
	b.click("#print-save")
	b.says("#printing-state", "Done.")
	for _, want := range []string{`"as":"png"`, `"dpi":600`, `"trimmed":true`, `"cutLines":true`, `"profile":"YWJj"`} {
		if !strings.Contains(last(), want) {
			t.Errorf("for a print shop: asked for %s, want %s", last(), want)
		}
	}
}

// A program that hangs is told of, while saving and while drawing; when it
// answers again nothing typed is lost.
func TestBrowserTellsOfAHungProgram(t *testing.T) {
	dir := kitchenDir(t)
	b := browse(t, dir, 1280, 800)
	b.open("/batch/plum.toml")
	goOn := make(chan struct{})
	answer := sync.OnceFunc(func() { close(goOn) })
	t.Cleanup(answer) // or the server would wait for its handlers
	inner := b.server.Config.Handler
	b.server.Config.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		<-goOn
		inner.ServeHTTP(w, r)
	})
	b.do(chromedp.Evaluate[chromedp.Void](`{
		const state = document.getElementById("state");
		window.said = [];
		new MutationObserver(() => window.said.push(state.textContent)).observe(state, { childList: true, characterData: true, subtree: true });
	}`))
	b.typeIn("f-name", "Typed into nothing")
	for _, words := range []string{"Saving", "Waiting for jarmark"} { // whichever comes first
		b.until("it is said: "+words, fmt.Sprintf(`window.said.some((x) => x.includes(%q))`, words))
	}
	answer()
	b.onDisk("plum.toml", "Typed into nothing")
	b.labelSays("nothing")
	b.says("#state", "Saved")
}

// The pictures of designs follow what is saved, and a finding told on another
// page opens its field.
func TestBrowserFollowsWhatIsSaved(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "plum.toml", plum+"\n[[gift]]\nto = \"Hedy\"\njars = 20\n")
	b := browse(t, dir, 1280, 800)
	b.open("/pack")
	b.click(`.finding.error .cite a`)
	b.until("the field has the focus", `location.pathname === "/batch/plum.toml" && document.activeElement.id.startsWith("f-gift[0].")`)
	source := `document.querySelector('#form img[src*="picture/design"]').src`
	was, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](source))
	if err != nil {
		t.Fatal(err)
	}
	b.step("what")
	b.typeIn("f-name", "Damson jam")
	b.onDisk("plum.toml", "Damson jam")
	b.until("the pictures are asked for anew", source+fmt.Sprintf(` !== %q`, was))
	b.silent()
}

// At 1280 by 800 what is to be mended is on the screen, whole; at 1920 by 1080
// the label is shown larger and no field cuts what it holds.
func TestBrowserRoomOnLargeScreens(t *testing.T) {
	dir := kitchenDir(t)
	for _, name := range []string{"kitchen.toml", "strawberry-rhubarb.toml"} {
		data, err := os.ReadFile(filepath.Join("../../../testdata/demo", name))
		if err != nil {
			t.Fatal(err)
		}
		put(t, dir, name, string(data))
	}
	put(t, dir, "wrong.toml", strings.Replace(plum, "2 kg", "2 kq", 1))
	width := map[int64]float64{}
	for _, size := range [][2]int64{{1280, 800}, {1920, 1080}} {
		b := browse(t, dir, size[0], size[1])
		b.open("/batch/wrong.toml")
		b.says("#findings", "kq")
		b.faults(map[string]string{"the first finding is on the screen": `(() => { const r = document.querySelector("#findings .finding").getBoundingClientRect(); return r.top >= 0 && r.bottom <= innerHeight && r.height > 20 &&
			[r.top + 3, r.bottom - 3].every((y) => document.elementFromPoint(r.left + 30, y)?.closest("#findings .finding")); })()`})
		b.open("/batch/strawberry-rhubarb.toml")
		b.do(chromedp.Evaluate[chromedp.Void](`document.querySelectorAll("#form details").forEach((d) => { d.open = true; })`))
		cut, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](`[...document.querySelectorAll("[data-goto]")].flatMap((step) => { step.click();
			return [...document.querySelectorAll("#form input[type=text]")].filter((f) => f.checkVisibility() && f.scrollWidth > f.clientWidth + 1).map((f) => f.id + ": " + f.value); }).join("; ")`))
		if err != nil || cut != "" && size[0] > 1900 {
			t.Errorf("%d px: fields cut what they hold: %s, %v", size[0], cut, err)
		}
		if width[size[0]], err = chromedp.Run(b.ctx, chromedp.Evaluate[float64](`document.querySelector("#labels .art").getBoundingClientRect().width`)); err != nil {
			t.Fatal(err)
		}
	}
	if width[1920] < width[1280]*1.1 {
		t.Errorf("the label is %.0f px wide at 1280 px, %.0f at 1920", width[1280], width[1920])
	}
}

// What newer typing has overtaken is dropped on its way, at once: the program
// does not draw for nobody, and no pause is waited for.
func TestBrowserDropsStaleRequests(t *testing.T) {
	b := browse(t, kitchenDir(t), 1280, 800)
	b.open("/batch/plum.toml")
	b.labelSays("Plum")
	inner := b.server.Config.Handler
	var once sync.Once
	asked, dropped := make(chan struct{}), make(chan bool, 1)
	b.server.Config.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		held := false
		if strings.HasSuffix(r.URL.Path, "/do/look") {
			once.Do(func() { held = true })
		}
		if !held {
			inner.ServeHTTP(w, r)
			return
		}
		close(asked)
		_, _ = io.Copy(io.Discard, r.Body) // the end of a request is heard once its body is read
		select {
		case <-r.Context().Done():
			dropped <- true
		case <-time.After(10 * time.Second):
			dropped <- false
		}
	})
	set := func(name string) {
		b.do(chromedp.Evaluate[chromedp.Void](`{ const t = document.getElementById("text"); t.focus(); t.select(); }`),
			chromedp.Func(insert(strings.Replace(plum, `"Plum jam"`, `"`+name+`"`, 1))))
	}
	set("Damson jam")
	<-asked
	set("Quince jam")
	b.labelSays("Quince")
	if !<-dropped {
		t.Error("the first request was waited for")
	}
}
