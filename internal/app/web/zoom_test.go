//go:build !js

package web

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// zoomed sets the window as the browser's own zoom does: fewer CSS pixels, each
// of more pixels of the screen (CSSOM View, devicePixelRatio).
func zoomed(width, height int64, times float64) func(context.Context, *chromedp.Target) error {
	return func(ctx context.Context, t *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: width, Height: height, DeviceScaleFactor: times})
		return err
	}
}

// hidden gives the focused element when nothing of it can be seen (WCAG 2.2,
// 2.4.11, focus not obscured): no point of it in the window is uncovered.
const hidden = `(() => {
	let e = document.activeElement;
	if (!e || e === document.body) return "";
	e.dataset.reached = "yes";
	if (e.offsetWidth <= 1 || getComputedStyle(e).opacity === "0") e = e.closest("label, .option, li") ?? e;
	const r = e.getBoundingClientRect();
	for (let i = 0; i <= 8; i++) for (let j = 0; j <= 8; j++) {
		const x = r.left + 1 + (r.width - 2) * i / 8, y = r.top + 1 + (r.height - 2) * j / 8;
		const at = document.elementFromPoint(x, y);
		if (at && (e.contains(at) || at.contains(e) && at !== document.documentElement && at !== document.body)) return "";
	}
	return e.outerHTML.slice(0, 90);
})()`

// covered is the share of the window that stays put while the page scrolls.
const covered = `[...document.querySelectorAll("*")].filter((e) => ["sticky", "fixed"].includes(getComputedStyle(e).position) && e.checkVisibility())
	.map((e) => e.getBoundingClientRect()).reduce((n, r) => n + Math.max(0, Math.min(r.bottom, innerHeight) - Math.max(r.top, 0)) * Math.min(r.width, innerWidth), 0) / innerWidth / innerHeight`

// Zoomed to 200 % (WCAG 2.2, 1.4.4) and 400 % (1.4.10) of a window of 1280 by
// 800, no page scrolls sideways, what has the focus is seen, and what stays
// put leaves room.
func TestBrowserZoom(t *testing.T) {
	for _, z := range []struct {
		width, height int64
		times         float64
		most          float64 // share of the window that may stay put
	}{{640, 400, 2, .4}, {320, 200, 4, .5}} {
		dir := kitchenDir(t)
		put(t, dir, "plum.toml", plum+"\n[[gift]]\nto = \"Hedy\"\njars = 2\n")
		put(t, dir, "wrong.toml", strings.Replace(plum, "2 kg", "2 kq", 1))
		b := browse(t, dir, z.width, z.height)
		b.do(chromedp.Func(zoomed(z.width, z.height, z.times)))
		at := ""
		for _, v := range views {
			if v.path != at {
				at = v.path
				b.open(v.path)
			}
			b.do(chromedp.Evaluate[chromedp.Void](v.js))
			if wide, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](narrow)); err != nil || wide != "" {
				t.Errorf("%s zoomed %g times is wider than the window: %s, %v", v.name, z.times, wide, err)
			}
		}
		for _, path := range []string{"/", "/batch/plum.toml", "/pack"} {
			b.open(path)
			b.faults(map[string]string{"it is zoomed": `devicePixelRatio > 1 && innerWidth < 700`})
			n, err := chromedp.Run(b.ctx, chromedp.Evaluate[int](stops+`.length`))
			if err != nil {
				t.Fatal(err)
			}
			for range min(n, 60) {
				b.do(chromedp.KeyEvent("\t"))
				if at, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](hidden)); err != nil || at != "" {
					t.Errorf("%s zoomed %g times hides what has the focus: %s %v", path, z.times, at, err)
				}
			}
			if share, err := chromedp.Run(b.ctx, chromedp.Evaluate[float64](covered)); err != nil || share > z.most {
				t.Errorf("%s zoomed %g times: %.0f %% of the window stays put, %v", path, z.times, 100*share, err)
			}
		}
		b.silent("404")
	}
}
