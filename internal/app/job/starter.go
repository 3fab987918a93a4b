package job

import (
	"bytes"
	"cmp"
	"fmt"
	"strings"
	"text/template"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/notes"
	"jarmark/internal/kitchen/pantry"
	"jarmark/templates"
)

// StarterBatch is a batch file to fill in, named after what is cooked.
func StarterBatch(name string, made unit.Date) (Doc, error) {
	file := FileName(name)
	if file == "" {
		return Doc{}, fmt.Errorf("%q gives no file name", name)
	}
	kind, fruit := kindOf(name)
	data, err := starter("new/batch.toml", map[string]any{"Name": upperFirst(name), "Kind": string(kind), "Made": made.String(), "Fruit": fruit})
	return Doc{Name: file + ".toml", Data: data}, err
}

// MaxNotes is the longest text of notes read, in bytes.
const MaxNotes = notes.MaxText

// BatchFromNotes is a batch file of a maker's plain notes, or of a recipe. What
// the notes leave open is told, and asked about in the file; an error is a
// [unit.ParseError] about the text or the name. An empty kind is that of the
// name, or of the heading of the notes; made stands where the notes name no day.
func BatchFromNotes(name, kind string, data []byte, made unit.Date) (Doc, diag.List, error) {
	text, err := notes.Check(data)
	if err != nil {
		return Doc{}, nil, err
	}
	file := FileName(name)
	if file == "" {
		return Doc{}, nil, &unit.ParseError{Msg: fmt.Sprintf("%q gives no file name", name), Hint: "use letters and numbers"}
	}
	r := notes.Read(text, pantry.Default())
	var l diag.List
	kind, by := kindOfNotes(name, kind, r, &l)
	for _, line := range r.Lines {
		for _, ask := range line.Asks {
			l.Notef("notes-asked", "", "", "line %d, %q: %s", line.No, short(line.Text), ask)
		}
	}
	doc := Doc{Name: file + ".toml", Data: r.TOML(notes.Head{Name: upperFirst(name), Product: kind, ProductBy: by, Made: made.String()})}
	return doc, l.Capped(maxFindings), nil
}

// short cuts a long line for a message.
func short(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}

// AskAbout asks which food is meant by the fruit of a new batch.
func AskAbout(name string) (l diag.List) {
	p := pantry.Default()
	_, fruit := kindOf(name)
	_, known := p.Ingredient(fruit)
	for _, word := range append([]string{fruit}, strings.Fields(fruit)...) {
		if a, ok := p.Ambiguous(word, ""); ok && (word == fruit || !known) {
			l.Notef("ambiguous-ingredient", "", "", "%q may be %s", word, cook.Either(a.Choices)).Hinted("write the one you use: " + a.Why)
			return l
		}
	}
	return l
}

// StarterKitchen is a kitchen.toml to fill in, for the rules of a place.
func (e *Env) StarterKitchen(id string) ([]byte, diag.List) {
	at, found := e.PlaceOf(cmp.Or(id, "us"))
	if found.HasErrors() {
		return nil, found
	}
	data, err := starter("new/kitchen.toml", map[string]any{"Place": at.ID, "Units": at.Units, "Currency": at.Currency})
	if err != nil {
		return nil, nil // a constant template: cannot fail
	}
	return data, nil
}

// PlaceOf gives the place of an id chosen on the command line.
func (e *Env) PlaceOf(id string) (place.Place, diag.List) {
	var l diag.List
	at, hint, ok := e.Book.Find(id)
	if !ok {
		l.Errorf("unknown-place", diag.Command, "", "no rules for the place %q", id).Hinted(hint)
	}
	return at, l
}

func starter(file string, v map[string]any) ([]byte, error) {
	t, err := template.ParseFS(templates.FS, file)
	if err != nil {
		return nil, err
	}
	var buf bytes.Buffer
	err = t.Execute(&buf, v)
	return buf.Bytes(), err
}

// kindOf finds the kind of preserve in a name, a jam where it says none; the
// rest is the fruit.
func kindOf(name string) (batch.ProductType, string) {
	kind, fruit, _ := pantry.Default().KindIn(bareName(name))
	return batch.ProductType(cmp.Or(kind, string(batch.Jam))), cmp.Or(fruit, "fruit")
}

// FileName makes a plain file name of a title, without its end: "Plum & anise"
// -> "plum-anise", "Плум" -> "плум". Letters of any script stand as they are;
// "" where there is none.
func FileName(s string) string {
	var b strings.Builder
	for _, r := range norm.NFC.String(strings.ToLower(s)) {
		n := b.Len()
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r) || n > 0 && unicode.Is(unicode.Mn, r):
			if n+utf8.RuneLen(r) > 60 {
				return strings.Trim(b.String(), "-")
			}
			b.WriteRune(r)
		case n > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	out := strings.Trim(b.String(), "-")
	if batch.Reserved(out) {
		out += "-batch"
	}
	return out
}

func upperFirst(s string) string {
	r := []rune(s)
	if len(r) > 0 {
		r[0] = unicode.ToUpper(r[0])
	}
	return string(r)
}
