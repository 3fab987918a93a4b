package job

import (
	"slices"

	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/give/proof"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// ProofFiles makes the proof of the labels of batches, in one format: the
// labels at true size with every required line measured, for an inspector to
// see. It is made even where a line falls short, and says so.
func (e *Env) ProofFiles(in []Input, c Choices, format string) ([]File, diag.List, error) {
	batches, found := e.LoadAll(in, c)
	var all *page.Doc
	for _, b := range batches {
		found = append(found, b.Findings...)
		doc, l := e.of(b.Input).Proof(b, c)
		if doc != nil {
			l = append(l, e.oneFile([]*sheaf{{env: e.of(b.Input), first: b}})...)
		}
		found = append(found, l...)
		all = all.Followed(doc)
	}
	if all == nil {
		if !found.HasErrors() {
			found.Errorf("no-labels", "", "", "there is no label to prove").Hinted("a proof needs a batch with a jar and a place")
		}
		return nil, found, nil
	}
	files, err := e.Files(all, "label-proof", format, c.DPI)
	return files, found, err
}

// Proof is the proof of one batch: a part for every jar size. It is nil where
// no label could be set.
func (e *Env) Proof(b *Batch, c Choices) (*page.Doc, diag.List) {
	if b.Cooked == nil || b.Set == nil {
		return nil, nil
	}
	var found diag.List
	quotes, err := e.Book.Quotes(b.Set.ID)
	if err != nil {
		found.Errorf("broken-rules", "", "place", "the quotations of %q cannot be read: %v", b.Set.ID, err).Hinted("this is a fault of the program: please report it")
		return nil, found
	}
	var proofs []proof.Proof
	for i, content := range b.Contents {
		if content == nil {
			continue
		}
		p, l := e.prove(b, i, c, quotes)
		found = append(found, b.locate(l)...)
		if len(p.Labels) > 0 {
			proofs = append(proofs, p)
		}
	}
	doc, l := proof.Doc(proofs, e.Faces, b.paper())
	found = append(found, l...)
	if doc != nil {
		title := doc.Title
		b.orderOf(c).Describe(doc, "proof")
		doc.Title = title
	}
	return doc, found
}

// prove measures the labels of one jar size.
func (e *Env) prove(b *Batch, i int, c Choices, quotes []place.Quote) (proof.Proof, diag.List) {
	content := b.Contents[i]
	p := proof.Proof{Name: b.Notes.Name, Lot: b.Cooked.Lot, Jar: content.JarKey, Maker: b.Kitchen.Name, Place: b.Set.NameIn(content.Lang),
		American: b.Kitchen.Place.US() && content.Lang == "en", Law: *content,
		Allergens: content.AllergenWhy, Doubt: content.AllergenDoubt, None: content.NoAllergens}
	for _, r := range b.Cooked.Keeping.Reasons {
		p.Keeping = append(p.Keeping, r.Fact)
	}
	var found diag.List
	var frames []*page.Frame
	o := b.orderOf(c)
	for _, piece := range b.proved(c) {
		first, ok, l := e.Press.First(o, piece, i)
		found = append(found, l...)
		if !ok {
			continue
		}
		frames = append(frames, first.Frame)
		p.Labels = append(p.Labels, first)
		p.Design = first.Frame.Design
	}
	for _, d := range append(b.Findings.Errors(), found.Errors()...) {
		p.Wrong = append(p.Wrong, d.Message)
	}
	for _, l := range inspect.Lines(frames, content, e.Faces) {
		read := b.Set.Read(l.Block, content.Lang, quotes)
		l.Block.Cite = b.Set.Words[content.Lang].Cite(l.Block.Cite)
		p.Lines = append(p.Lines, proof.Line{Line: l, Confidence: read.Confidence, ReadOn: read.On})
	}
	return p, found
}

// proved are the labels a law binds among those to be printed: a front label
// goes with its information label; where none is chosen, a wrap.
func (b *Batch) proved(c Choices) []label.Piece {
	out := slices.DeleteFunc(slices.Clone(b.pieces(c)), func(p label.Piece) bool {
		return p != label.Front && p != label.InfoLabel && p != label.Wrap && p != label.BagCard
	})
	if len(out) == 0 {
		return []label.Piece{label.Wrap}
	}
	return out
}
