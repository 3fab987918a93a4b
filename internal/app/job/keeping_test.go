package job_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
)

// keepingKitchen has the larger jars of the trade beside the built-in ones.
const keepingKitchen = `name = "A kitchen of our own invention"
address = ["1 Orchard Rd", "Bishop, GA 30621"]
place = "us"
units = "us"
altitude = "500 ft"

[[jar]]
key = "qt"
description = "32 fl oz (quart), regular mouth"
named_by = "fill"
nominal = "946 ml"
brimful = "980 ml"
mouth = "60 mm"

[[jar]]
key = "hgal"
description = "64 fl oz (half-gallon), wide mouth"
named_by = "fill"
nominal = "1893 ml"
brimful = "1950 ml"
mouth = "76 mm"
`

// TestKeepingSuite runs the batches of testdata/never, which must never be
// called shelf-stable, and of testdata/always, whose published recipe and
// process make them so. The first line of each file is its source; "Want" names
// the class (always) and the findings that must be told.
func TestKeepingSuite(t *testing.T) {
	env := builtin(t)
	for _, folder := range []string{"never", "always"} {
		files, _ := filepath.Glob("../../../testdata/" + folder + "/keeping-*.toml")
		if len(files) < 35 {
			t.Fatalf("%d files in %s", len(files), folder)
		}
		for _, name := range files {
			t.Run(folder+"/"+filepath.Base(name), func(t *testing.T) { checkKeeping(t, env, name, folder == "always") })
		}
	}
}

func checkKeeping(t *testing.T, env *job.Env, name string, shelf bool) {
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitN(string(data), "\n", 3)
	source, ok := strings.CutPrefix(lines[0], "# Source: ")
	wants, ok2 := strings.CutPrefix(lines[1], "# Want:")
	if !ok || !ok2 || len(source) < 8 {
		t.Fatalf("no source or want in its first lines")
	}
	b := env.Load(job.Input{Batch: job.Doc{Name: filepath.Base(name), Data: data}, Kitchen: job.Doc{Name: "kitchen.toml", Data: []byte(keepingKitchen)}}, job.Choices{})
	if b.Cooked == nil {
		t.Fatalf("not computed: %v", b.Findings)
	}
	k, words := b.Cooked.Keeping, strings.ToLower(b.Facts().Storage.Sealed)
	want := strings.Fields(wants)
	if shelf {
		if string(k.Class) != want[0] {
			t.Errorf("%s, want %s: %v\n%v", k.Class, want[0], k.Reasons, b.Findings)
		}
		want = want[1:]
		for _, d := range b.Findings {
			if d.Severity == diag.Error && d.Path != "name" || d.Severity == diag.Warning && keepingCodes[d.Code] && !slices.Contains(want, d.Code) {
				t.Errorf("%s %s: %s", d.Severity, d.Code, d.Message)
			}
		}
	} else if k.Class == cook.Shelf || k.Class == cook.ShelfShort || k.SealedMonths > 0 && k.Class != cook.Freezer || !cold(words) {
		t.Errorf("%s for %d months: %q\n%v", k.Class, k.SealedMonths, words, k.Reasons)
	}
	for _, code := range want {
		if !slices.ContainsFunc(b.Findings, func(d diag.Diagnostic) bool { return d.Code == code }) {
			t.Errorf("no finding %s in %v", code, b.Findings)
		}
	}
	for _, e := range slices.Concat(k.Reasons, k.Times) {
		if e.Fact == "" || e.Source == "" || e.How == "" {
			t.Errorf("a fact without source: %+v", e)
		}
	}
}

// keepingCodes are the findings that must not alarm over a sound batch.
var keepingCodes = map[string]bool{"low-acid": true, "acid-unknown": true, "never-shelf": true, "reduced-sugar": true, "recipe-not-tested": true, "jar-too-large": true,
	"headspace-off": true, "process-too-short": true, "unsafe-method": true, "steam-too-long": true, "untested-chutney": true, "ph-near-limit": true, "bad-set-temperature": true}

// cold reports words that send a jar to the refrigerator or freezer.
func cold(words string) bool {
	return strings.Contains(words, "refrigerat") || strings.Contains(words, "40 °f") || strings.Contains(words, "freez") || strings.Contains(words, "frozen")
}
