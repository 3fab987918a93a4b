package job

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/picture"
	"jarmark/internal/draw/press"
	"jarmark/internal/give/record"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/label"
)

// mostAcross is the longer side, in pixels, of a picture on labels: 76 mm at 300
// dots per inch.
const mostAcross = 900

// owned is the maker's folder, and what was read in it.
type owned struct {
	fsys fs.FS
	mu   sync.Mutex
	read map[string]*readPicture // by file and state
}

// readPicture is one picture file in colours and in grey, or why it cannot be.
type readPicture struct {
	colour, grey *page.Image
	beside       string
	err          error
}

// logo reads a picture file; the same state of it is read once.
func (o *owned) logo(file string) *readPicture {
	key := file
	if o.fsys != nil {
		if st, err := fs.Stat(o.fsys, file); err == nil {
			key = fmt.Sprintln(file, st.Size(), st.ModTime().UnixNano())
		}
	}
	o.mu.Lock()
	defer o.mu.Unlock()
	if r := o.read[key]; r != nil {
		return r
	}
	r := new(readPicture)
	r.colour, r.grey, r.beside, r.err = decodeLogo(o.fsys, file)
	o.read = map[string]*readPicture{key: r} // a kitchen has one
	return r
}

func decodeLogo(fsys fs.FS, file string) (colour, grey *page.Image, beside string, err error) {
	d, err := openPicture(fsys, file)
	if err != nil {
		return nil, nil, "", err
	}
	if colour, err = d.Image(mostAcross, false); err == nil {
		grey, err = d.Image(mostAcross, true)
	}
	return colour, grey, d.Beside, err
}

func openPicture(fsys fs.FS, file string) (*picture.Decoded, error) {
	data, err := picture.Open(fsys, file, picture.MostBytes)
	if err != nil {
		return nil, err
	}
	return picture.Decode(data)
}

// badPicture is the finding of a file that cannot be read.
func badPicture(l *diag.List, in, path, file string, err error) {
	badFile(l, "bad-picture", in, path, file, err)
}

// badFile tells what is wrong with a picture file; of a drawing, each thing at
// its place in it.
func badFile(l *diag.List, code, in, path, file string, err error) {
	var p *picture.Problem
	if !errors.As(err, &p) || p.Line == 0 {
		l.Errorf(code, in, path, "%s: %s", file, err).Hinted(helpOf(err))
		return
	}
	for _, p := range append([]*picture.Problem{p}, p.More...) {
		l.Errorf(code, file, "", "%s", p.What).Hinted(p.Hint).Pos = diag.Pos{Line: p.Line, Column: p.Column}
	}
}

// badPhoto is the same of a photo of the page, which can be without it.
func badPhoto(l *diag.List, in, path, file string, err error) {
	badFile(l, "bad-photo", in, path, file, err)
}

func helpOf(err error) string {
	var p *picture.Problem
	if errors.As(err, &p) {
		return p.Hint
	}
	return ""
}

// besidesPicture tells what of a readable file is not as its maker may think.
func besidesPicture(l *diag.List, in, path, file, what string) {
	if what != "" {
		l.Notef("picture-changed", in, path, "%s %s", file, what)
	}
}

// ownLook gives a batch the maker's own typefaces and picture.
func (e *Env) ownLook(b *Batch) (l diag.List) {
	if b.Kitchen == nil {
		return nil
	}
	t := b.Kitchen.Type
	b.faces = press.Typefaces{Title: e.typeface(&l, b, "title", t.Title), Text: e.typeface(&l, b, "text", t.Text),
		Bold: e.typeface(&l, b, "bold", t.Bold), Hand: e.typeface(&l, b, "hand", t.Hand)}
	if b.Kitchen.Picture.File != "" {
		e.ownPicture(&l, b)
	}
	return l
}

func (e *Env) ownPicture(l *diag.List, b *Batch) {
	p, in := b.Kitchen.Picture, b.Kitchen.File.Name
	const path = "picture.file"
	r := e.own.logo(p.File)
	if r.err != nil {
		badPicture(l, in, path, p.File, r.err)
		return
	}
	besidesPicture(l, in, path, p.File, r.beside)
	alt := p.Alt
	if alt == "" {
		alt = b.Kitchen.Name
	}
	b.picture = &press.Picture{Image: named(r.colour, p.File, alt), Grey: named(r.grey, p.File, alt), Spot: p.Where, Size: p.Size,
		Ornament: p.Instead == "" || p.Instead == "ornament" || p.Instead == "both", Name: p.Instead == "name" || p.Instead == "both"}
	for _, k := range p.On {
		b.picture.On = append(b.picture.On, label.Piece(k))
	}
	if len(p.On) == 0 {
		b.picture.On = []label.Piece{label.Front, label.Wrap, label.Lid, label.Tag, label.ShelfCard}
	}
}

// pagePhoto is the longer side, in pixels, of a photo on the public page.
const pagePhoto = 1000

// photos reads the photos of the public page.
func (e *Env) photos(b *Batch) (out []record.Photo, l diag.List) {
	for _, p := range b.Notes.Photos {
		in, at := b.Input.Batch.Name, p.Path+".file"
		d, err := openPicture(e.own.fsys, p.File)
		if err != nil {
			badPhoto(&l, in, at, p.File, err)
			continue
		}
		one := record.Photo{Alt: p.Alt}
		if one.Data, one.W, one.H, err = d.Photo(pagePhoto); err != nil {
			badPhoto(&l, in, at, p.File, err)
			continue
		}
		out = append(out, one)
	}
	return out, l
}

// typeface finds a typeface of the maker's folder by its file.
func (e *Env) typeface(l *diag.List, b *Batch, key, file string) page.Face {
	if file == "" {
		return ""
	}
	name, ok := e.Press.Own[strings.ToLower(path.Base(strings.ReplaceAll(file, `\\`, "/")))]
	if !ok {
		there := slices.Sorted(maps.Keys(e.Press.Own))
		d := l.Errorf("no-such-typeface", b.Kitchen.File.Name, "type."+key, "there is no typeface %q that can be used", file).
			Hinted("put its TTF or OTF file into fonts/ beside kitchen.toml")
		if len(there) > 0 {
			d.Hinted("in fonts/ there are " + strings.Join(there[:min(len(there), 8)], ", "))
		}
	}
	return name
}

// named is an image with what the kitchen says of it.
func named(m *page.Image, name, alt string) *page.Image {
	out := *m
	out.Name, out.Alt = name, alt
	return &out
}

// Pictures are the files of pictures and photos that a kitchen and a batch name.
func Pictures(in Input) (files []string) {
	if bytes.Contains(in.Kitchen.Data, []byte("picture")) {
		if k, _ := batch.ParseKitchen(in.Kitchen.Name, in.Kitchen.Data, nil); k.Picture.File != "" {
			files = append(files, k.Picture.File)
		}
	}
	if bytes.Contains(in.Batch.Data, []byte("photo")) {
		if b, _ := batch.Parse(in.Batch.Name, in.Batch.Data, nil); b != nil {
			for _, p := range b.Photos {
				files = append(files, p.File)
			}
		}
	}
	return files
}
