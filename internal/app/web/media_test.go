//go:build !js

package web

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// stops are what the Tab key must come to: what is seen and takes keys. One of
// a row of round choices stands for all: arrows go on from there.
const stops = `[...document.querySelectorAll("a[href], button, input:not([type=radio]), select, textarea, summary, [tabindex]")]
	.filter((e) => e.tabIndex >= 0 && !e.disabled && e.checkVisibility({ visibilityProperty: true }))`

// marked tells the element that has the focus, and faults a focus nobody sees:
// it needs an outline, on itself or on the card it stands for (WCAG 2.2, 2.4.7).
const marked = `(() => {
	const e = document.activeElement;
	if (!e || e === document.body) return "";
	const seen = (x) => { const s = getComputedStyle(x); return s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2; };
	let x = e;
	while (x && !seen(x) && !(x === e.closest(".batch") && getComputedStyle(x, "::after").outlineStyle !== "none")) x = x.parentElement;
	e.dataset.reached = "yes";
	return (x || e.type === "date" || // the browser marks its parts itself
		 getComputedStyle(e, "::after").outlineStyle !== "none" ? "ok" : "no outline: ") + e.outerHTML.slice(0, 80);
})()`

// With the Tab key alone a maker comes to all there is, sees where the focus
// is, and is held nowhere.
func TestBrowserKeyboard(t *testing.T) {
	b := browse(t, kitchenDir(t), 1280, 900)
	for _, path := range []string{"/", "/batch/plum.toml", "/pack", "/trace"} {
		b.open(path)
		n, err := chromedp.Run(b.ctx, chromedp.Evaluate[int](stops+`.length`))
		if err != nil || n < 5 {
			t.Fatalf("%s: %d stops, %v", path, n, err)
		}
		for range n + 5 {
			b.do(chromedp.KeyEvent("\t"))
			where, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](marked))
			if err != nil || strings.HasPrefix(where, "no outline") {
				t.Errorf("%s: %s %v", path, where, err)
			}
		}
		left, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](stops+`.filter((e) => !e.dataset.reached).map((e) => e.outerHTML.slice(0, 80)).join("\n")`))
		if err != nil || left != "" {
			t.Errorf("%s: the Tab key does not come to\n%s %v", path, left, err)
		}
	}
	b.silent()
}

// as lets the browser take a medium or a preference.
func as(medium, feature, value string) func(context.Context, *chromedp.Target) error {
	return func(ctx context.Context, t *chromedp.Target) error {
		p := emulation.SetEmulatedMediaParams{Media: medium}
		if feature != "" {
			p.Features = []*emulation.MediaFeature{{Name: feature, Value: value}}
		}
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, p)
		return err
	}
}

// faults gives what does not hold of a page, by name.
func (b *tab) faults(holds map[string]string) {
	b.Helper()
	for what, js := range holds {
		if ok, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](js)); err != nil || !ok {
			b.Errorf("%s: it does not hold, %v", what, err)
		}
	}
}

// Where the system takes all colours away, what is chosen still differs, cards
// and findings keep an edge, and the focus is seen.
func TestBrowserForcedColours(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "wrong.toml", strings.Replace(plum, "2 kg", "2 kq", 1))
	b := browse(t, dir, 1280, 900)
	b.do(chromedp.Func(as("", "forced-colors", "active")))
	b.open("/batch/wrong.toml")
	b.until("the finding is shown", `document.querySelector(".finding") !== null`)
	edge := func(selector string) string {
		return fmt.Sprintf(`parseFloat(getComputedStyle(document.querySelector(%q)).borderTopWidth)`, selector)
	}
	b.faults(map[string]string{
		"colours are forced":        `matchMedia("(forced-colors: active)").matches`,
		"the chosen kind of label":  edge(`.chips [aria-pressed="true"]`) + " > " + edge(`.chips [aria-pressed="false"]`),
		"the step one is at":        edge(`.steps [aria-current]`) + " >= 3",
		"a finding has an edge":     edge(".finding") + " >= 1",
		"the button of most weight": edge(`.main:is(button, .button)`) + " >= 3",
		"the focus is seen":         `(() => { const e = document.getElementById("print"); e.focus({ focusVisible: true }); return parseFloat(getComputedStyle(e).outlineWidth) >= 2; })()`,
	})
}

// The browser's own printing gives the labels, not the form; dark paper is none.
func TestBrowserPrintsLabels(t *testing.T) {
	b := browse(t, kitchenDir(t), 1280, 900)
	b.do(chromedp.Func(as("print", "prefers-color-scheme", "dark")))
	b.open("/batch/plum.toml")
	seen := func(selector string) string {
		return fmt.Sprintf(`[...document.querySelectorAll(%q)].some((e) => e.checkVisibility())`, selector)
	}
	b.faults(map[string]string{
		"it is for print": `matchMedia("print").matches`, "labels": seen("#labels figure"), "no form": "!" + seen(".pane:not(.labels)"),
		"no buttons": "!" + seen(".bar .actions, .chips, .steps"), "white": `getComputedStyle(document.body).backgroundColor === "rgb(255, 255, 255)"`,
	})
}

// On a desk a label is seen whole, code and all; on a telephone a long one is
// scrolled to, not shrunk beyond reading: 2.3 pixels to the millimetre, our own choice.
func TestBrowserLabelsAreSeenWhole(t *testing.T) {
	for wide, want := range map[int64]string{1280: `at.right <= board.right && at.width > 400`, 390: `at.width >= 2.29 * 120`} {
		b := browse(t, kitchenDir(t), wide, 900)
		b.open("/batch/plum.toml")
		b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector(".views [data-show=labels]")?.click()`))
		b.until("a label is seen", `document.querySelector("#labels .art")?.checkVisibility()`)
		b.faults(map[string]string{fmt.Sprintf("a wrap on %d pixels", wide): `(() => { const at = document.querySelector("#labels .art").getBoundingClientRect(), board = document.getElementById("labels").getBoundingClientRect(); return ` + want + `; })()`})
	}
}
