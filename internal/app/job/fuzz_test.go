package job_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
	"jarmark/testdata/demo"
)

// FuzzLoad feeds any bytes as kitchen and batch through every stage to the
// finished files. Whatever they hold: no panic, no hang, and a batch without
// files says why.
func FuzzLoad(f *testing.F) {
	for _, s := range fuzzSeeds(f) {
		f.Add(s[0], s[1])
	}
	env := builtin(f)
	f.Fuzz(func(t *testing.T, kitchen, batch []byte) {
		if len(kitchen)+len(batch) > 64<<10 {
			return
		}
		in := job.Input{Kitchen: job.Doc{Name: "kitchen.toml", Data: kitchen}, Batch: job.Doc{Name: "batch.toml", Data: batch}}
		b := env.Load(in, job.Choices{})
		if _, err := json.Marshal(b.Facts()); err != nil {
			t.Fatalf("facts are no JSON: %v", err)
		}
		wellFormed(t, b.Findings)
		c := job.Choices{}
		if b.Cooked != nil && b.Cooked.Count() > 200 {
			c.Copies = 1 // a run of thousands is for the benchmarks
		}
		files, found, err := env.Make(b, c)
		if err != nil {
			t.Fatalf("an internal error for the maker's input: %v", err)
		}
		wellFormed(t, found)
		if len(files) == 0 && !b.Findings.HasErrors() && !found.HasErrors() {
			t.Fatal("no files and no error finding")
		}
		if b.Cooked == nil || len(b.Contents) == 0 {
			return
		}
		// One other kind of label an input: all nine would make runs too slow.
		c.Pieces, c.Serials, c.Copies = label.Pieces[len(batch)%len(label.Pieces):][:1], true, 1
		_, found = env.Labels(b, c)
		wellFormed(t, found)
	})
}

// wellFormed: every finding says what, and in the words' house style.
func wellFormed(t *testing.T, l diag.List) {
	t.Helper()
	for _, d := range l {
		if d.Message == "" || d.Code == "" {
			t.Fatalf("a finding without words or code: %+v", d)
		}
		if strings.HasSuffix(d.Message, ".") && !strings.HasSuffix(d.Message, "...") {
			t.Logf("a message ends in a full stop: %q", d.Message)
		}
	}
}

// fuzzSeeds are the demo's batches, the kitchen sink, and every flawed batch
// the other tests know.
func fuzzSeeds(tb testing.TB) (out [][2][]byte) {
	tb.Helper()
	kitchen := demoFile(tb, "kitchen.toml")
	for _, n := range demoBatches {
		out = append(out, [2][]byte{kitchen, demoFile(tb, n)})
	}
	out = append(out, [2][]byte{[]byte(sinkKitchen("us-or")), []byte(sinkBatch)}, [2][]byte{[]byte(sinkKitchen("de")), []byte(sinkBatch)})
	flawed, _ := filepath.Glob("../../../testdata/batch/*.toml")
	if len(flawed) == 0 {
		tb.Fatal("no flawed batches in testdata/batch")
	}
	for _, p := range flawed {
		data, err := os.ReadFile(p)
		if err != nil {
			tb.Fatal(err)
		}
		if strings.HasPrefix(filepath.Base(p), "kitchen") {
			out = append(out, [2][]byte{data, demoFile(tb, demoBatches[0])})
		} else {
			out = append(out, [2][]byte{nil, data})
		}
	}
	return out
}

var demoBatches = []string{"strawberry-rhubarb.toml", "blackcurrant-jelly.toml", "apricot-lavender.toml"}

func demoFile(tb testing.TB, name string) []byte {
	tb.Helper()
	data, err := demo.FS.ReadFile(name)
	if err != nil {
		tb.Fatal(err)
	}
	return data
}

func demoInput(tb testing.TB, name string) job.Input {
	tb.Helper()
	return job.Input{
		Kitchen: job.Doc{Name: "kitchen.toml", Data: demoFile(tb, "kitchen.toml")},
		Batch:   job.Doc{Name: name, Data: demoFile(tb, name)},
	}
}

func builtin(tb testing.TB) *job.Env {
	tb.Helper()
	env, found, err := job.NewEnv(nil)
	if err != nil || found.HasErrors() {
		tb.Fatalf("built-in data: %v, %v", err, found)
	}
	return env
}
