package web

import (
	"strings"
	"testing"
)

// Jars are told by the words they are sold by, weighed jars by what they allow
// to declare, and a scaled recipe by its cost. By hand: one ingredient of two
// has a cost, $6.00, so the sum is named and is more than nothing.
func TestThePageCountsWeighsAndCosts(t *testing.T) {
	dir := kitchenDir(t)
	text := strings.Replace(plum, "amount = \"2 kg\"", "amount = \"2 kg\"\ncost = 6", 1) + "net = [\"9.2 oz\", \"9.3 oz\", \"9.4 oz\"]\n"
	put(t, dir, "plum.toml", text)
	put(t, dir, "kitchen.toml", thornfield+"currency = \"USD\"\n")
	h := handlerOf(t, dir)
	a := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: text}, 200)
	if !strings.Contains(a.Facts, "8 × 8 fl oz") || strings.Contains(a.Facts, "us8") {
		t.Errorf("jars are not told as they are sold: %s", a.Facts)
	}
	if len(a.Weighed) != 1 || !strings.Contains(a.Weighed[0], "of 3 weighed jars, the most that may be declared is") || strings.Contains(a.Weighed[0], "us8") {
		t.Errorf("weighed: %q", a.Weighed)
	}
	body := do(h, request("GET", "/scale/plum.toml?jars=24+x+8+fl+oz", nil)).Body.String()
	if !strings.Contains(body, "Ingredients cost <b>$") || strings.Contains(body, "Ingredients cost <b>$0.00") {
		t.Errorf("no cost:\n%s", body)
	}
}
