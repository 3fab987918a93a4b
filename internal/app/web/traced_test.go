package web

import (
	"strings"
	"testing"
)

// The page answers as the command does: what is promised is at home unless it
// was handed over, a market to come has no buyers yet, and days are written as
// the place writes them. By hand: 10 filled, 2 promised, 3 for the market.
func TestTracePageAnswersAsTheListDoes(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "plum.toml", plum+"\n[[gift]]\nto = \"Hedy\"\njars = 2\n[[market]]\nevent = \"Fair\"\ndate = 2099-12-05\njars = 3\n")
	h := handlerOf(t, dir)
	body := strings.Join(strings.Fields(do(h, request("GET", "/trace?lot=L26248-PL", nil)).Body.String()), " ")
	for _, want := range []string{"5 promised and at home unless handed over", "made Sep 5, 2026", "Fair, Dec 5, 2099", "still to come", "promised: what was not handed over"} {
		if !strings.Contains(body, want) {
			t.Errorf("no %q in\n%s", want, body)
		}
	}
	if strings.Contains(body, "unknown buyers") || strings.Contains(body, "up to 3 sold") {
		t.Error("a market to come has buyers")
	}
}
