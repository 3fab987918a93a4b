package job

import (
	"fmt"
	"strings"
	"testing"
)

// recallBatch is a batch of our own with packet lots.
func recallBatch(name, lot, day, pectin, more string) Input {
	text := fmt.Sprintf(`name = %q
kind = "jam"
made = %s
lot = %q
[[ingredient]]
name = "plums"
amount = "2 kg"
[[ingredient]]
name = "sugar"
amount = "2 kg"
[[ingredient]]
name = "powdered pectin"
amount = "50 g"
%s
[process]
method = "boiling water"
minutes = 10
[[fill]]
jar = "8 fl oz"
count = 10
sealed = 10
declared = "9 oz"
%s`, name, day, lot, pectin, more)
	return Input{Kitchen: Doc{"kitchen.toml", []byte(sampleKitchen)}, Batch: Doc{lot + ".toml", []byte(text)}}
}

// "Which jars hold the pectin of lot 7731?" and "what was made that day?" are
// answered over all batches; a packet's lot is the share, a staple's name none.
func TestTraceByPacketAndDay(t *testing.T) {
	e, _, err := NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	sold := "[[market]]\nevent = \"Fair\"\ndate = 2026-09-12\njars = 6\ncame_home = 2\n"
	r, found := e.Recall([]Input{
		recallBatch("Plum jam", "A1", "2026-09-05", `lot = 7731`, sold),
		recallBatch("Plum jam two", "B2", "2026-09-06", `lot = "77-31"`, ""),
		recallBatch("Plum jam three", "C3", "2026-09-06", `lot = "9"`, ""),
		recallBatch("Plum jam four", "D4", "2026-09-07", "", ""),
		recallBatch("Plum jam five", "E5", "2026-09-08", "", ""),
	}, nil, Choices{})
	if found.HasErrors() {
		t.Fatal(found)
	}
	for _, c := range []struct {
		what, of, want string
	}{
		{"7731", "", "A1 B2"}, {"7731", "pectin", "A1 B2"}, {" 7731 ", "Pectins", "A1 B2"}, {"7731", "sugar", ""}, {"9", "", "C3"},
		{"2026-09-06", "", "B2 C3"}, {"a1", "", "A1"}, {"2026-09-09", "", ""}, {"", "", ""}, {"77", "", ""},
	} {
		list, l := r.Histories(Sought{c.what, c.of})
		var got []string
		for _, h := range list {
			got = append(got, h.Lot)
		}
		if strings.Join(got, " ") != c.want || (c.want == "") != l.HasErrors() {
			t.Errorf("%q of %q: %v, want %s; %v", c.what, c.of, got, c.want, l)
		}
	}
	if _, l := r.Histories(Sought{"7732", ""}); len(l) == 0 || !strings.Contains(l[0].Hint, "of packets: powdered pectin 7731") {
		t.Errorf("an unknown packet: %v", l)
	}
	f, l, err := r.File(Sought{"7731", "pectin"}, "text")
	text := string(f.Data)
	if err != nil || l.HasErrors() {
		t.Fatal(l, err)
	}
	// A1: 10 made, 6 taken to market, 2 came home: 4 out, 6 at home; B2: 10 at home
	for _, want := range []string{"2 lots, 20 jars: 4 given or sold, 16 at home", "holds powdered pectin of lot 7731", "Left out, because most lots have them by name: plums, sugar"} {
		if !strings.Contains(text, want) {
			t.Errorf("the answer lacks %q:\n%s", want, text)
		}
	}
	if f, _, _ = r.File(Sought{"A1", ""}, "text"); !strings.Contains(string(f.Data), "pectin of lot 7731") || strings.Contains(string(f.Data), "C3") {
		t.Errorf("lot A1 shares the packet with B2 and none with C3:\n%s", f.Data)
	}
	if f, _, _ = r.File(Sought{"2026-09-06", ""}, "pdf"); !strings.HasPrefix(string(f.Data), "%PDF") {
		t.Error("no sheets for a day")
	}
	f, _, _ = r.File(Sought{"7731", ""}, "notice")
	for _, want := range []string{"RECALL", "Plum jam, lot A1", "Plum jam two, lot B2", "Sold at: Fair, Sep 12, 2026", "Do not eat or taste it", "Thornfield Lane Preserves"} {
		if !strings.Contains(string(f.Data), want) {
			t.Errorf("the notice lacks %q:\n%s", want, f.Data)
		}
	}
	if strings.Contains(string(f.Data), "Millbrook") {
		t.Error("the notice gives the address away")
	}
}
