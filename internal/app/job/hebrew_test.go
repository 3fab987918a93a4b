package job_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/law/label"
)

// hebrew is where a typeface with Hebrew letters stands on many a Linux (DejaVu).
const hebrew = "/usr/share/fonts/truetype/dejavu/DejaVuSans"

// TestHebrewNames: with a typeface of the maker's that has its letters a Hebrew name is
// set in every design, passes the second look, and is read in its own order by PDFium and
// Poppler. Needs DejaVu Sans, unless JARMARK_READERS=require not to be passed over.
func TestHebrewNames(t *testing.T) {
	own := fstest.MapFS{}
	for _, name := range []string{"", "-Bold"} {
		data, err := os.ReadFile(hebrew + name + ".ttf")
		if err != nil {
			if os.Getenv("JARMARK_READERS") == "require" {
				t.Fatal(err)
			}
			t.Skip("there is no DejaVu Sans")
		}
		own["fonts/Alder"+name+".ttf"] = &fstest.MapFile{Data: data}
	}
	env, l, err := job.NewEnv(own)
	if err != nil || len(l) > 0 {
		t.Fatal(err, l)
	}
	in := ownInput(t, "", "")
	in.Batch.Data = bytes.Replace(in.Batch.Data, []byte("[label]"), []byte("[label]\ntitle = \"ריבת תותים\""), 1)
	for _, d := range env.Designs.List() {
		c := job.Choices{Design: d.ID, Pieces: []label.Piece{label.Lid}, Copies: 1}
		f, doc := printed(t, env, load(t, env, in, c), c)
		if !strings.Contains(doc.Pages[0].Places[0].Frame.Name, "ריבת") {
			t.Errorf("%s: the label is called %q", d.ID, doc.Pages[0].Places[0].Frame.Name)
		}
		data, err := env.PDF(doc)
		if err != nil {
			t.Fatal(err)
		}
		for who, said := range map[string]string{"PDFium": f.Text(0), "Poppler": popplerText(t, data)} {
			if who == "Poppler" && said == "" {
				continue
			}
			if s := presstest.Squeeze(said); !strings.Contains(s, "ריבת") || !strings.Contains(s, "תותים") {
				t.Errorf("%s: %s reads %q", d.ID, who, said)
			}
		}
	}
}
