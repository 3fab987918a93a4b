package batch

import (
	"slices"

	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

// rawPicture is the maker's own picture on the labels.
type rawPicture struct {
	File    *string          `toml:"file" help:"your logo or drawing, a PNG, JPEG or SVG file beside kitchen.toml||\"logo.png\""`
	Alt     *string          `toml:"alt" help:"what it shows, for those who cannot see it||\"a thorn branch\""`
	Where   *string          `toml:"where" help:"where it stands on a label: top, left, right or corner||\"left\""`
	Size    *string          `toml:"size" help:"its height, at most; else a third of the label|length|\"18 mm\""`
	Instead *string          `toml:"instead_of" help:"what it takes the place of: ornament, name (of the maker), both or nothing||\"both\""`
	On      source.OneOrMore `toml:"on" help:"labels it stands on: front, wrap, lid, tag, shelf||[\"front\", \"lid\"]"`
}

// rawType are the maker's own typefaces.
type rawType struct {
	Title *string `toml:"title" help:"typeface of names and prices: a TTF or OTF file in fonts/ beside kitchen.toml||\"Alder-Regular.ttf\""`
	Text  *string `toml:"text" help:"typeface of ingredients and all other facts||\"Brook-Regular.ttf\""`
	Bold  *string `toml:"bold" help:"its bold, for allergens and what else must stand out||\"Brook-Bold.ttf\""`
	Hand  *string `toml:"hand" help:"typeface of what is written by hand||\"Willow.ttf\""`
}

// rawPhoto is one photo of the public page.
type rawPhoto struct {
	File *string `toml:"file" help:"a photo for the public page, PNG or JPEG, beside kitchen.toml; where and when it was taken is left out||\"photos/plums.jpg\""`
	Alt  *string `toml:"alt" help:"what it shows, for those who cannot see it||\"plums on the tree\""`
}

// Picture is the maker's own picture on the labels; without File there is none.
type Picture struct {
	File, Alt string
	Where     string      // "top", "left", "right", "corner"; empty = as the label is shaped
	Size      unit.Length // height at most; 0 = a share of the label
	Instead   string      // "ornament", "name", "both", "nothing"; empty = ornament
	On        []string    // pieces; empty = all that can
}

// Typefaces are files of the maker's fonts folder; empty = the design's.
type Typefaces struct{ Title, Text, Bold, Hand string }

// Photo is one photo of the public page.
type Photo struct {
	Path, File, Alt string // Path "photo[0]"
}

// pictured are the labels that may bear a picture.
var pictured = []string{"front", "wrap", "lid", "tag", "shelf"}

func (r *reader) picture(raw *rawPicture) (p Picture) {
	if raw == nil {
		return p
	}
	p = Picture{
		File: r.text(raw.File, "picture.file"), Alt: r.text(raw.Alt, "picture.alt"),
		Where:   r.choice(raw.Where, "picture.where", "place of a picture", []string{"top", "left", "right", "corner"}, nil),
		Size:    r.length(raw.Size, "picture.size", 3*unit.Millimetre, 200*unit.Millimetre, "a height from 3 to 200 mm"),
		Instead: r.choice(raw.Instead, "picture.instead_of", "thing to leave out", []string{"ornament", "name", "both", "nothing"}, map[string]string{"ornaments": "ornament", "none": "nothing"}),
	}
	for i := range raw.On {
		if k := r.choice(&raw.On[i], source.At("picture.on", i), "label with a picture", pictured, pieceSynonyms); k != "" && !slices.Contains(p.On, k) {
			p.On = append(p.On, k)
		}
	}
	if r.absent(raw.File, "picture.file") {
		r.errorf("missing-file", "picture.file", "the picture has no file").Hinted(`add file = "logo.png", a file beside kitchen.toml`)
	}
	return p
}

func (r *reader) typefaces(raw *rawType) (t Typefaces) {
	if raw == nil {
		return t
	}
	return Typefaces{r.text(raw.Title, "type.title"), r.text(raw.Text, "type.text"), r.text(raw.Bold, "type.bold"), r.text(raw.Hand, "type.hand")}
}

// photos reads the photos of the public page.
func (r *reader) photos(in []rawPhoto) (out []Photo) {
	const most = 6
	if len(in) > most {
		r.errorf("list-too-long", "photo", "%d photos are more than %d", len(in), most).Hinted("keep the best")
		in = in[:most]
	}
	for i, raw := range in {
		at := source.At("photo", i)
		p := Photo{at, r.text(raw.File, at+".file"), r.text(raw.Alt, at+".alt")}
		if r.absent(raw.File, at+".file") {
			r.errorf("missing-file", at+".file", "the photo has no file").Hinted(`add file = "plums.jpg", a file beside kitchen.toml`)
			continue
		}
		if p.File == "" {
			continue // told
		}
		if p.Alt == "" {
			r.l.Warnf("no-alt", r.file, at, "nothing says what the photo shows").Hinted(`add alt = "plums on the tree", for those who cannot see it`)
		}
		out = append(out, p)
	}
	return out
}
