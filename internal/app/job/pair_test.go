package job_test

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/law/label"
)

// A batch whose file wants fronts alone gets an information label beside them where
// the front would be text alone, as under a state's sentence on a small sheet; on a
// large one, and where the maker asks for the front by name, the front stays alone.
func TestFrontsOfTextAloneArePaired(t *testing.T) {
	env := builtin(t)
	for _, x := range []struct {
		sheet, size string
		asked       []label.Piece
		want        string
	}{
		{"letter-2x5-4x2in", "", nil, "front info"},                     // no room for all words
		{"letter-plain", "size = \"100 x 60 mm\"\n", nil, "front info"}, // nor for the ornament
		{"letter-plain", "size = \"150 x 120 mm\"\n", nil, "front"},     // room for all
		{"letter-2x5-4x2in", "", []label.Piece{label.Front}, "front"},   // as asked
	} {
		in := demoInput(t, demoBatches[0])
		in.Batch.Data = []byte(strings.Replace(string(in.Batch.Data), "[label]\n", "[label]\nkind = \"front\"\nsheet = \""+x.sheet+"\"\n"+x.size, 1))
		run, found, err := env.Print([]job.Input{in}, job.Choices{Pieces: x.asked}, "pdf")
		if err != nil || found.HasErrors() {
			t.Fatalf("%s: %v %v", x.sheet, err, found)
		}
		var got []string
		for _, r := range run.Printed {
			got = append(got, strings.Split(string(r.Piece), " + ")...)
		}
		slices.Sort(got)
		told := false
		for _, d := range found {
			told = told || d.Code == "front-and-info"
		}
		if s := strings.Join(got, " "); s != x.want || told != (x.want == "front info") {
			t.Errorf("%s %v: %s, told %v, want %s", x.sheet, x.asked, s, told, x.want)
		}
	}
}
