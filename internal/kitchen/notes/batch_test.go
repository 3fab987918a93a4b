package notes

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/kit/source"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

var head = Head{Name: "Plum jam", Product: "jam", Made: "2026-06-14"}

// Every recipe gives a batch file that reads as TOML with known keys only;
// where nothing is asked, the ingredients weigh without an error.
func TestPublishedRecipesAreBatches(t *testing.T) {
	files, _ := filepath.Glob(published + "*.txt")
	settled := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		r := Read(string(data), pantry.Default())
		out := r.TOML(head)
		b, found := batch.Parse(filepath.Base(file), out, nil)
		if b == nil {
			t.Fatalf("%s: %v\n%s", file, found, out)
		}
		_, more := cook.Compute(b, nil, pantry.Default())
		for _, d := range append(found, more...) {
			key := d.Path[strings.LastIndex(d.Path, ".")+1:]
			switch {
			case d.Code == "unknown-key" || d.Code == "bad-amount" || d.Code == "toml":
				t.Errorf("%s: %s: %s", file, d.Code, d.Message)
			case r.Asked() == 0 && d.Severity.String() == "error" && strings.HasPrefix(d.Path, "ingredient"):
				t.Errorf("%s: nothing is asked, but %s %s: %s", file, key, d.Code, d.Message)
			}
		}
		if r.Asked() == 0 {
			settled++
		}
	}
	if settled < 10 {
		t.Errorf("only %d recipes ask nothing", settled)
	}
}

// A maker's own notes, our invention, with what each line must give.
func TestMakersNotes(t *testing.T) {
	for _, c := range []struct{ text, want, asked string }{
		{"2 1/2 lb plums, stoned", `name = "plums"|amount = "2 1/2 lb"|form = "stoned"`, ""},
		{"1 (3 oz) pouch liquid pectin", `name = "liquid pectin"|amount = "1 (3 oz) pouch"`, ""},
		{"½ tsp butter (optional)", `name = "butter"|amount = "1/2 tsp"|# ` + `        optional`, ""},
		{"juice of 2 lemons", `name = "lemon juice"|amount = "juice of 2 lemons"`, ""},
		{"2 lb plums, 1 lb sugar and the juice of 1 lemon", `name = "plums"|amount = "1 lb"|amount = "juice of 1 lemon"`, ""},
		{"boil hard 1 min", "minutes = 1", ""},
		{"10 min bath", "[process]|minutes = 10|method = \"boiling water\"", ""},
		{"process half-pints 10 minutes", "minutes = 10", "steam"},
		{"makes 8 half-pints", "jar = \"8 fl oz\"|# count = 0             # the recipe says 8", ""},
		{"got 8 half-pints, 7 sealed", "\ncount = 8|sealed = 7", ""},
		{"got 7 and a bit", "\ncount = 7", "not full"},
		{"4 cups sugar or honey", "# name = \"sugar\"|# name = \"honey\"|\namount = \"4 cups\"", "which was it"},
		{"6-7 cups sugar", "# amount = \"6 cups\"|# amount = \"7 cups\"", "how much"},
		{"2-1/2 cups sugar", `amount = "2-1/2 cups"`, ""},
		{"added a splash of brandy", `name = "brandy"`, "weigh"},
		{"some cinnamon", `name = "cinnamon"|# amount`, "how much"},
		{"1 tsp pepper", `name = "pepper"`, "black pepper"},
		{"sugar: 1.2 kg", `name = "sugar"|amount = "1.2 kg"`, ""},
		{"2. 3 cups sugar", `name = "sugar"|amount = "3 cups"`, ""},
		{"14 June 2026", "\nmade = 2026-06-14\n", ""},
		{"June 14th, 2026", "\nmade = 2026-06-14\n", ""},
		{"14.6.2026", "\nmade = 2026-06-14\n", ""},
		{"6/14/26", "\nmade = 2026-06-14\n", ""},
		{"6/7/2026", "# made = 2026-06-07|# made = 2026-07-06", "day or month"},
		{"picked on 12 June 2026", "# made = 2026-06-12", "the day it was made"},
		{"cooked to 220 F", `temperature = "220 °F"`, ""},
		{"set at 104.5 °C", `temperature = "104.5 °C"`, ""},
		{"set at 220°", "temperature", "°C or °F"},
		{"65.5 Brix", "brix = 65.5", ""},
		{"pH 3.2", "ph = 3.2", ""},
		{"lot: L26-165", `lot = "L26-165"`, ""},
		{"boiled 25 min, then 5 min", "# minutes = 25|# minutes = 5", "how many minutes"},
		{"boil 10 min\nboil 12 min", "# minutes = 10|# minutes = 12", "which is it"},
		{"Add 2 cups sugar", "Not in the keys", "one more thing"},
		{"1 kg Erdbeeren", `name = "strawberries"|# ` + `        Erdbeeren is read as strawberries`, ""},
		{"1 kg de prunes", `# name = "plums"|# name = "prunes"`, "in French"},
		{"Boiled 12 mins to 105 C", "minutes = 12|temperature = \"105 °C\"", ""},
		{"brix 66 at 22 C", "brix = 66|brix_temperature = \"22 °C\"", ""},
		{"12 jars", "Not in the keys", "got 12 jars"},
		{"boil 10 min with 3 stirs", "minutes = 10|only what stands below", ""},
		{"Saft einer Zitrone", `name = "lemon juice"`, ""},
		{"4 Minuten sprudelnd kochen", "minutes = 4", ""},
		{"le jus d'un citron", `name = "lemon juice"`, ""},
		{"4 1/2 pints", "Not in the keys", "how many jars"},
		{"makes 4 1/2 pints", "Not in the keys", "how many jars"},
		{"got 10 jars of 12 oz, one didn't seal", "jar = \"12 fl oz\"|\ncount = 10|sealed = 9", ""},
		{"1/4 C lemon juice (bottled)", `name = "bottled lemon juice"`, ""},
		{"1 vanilla bean split & scraped", `name = "vanilla bean"|form = "split & scraped"`, ""},
		{"pinch of salt", `amount = "1 pinch"`, ""},
		{"boil hard for 1 full minute", "\nminutes = 1", ""},
		{"water bath 10 mins (we're at 1,200 ft so 15)", "Not in the keys", "altitude"},
		{"Peach jam, 8/9/25", "# made = 2025-09-08", "2025-08-09 or 2025-09-08"},
		{"3/4 tsp each cinnamon and cloves", `name = "cinnamon"|name = "cloves"|amount = "3/4 tsp"`, ""},
		{"1 inch piece of ginger, grated", `name = "ginger"`, "grate"},
		{"One 3-inch cinnamon stick", `name = "cinnamon stick"|amount = "1"`, ""},
		{"200g/7oz sultanas", `amount = "200 g"`, ""},
		{"2 cups sugar (or less)", `amount = "2 cups"`, "in the end"},
		{"water to cover", "Not in the keys", "how much water"},
		{"cook 45 minutes to 1 hour", "# minutes = 45|# minutes = 60", "how many minutes"},
		{"1,500 g plums", "Not in the keys|thousands", ""},
		{"1.500 g Pflaumen", "Not in the keys|thousands", ""},
		{"1.250 kg plums", `amount = "1.250 kg"`, ""},
		{"Pour over 2.5l of water, bring to the boil and simmer.", "Not in the keys", ""},
		{"Pour 4 pots de 37 cl :", "# count = 0             # the recipe says 4", ""},
		{"4 bocaux de 2,5 dl", "Not in the keys", "got 4 bocaux"},
		{"Zutaten für 8 Gläser à 250ml", "jar = \"250 ml\"|# count = 0             # the recipe says 8", ""},
		{"8 Gläser mittlerer Größe", "Not in the keys", "got 8 Gläser"},
		{"1 kleine Prise Salz", `name = "salt"|amount = "1 prise"`, ""},
		{"Saft 1 Orange (ca. 80–100 ml)", `name = "orange juice"`, ""},
		{"Le jus d’un demi-citron", `amount = "juice of 1/2 citron"`, ""},
		{"1 kg de mirabelles bien mûres", `name = "mirabelles"`, ""},
		{"2 citrons non traités", `name = "lemons"`, ""},
		{"25 cl d’eau bouillante", `name = "eau bouillante"`, ""},
		{"1/2 Teelöffel Zimtpulver", `name = "Zimtpulver"`, ""},
		{"1 sharp crisp apple, such as Cox's", `name = "apple"`, ""},
		{"2 kilos sugar, bit less", `amount = "2 kg"`, "in the end"},
		{"1 lemon (only half used)", `name = "lemon"`, "in the end"},
		{"half the juice of a lemon", `amount = "juice of 1/2 lemon"`, ""},
		{"1 Bio-Orange (Abrieb)", "Orange", "only its juice or zest"},
		{"2 oranges, juiced", `amount = "juice of 2 oranges"`, ""},
		{"3kg Damsons from Ida's tree, stoned", `name = "Damsons"`, ""},
		{"a good glug of port", `name = "port"`, "weigh"},
		{"1x vanilla pod", `name = "vanilla pod"|amount = "1"`, ""},
		{"Pectin: 1 pkt (49g)", `amount = "1 (49 g) packet"`, ""},
		{"filled eleven 212 ml jars, 2 failed to seal", "\ncount = 11|sealed = 9", ""},
		{"wb 10 min", "minutes = 10|method = \"boiling water\"", ""},
		{"steam canned 15 min", "minutes = 15|method = \"steam\"", ""},
		{"105.5 on the thermometer", `# temperature = "105.5 °C"`, "105.5 °C?"},
		{"1kg/2lb 4oz plums", `amount = "1 kg"`, ""},
		{"1/2 tsp ginger, nutmeg or cloves", `# name = "nutmeg"`, "which was it"},
		{"4 cups apple, grape, or orange juice", `# name = "grape juice"`, "which was it"},
		{"1/8 tsp red pepper", `name = "red pepper"`, "cayenne"},
		{"1 jalapeno, seeded and diced1 tbsp salt", "", "own line"},
		{"9 cups raisins (I used dates)", `amount = "9 cups"`, "went in"},
		{"16 C chopped plums", `amount = "16 cup"`, ""},
		{"process 10 minutes at 0-1,000 ft, 15 minutes at 1,001-6,000 ft", "", "altitude"},
	} {
		r := Read(c.text, pantry.Default())
		out := string(r.TOML(head))
		for _, w := range strings.Split(c.want, "|") {
			if !strings.Contains(out, w) {
				t.Errorf("%q: no %q in\n%s", c.text, w, out)
			}
		}
		if asks := strings.Join(allAsks(r), " "); (c.asked == "") != (asks == "") || !strings.Contains(asks, c.asked) {
			t.Errorf("%q: asked %q, want %q", c.text, asks, c.asked)
		}
		if _, l := source.Parse("", []byte(out)); l.HasErrors() {
			t.Errorf("%q: %v", c.text, l)
		}
	}
}

func allAsks(r Reading) (out []string) {
	for _, l := range r.Lines {
		out = append(out, l.Asks...)
	}
	return out
}

func TestCheckRefuses(t *testing.T) {
	for _, bad := range []string{"", " \n", "caf\xe9", "a\x00b", strings.Repeat("x", MaxText+1), strings.Repeat("\n", MaxLines+2)} {
		if _, err := Check([]byte(bad)); err == nil {
			t.Errorf("%.20q is taken", bad)
		}
	}
	if text, err := Check([]byte("\uFEFF1 lb plums")); err != nil || text != "1 lb plums" {
		t.Errorf("%q %v", text, err)
	}
}

// Whatever is pasted: no panic, the output reads as TOML, and every line of it
// stands there as a comment.
func FuzzRead(f *testing.F) {
	files, _ := filepath.Glob(published + "*.txt")
	for _, file := range files[:min(len(files), 20)] {
		if data, err := os.ReadFile(file); err == nil {
			f.Add(string(data))
		}
	}
	for _, s := range []string{"½ x", "1 (", "- -", "\"\\\u0085\u2028", "juice of", "1 1 1/0 cups", "6-7 cups sugar or honey (optional)", "got 1/2", "1/2/3", "made 0/0/0", "00 c 00", "a\r\nb\vc"} {
		f.Add(s)
	}
	p := pantry.Default()
	f.Fuzz(func(t *testing.T, s string) {
		text, err := Check([]byte(s))
		if err != nil {
			return
		}
		r := Read(text, p)
		out := string(r.TOML(head))
		if _, l := source.Parse("", []byte(out)); l.HasErrors() {
			t.Fatalf("%v\n%s", l, out)
		}
		if b, l := batch.Parse("", []byte(out), nil); b == nil {
			t.Fatalf("%v\n%s", l, out)
		}
		for _, l := range r.Lines {
			if !strings.Contains(out, "# line "+strconv.Itoa(l.No)+": ") {
				t.Fatalf("line %d is gone:\n%s", l.No, out)
			}
			if !l.Read() && len(l.Says)+len(l.Asks) == 0 {
				t.Fatalf("line %d is dropped without a word", l.No)
			}
		}
		if len(r.Lines) == 0 && strings.TrimSpace(text) != "" {
			t.Fatal("nothing is left of it")
		}
	})
}
