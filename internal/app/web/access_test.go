//go:build !js

package web

import (
	"context"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// insert types a text at once, as pasting does.
func insert(text string) func(ctx context.Context, t *chromedp.Target) error {
	return func(ctx context.Context, t *chromedp.Target) error {
		_, err := chromedp.Call(ctx, input.InsertText, input.InsertTextParams{Text: text})
		return err
	}
}

// views are all the views of the page, and what to do there first; those of
// one address follow one another without loading it again.
var views = []struct{ name, path, js string }{
	{"list", "/", ""}, {"new", "/new", ""}, {"scale", "/scale/plum.toml?jars=24+x+8+fl+oz", ""}, {"rules", "/rules/us-or", ""}, {"made", "/made", ""}, {"pack", "/pack", ""}, {"trace", "/trace", ""}, {"kitchen", "/kitchen", ""},
	{"name", "/batch/plum.toml", ""},
	{"pot", "/batch/plum.toml", `document.querySelector('[data-goto="ingredients"]').click()`},
	{"cook", "/batch/plum.toml", `document.querySelector('[data-goto="cook"]').click()`},
	{"jars", "/batch/plum.toml", `document.querySelector('[data-goto="jars"]').click(); document.querySelectorAll("#step-jars details").forEach((d) => { d.open = true; })`},
	{"look", "/batch/plum.toml", `document.querySelector('[data-goto="look"]').click()`},
	{"labels", "/batch/plum.toml", `document.querySelector('[data-show="labels"]').click(); document.querySelectorAll(".chips [data-piece=front], .chips [data-piece=lid], .chips [data-piece=tag]").forEach((c) => { if (c.ariaPressed === "false") c.click(); })`},
	{"print", "/batch/plum.toml", `document.getElementById("print").click()`},
	{"conflict", "/batch/plum.toml", `document.getElementById("printing").close(); document.getElementById("conflict").showModal()`},
	{"mend", "/batch/wrong.toml", `document.querySelector('[data-show="mend"]').click(); document.getElementById("notes").open = true`},
	{"text", "/batch/wrong.toml", `document.querySelector('[data-show="text"]').click()`},
	{"problem", "/nowhere", ""},
}

// narrow and small find what a thumb would miss: content wider than the
// window, and targets below 44 px (WCAG 2.1, success criterion 2.5.5).
const (
	narrow = `document.documentElement.scrollWidth > innerWidth ? "content of " + document.documentElement.scrollWidth + " px: " +
		[...document.querySelectorAll("*")].filter((e) => e.checkVisibility() && e.getBoundingClientRect().right > innerWidth).map((e) => e.outerHTML.slice(0, 60)).join(" ") : ""`
	small = `[...document.querySelectorAll("button, a.button, nav a, select, summary, input:not([type=checkbox], [type=radio]), label.check, .option")]
		.filter((e) => e.checkVisibility() && e.offsetWidth > 1 && e.getBoundingClientRect().height < 43.5).map((e) => e.outerHTML.slice(0, 90)).join("\n")`
	// The strip with the first label lies over the form's end and is scrolled
	// clear of what has the focus, so it is folded away for the measuring of
	// targets. The many parts of a drawing are one picture; one view looks into it.
	axe = `(document.getElementById("peek") || {}).hidden = true; axe.run({ exclude: document.querySelector('[data-view="labels"]') ? [] : [["#labels"]] }, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
		resultTypes: ["violations"], preload: false }).then((r) => r.violations
		.map((v) => v.id + ": " + v.help + "\n  " + v.nodes.map((n) => n.target + " " + n.any.concat(n.all).map((c) => c.message).join("; ")).slice(0, 4).join("\n  ")).join("\n"))`
)

// axeCore is the script of axe-core, which .ci/run fetches with npm; elsewhere
// a checker that finds nothing stands in for it, and the rest is tested.
func axeCore(t *testing.T) string {
	path := os.Getenv("JARMARK_AXE")
	if path == "" {
		if os.Getenv("JARMARK_BROWSER") == "require" {
			t.Fatal("JARMARK_BROWSER=require, and JARMARK_AXE does not name axe.min.js of the npm package axe-core")
		}
		t.Log("without axe-core: JARMARK_AXE does not name its script")
		return `window.axe = {run: () => Promise.resolve({violations: []})}`
	}
	script, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(script)
}

// dark lets the browser prefer dark colours.
func dark(ctx context.Context, t *chromedp.Target) error {
	_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: "dark"}}})
	return err
}

// Every view, from a telephone's width on, light and dark, passes axe-core, the reference checker of the Web
// Content Accessibility Guidelines, and has room and targets for a thumb.
func TestBrowserAccessibility(t *testing.T) {
	checker := axeCore(t)
	for _, how := range []struct {
		width int64
		dark  bool
	}{{320, false}, {390, true}, {1280, false}, {1280, true}} {
		width := how.width
		dir := kitchenDir(t)
		put(t, dir, "plum.toml", plum+"\n[[gift]]\nto = \"Hedy\"\njars = 2\n[[market]]\nevent = \"Saturday\"\ndate = 2026-10-03\njars = 3\n")
		put(t, dir, "wrong.toml", strings.Replace(plum, "2 kg", "2 kq", 1))
		b := browse(t, dir, width, 844)
		if how.dark {
			b.do(chromedp.Func(dark))
		}
		at := ""
		for _, v := range views {
			if v.path != at {
				at = v.path
				b.open(v.path)
				b.do(chromedp.Evaluate[chromedp.Void](checker))
			}
			b.do(chromedp.Evaluate[chromedp.Void](v.js))
			found, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](axe, chromedp.EvalAwaitPromise))
			if err != nil || found != "" {
				t.Errorf("%s at %d px: %v\n%s", v.name, width, err, found)
			}
			if wide, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](narrow)); err != nil || wide != "" {
				t.Errorf("%s at %d px is wider than the window: %s, %v", v.name, width, wide, err)
			}
			if list, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](small)); err != nil || list != "" {
				t.Errorf("%s at %d px: small targets, %v\n%s", v.name, width, err, list)
			}
		}
		b.silent("404")
	}
}
