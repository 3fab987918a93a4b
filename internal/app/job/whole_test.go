package job_test

import (
	"flag"
	"io/fs"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
	"jarmark/templates"
)

// runs is how many seasons with slips TestWhole makes:
//
//	go test ./internal/app/job -run Whole -v -args -whole 5000
var runs = flag.Int("whole", 25, "seasons with slips in them")

// TestWhole makes seasons with slips of the keyboard in them, and counts: a
// fifth at least must end in a PDF that PDFium opens, or it tried too little.
func TestWhole(t *testing.T) {
	if testing.Short() {
		t.Skip("a second or two")
	}
	opened := 0
	for i := range *runs {
		if whole(t, uint64(i), uint8(i), "") {
			opened++
		}
	}
	t.Logf("%d runs, %d with a PDF opened", *runs, opened)
	if opened < *runs/5 {
		t.Errorf("only %d of %d runs came to a PDF", opened, *runs)
	}
}

// FuzzWhole is TestWhole with text of the fuzzer's own among the slips.
func FuzzWhole(f *testing.F) {
	for i := range 5 {
		f.Add(uint64(i), uint8(i), `"1 1/2 cups"`)
	}
	f.Fuzz(func(t *testing.T, seed uint64, slips uint8, text string) {
		if len(text) < 1<<12 {
			whole(t, seed, slips, text)
		}
	})
}

// whole takes a kitchen, a batch, a gift list, a design and a sheet with slips
// in some of their lines through the whole program. Whatever they hold: no
// panic, no internal error, check and make agree, and each PDF opens.
func whole(t *testing.T, seed uint64, slips uint8, text string) (opened bool) {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, uint64(slips)))
	files := []string{
		string(demoFile(t, "kitchen.toml")), string(demoFile(t, demoBatches[r.IntN(len(demoBatches))])),
		"to,jars,message,jam,design\nAnn,1,with love,,\nBea,2,,,blossom\n", builtinText(t, "designs/orchard.toml"), builtinText(t, "sheets/letter-plain.toml"),
	}
	for range slips % 4 {
		i := []int{0, 1, 1, 1, 2, 3, 4}[r.IntN(7)]
		files[i] = slip(r, files[i], text)
	}
	env, found, err := job.NewEnv(fstest.MapFS{"designs/own.toml": {Data: []byte(files[3])}, "sheets/own.toml": {Data: []byte(files[4])}})
	if err != nil {
		t.Fatalf("own files: %v", err)
	}
	wellFormed(t, found)
	c := job.Choices{Design: []string{"", "", "own"}[r.IntN(3)], Sheet: []string{"", "", "own"}[r.IntN(3)]}
	in := []job.Input{{Kitchen: job.Doc{Name: "kitchen.toml", Data: []byte(files[0])}, Batch: job.Doc{Name: "batch.toml", Data: []byte(files[1])}}}
	batches, checked := env.CheckAll(in, c)
	checked = append(checked, batches[0].Findings...)
	wellFormed(t, checked)
	if b := batches[0]; b.Cooked != nil && b.Cooked.Count() > 500 {
		return false // a run of thousands is for the benchmarks
	}
	var made []job.File
	for m := range env.MakeAll(in, c) {
		if m.Err != nil {
			t.Fatalf("seed %d, %d slips: an internal error for the maker's input: %v", seed, slips, m.Err)
		}
		wellFormed(t, m.Findings)
		if checked.HasErrors() && !m.Findings.HasErrors() || !told(checked, m.Findings.Errors()) {
			t.Fatalf("seed %d, %d slips: check says %v, make %v", seed, slips, checked.Errors(), m.Findings.Errors())
		}
		made = append(made, m.Files...)
	}
	list, l := job.GiftList(job.Doc{Name: "friends.csv", Data: []byte(files[2])})
	wellFormed(t, l)
	c.List, c.Pieces = list, []label.Piece{label.Tag}
	tags, l, err := env.LabelFiles(in, c, "pdf")
	if err != nil {
		t.Fatalf("seed %d, %d slips: tags: %v", seed, slips, err)
	}
	wellFormed(t, l)
	return openOne(t, r, append(made, tags...))
}

// told reports whether check tells of each error, if only by a note: a plan
// without weights may be checked, and is not yet to be made.
func told(checked, errors diag.List) bool {
	for _, e := range errors {
		if !slices.ContainsFunc(checked, func(d diag.Diagnostic) bool { return d.Code == e.Code }) {
			return false
		}
	}
	return true
}

// openOne opens one of the PDF files.
func openOne(t *testing.T, r *rand.Rand, files []job.File) bool {
	files = slices.DeleteFunc(files, func(f job.File) bool { return !strings.HasSuffix(f.Name, ".pdf") })
	if len(files) == 0 {
		return false
	}
	presstest.Open(t, files[r.IntN(len(files))].Data)
	return true
}

// oddValues are what stands after an equals sign by mistake, haste or malice.
var oddValues = []string{`""`, `"x"`, "0", "-1", "1e9", "nan", "true", "2026-02-29", "2024-02-29", "1979-05-27T07:32:00Z", "[]", "{}", `[["x"]]`,
	`"1 furlong"`, `"0 kg"`, `"1/0 oz"`, `"999999 kg"`, `"½ cup"`, `"8 fl oz"`, `"שרה"`, `"🎄"`, `"e\u0301"`, "\"\\u202e\"", `"../../x"`, `"CON"`, `"<script>"`, `"` + strings.Repeat("w", 199) + `"`, "9223372036854775807"}

// slip changes one line as a hand or a program might.
func slip(r *rand.Rand, file, text string) string {
	lines := strings.Split(file, "\n")
	i, j := r.IntN(len(lines)), r.IntN(len(lines))
	key, _, ok := strings.Cut(lines[i], "=")
	switch n := r.IntN(9); {
	case n == 0:
		lines = slices.Delete(lines, i, i+1)
	case n == 1:
		lines = slices.Insert(lines, j, lines[i])
	case n == 2:
		lines[i], lines[j] = lines[j], lines[i]
	case n == 3 && len(lines[i]) > 0:
		at := r.IntN(len(lines[i]))
		lines[i] = lines[i][:at] + string(rune(r.IntN(0x2100))) + lines[i][at:]
	case n == 4:
		lines[i] = strings.ReplaceAll(lines[i], "1", "0")
	case n == 5:
		lines[i] += ",,\"\r"
	case n == 6:
		return strings.Join(lines[:max(1, i)], "\n")
	case ok && text != "" && r.IntN(2) == 0:
		lines[i] = key + "= " + text
	case ok:
		lines[i] = key + "= " + oddValues[r.IntN(len(oddValues))]
	}
	return strings.Join(lines, "\n")
}

func builtinText(t *testing.T, name string) string {
	t.Helper()
	data, err := fs.ReadFile(templates.FS, name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
