package batch

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
)

// sampleBeside are keys that an example needs beside it to make sense.
var sampleBeside = map[string]string{
	"cook.pot_tare":    "finished_pot = \"5.2 kg\"\n",
	"fill.sealed":      "count = 10\n",
	"fill.net":         "count = 10\n",
	"fill.tare":        "count = 10\ngross = [\"17.1 oz\"]\n",
	"fill.gross":       "tare = \"6.8 oz\"\n",
	"market.came_home": "jars = 6\n",
}

// Every key the readers know is explained, and its example reads without an
// error or a warning about it.
func TestEveryKeyIsExplained(t *testing.T) {
	const batchTop, kitchenTop = "name = \"Sample\"\nkind = \"jam\"\nmade = 2026-09-05\n", "name = \"Sample\"\nplace = \"us\"\n"
	for _, k := range Keys() {
		try(t, k, batchTop, map[string]string{"ingredient": "name = \"plums\"\namount = \"1 kg\"\n", "fill": "jar = \"us8\"\n", "gift": "to = \"Ida\"\njars = 1\n",
			"market": "event = \"Fair\"\n"}, func(s string) diag.List {
			_, l := Parse("b.toml", []byte(s), nil)
			return l
		})
	}
	for _, k := range KitchenKeys() {
		try(t, k, kitchenTop, map[string]string{"jar": "key = \"my\"\nbrimful = \"300 ml\"\n", "ingredient": "name = \"x\"\n"}, func(s string) diag.List {
			_, l := ParseKitchen("kitchen.toml", []byte(s), nil)
			return l
		})
	}
	if n := len(Keys()) + len(KitchenKeys()); n < 120 {
		t.Errorf("only %d keys", n)
	}
}

func try(t *testing.T, k source.Key, top string, tables map[string]string, read func(string) diag.List) {
	t.Helper()
	name := strings.TrimPrefix(k.Table+"."+k.Key, ".")
	if k.What == "" || k.Example == "" {
		t.Errorf("%s is not explained", name)
		return
	}
	line := k.Key + " = " + k.Example + "\n"
	text := without(top, k.Key) + line
	switch {
	case k.Table == "contains":
		line = "{ " + strings.TrimSpace(line) + " }"
		if k.Key != "name" {
			line = `{ name = "x", ` + line[2:]
		}
		text = top + "[[ingredient]]\nname = \"y\"\n" + "contains = [" + line + "]\n"
		if strings.Contains(top, "kind") {
			text += "amount = \"1 kg\"\n"
		}
	case k.Table != "":
		head := "[" + k.Table + "]\n"
		if k.Many {
			head = "[" + head[:len(head)-1] + "]\n"
		}
		text = top + head + without(tables[k.Table], k.Key) + sampleBeside[name] + line
	}
	for _, d := range read(text) {
		if d.Code == "unknown-key" || d.Path == name || strings.HasSuffix(d.Path, "."+k.Key) {
			t.Errorf("%s: the example %s: %v", name, k.Example, d)
		}
	}
}

// without takes the line of a key out of a text.
func without(text, key string) string {
	var out []string
	for _, l := range strings.SplitAfter(text, "\n") {
		if !strings.HasPrefix(l, key+" ") {
			out = append(out, l)
		}
	}
	return strings.Join(out, "")
}
