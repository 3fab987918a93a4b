package job_test

import (
	"regexp"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
)

var asleep = regexp.MustCompile(`(?m)^# (\[\[?\w+\]\]?|\w+ = )`)

// A new batch and a new kitchen show by example only keys there are: with the
// hash taken away before each, the file is read to the last line.
func TestStarterFilesNameKeysThereAre(t *testing.T) {
	env, _, err := job.NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	b, err := job.StarterBatch("Quince jelly", unit.Date{Year: 2026, Month: 10, Day: 3})
	if err != nil {
		t.Fatal(err)
	}
	kitchen, l := env.StarterKitchen("us-or")
	if len(l) > 0 {
		t.Fatal(l)
	}
	for name, text := range map[string][]byte{"batch": b.Data, "kitchen": kitchen} {
		if n := len(asleep.FindAll(text, -1)); n < 12 {
			t.Errorf("%s: only %d examples", name, n)
		}
		awake := asleep.ReplaceAll(text, []byte("$1"))
		var found diag.List
		if name == "batch" {
			_, found = batch.Parse(b.Name, awake, nil)
		} else {
			_, found = batch.ParseKitchen("kitchen.toml", awake, env.Book.Find)
		}
		for _, f := range found {
			if f.Code != "missing-name" && f.Code != "missing-address" { // what the maker is to fill in
				t.Errorf("%s, line %d: %s: %s", name, f.Pos.Line, f.Code, f.Message)
			}
		}
	}
}
