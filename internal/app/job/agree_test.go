package job_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
)

// TestCheckAndMakeAgree: what make tells, check tells, in the same words; and
// what check lets pass is made. The flaws are those of labels, tags, market
// cards and packing; then every line of the batch is left out, one at a time.
func TestCheckAndMakeAgree(t *testing.T) {
	env := builtin(t)
	in := demoInput(t, demoBatches[0])
	text := string(in.Batch.Data)
	flaws := map[string]string{}
	for name, c := range map[string][2]string{
		"unknown design of a gift":  {`occasion = "summer"`, `design = "nosuch"`},
		"Hebrew on a tag":           {`to = "Ottilie"`, `to = "שלום"`},
		"emoji on a tag":            {`message = "For`, `message = "🍓🍓 For`},
		"a message too long":        {`message = "For`, `message = "` + strings.Repeat("on and on ", 80)},
		"a name too long for a tag": {`to = "Ottilie"`, `to = "` + strings.Repeat("Ottilie", 30) + `"`},
		"a price card without room": {`price = "9.00"`, `price = "123456789.00"`},
		"an event of many words":    {`event = "Millbrook`, `event = "` + strings.Repeat("Saturday ", 60)},
		"a market before the jam":   {`date = 2026-06-20`, `date = 2026-06-01`},
		"more given than there are": {`jars = 2`, `jars = 200`},
		"unknown design":            {`design = "orchard"`, `design = "nosuch"`},
		"a name no label holds":     {`name = "Strawberry & rhubarb jam"`, `name = "` + strings.Repeat("Strawberry ", 40) + `jam"`},
		"a label without room":      {`design = "orchard"`, "design = \"orchard\"\nsize = \"20 x 12 mm\""},
		"unknown sheet":             {`design = "orchard"`, "design = \"orchard\"\nsheet = \"nosuch\""},
		"letters no face has":       {`name = "Strawberry & rhubarb jam"`, `name = "草莓 jam"`},
	} {
		if flaws[name] = strings.Replace(text, c[0], c[1], 1); flaws[name] == text {
			t.Fatalf("%s: the demo has no %s", name, c[0])
		}
	}
	if !testing.Short() {
		lines := strings.Split(text, "\n")
		for i, l := range lines {
			if l != "" && l[0] != '#' {
				flaws[fmt.Sprintf("without line %d", i+1)] = strings.Join(slices.Delete(slices.Clone(lines), i, i+1), "\n")
			}
		}
	}
	for name, text := range flaws {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			one := []job.Input{{Kitchen: in.Kitchen, Batch: job.Doc{Name: in.Batch.Name, Data: []byte(text)}}}
			checked, across := env.CheckAll(one, job.Choices{})
			told := lines(append(across, checked[0].Findings...))
			for m := range env.MakeAll(one, job.Choices{}) {
				if m.Err != nil {
					t.Fatal(m.Err)
				}
				if made := lines(m.Findings); !slices.Equal(told, made) {
					t.Errorf("check tells\n%s\nmake tells\n%s", strings.Join(told, "\n"), strings.Join(made, "\n"))
				}
				if checked[0].OK() != (len(m.Files) > 0) {
					t.Errorf("check passes: %v; %d files made", checked[0].OK(), len(m.Files))
				}
			}
		})
	}
}

// lines are findings as they are told, each once, notes left out.
func lines(l diag.List) (out []string) {
	for _, d := range l {
		if d.Severity != diag.Note {
			out = append(out, fmt.Sprintf("%s:%d: %s: %s", d.File, d.Pos.Line, d.Severity, d.Message))
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
