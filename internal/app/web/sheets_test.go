//go:build !js

package web

import (
	"testing"
)

// The labels gone from a sheet are tapped on its picture: the last one that is
// gone; tapped again it is there.
func TestBrowserTapsWhatIsGone(t *testing.T) {
	b := browse(t, kitchenDir(t), 1280, 800)
	b.open("/batch/plum.toml")
	b.click(`.chips [data-piece="lid"]`)
	b.until("the lids are drawn", `document.querySelectorAll("#labels .art").length === 2`)
	b.click("#print")
	b.until("the sheet is shown", `document.querySelectorAll("#print-sheets g > *").length >= 9`)
	b.until("one sheet is shown, and may be noted", `document.querySelectorAll("#print-sheets figure").length === 1 && !document.getElementById("print-noting").hidden`)
	b.click("#print-sheets g > *:nth-child(4)")
	b.until("four are gone", `document.querySelector("#print-sheets input").value === "4" && document.querySelectorAll("#print-sheets .gone").length === 4`)
	b.click("#print-sheets g > *:nth-child(4)")
	b.until("three are gone", `document.querySelector("#print-sheets input").value === "3" && document.querySelectorAll("#print-sheets .gone").length === 3`)
	b.click("#print-remember")
	b.click("#print-save")
	b.says("#printing-state", "Done.")
	b.open("/batch/plum.toml")
	b.click("#print")
	b.until("the next run begins after them", `document.querySelector("#print-sheets input").value === "11"`)
	b.silent()
}
