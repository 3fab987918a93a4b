package job

import (
	"fmt"

	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/weigh"
)

// Weighing is the judgement of one jar size: the highest honest declaration,
// and the official tests of the declared weight when there is one.
type Weighing struct {
	Jar      string         `json:"jar"`
	System   string         `json:"system"`
	Weighed  int            `json:"weighed"`
	Advice   string         `json:"highest_declaration"`
	Declared string         `json:"declared,omitempty"`
	Pass     bool           `json:"pass"`
	Lines    []string       `json:"lines"`
	Checks   []weigh.Check  `json:"checks,omitempty"`
	Figures  []weigh.Figure `json:"figures,omitempty"`

	report weigh.Report // of the declared weight, else of the advised one
}

// WeighBatch judges every jar size of a batch that has weighed jars, by the
// rules of the place the batch was loaded for.
func (e *Env) WeighBatch(b *Batch, declared unit.Mass) ([]Weighing, diag.List) {
	var out []Weighing
	var found diag.List
	if b.Cooked == nil || b.Kitchen.PlaceUnknown {
		return nil, nil
	}
	for _, j := range b.Cooked.Jars {
		if len(j.Weighed) == 0 {
			found.Notef("not-weighed", b.Input.Batch.Name, j.FillPath, "no %s was weighed", j.Jar.Description).
				Hinted(`weigh three filled jars or more, take the empty jar off, and write net = ["10.2 oz", ...]`)
			continue
		}
		d := declared
		if d == 0 {
			d = j.Declared
		}
		w, l := e.Weigh(b.Kitchen.Place, j.Jar.Description, weigh.Sample{Net: j.Weighed, Lot: j.Count, File: b.Input.Batch.Name, Path: j.FillPath + ".net", Metric: b.Kitchen.Units == unit.Metric}, d)
		out = append(out, w)
		found = append(found, l...)
	}
	return out, b.locate(found)
}

// Weigh judges one sample under the rules of a place: NIST Handbook 133 in the
// United States, the packers' rules elsewhere. Declared 0 only advises.
func (e *Env) Weigh(at place.Place, jar string, s weigh.Sample, declared unit.Mass) (Weighing, diag.List) {
	var a weigh.Advice
	var found, l diag.List
	var rep weigh.Report
	p, average := e.Book.Packers(at.ID)
	if average {
		a, found = p.Recommend(s)
	} else {
		p.System = place.US
		a, found = weigh.RecommendUS(s)
	}
	w := Weighing{Jar: jar, System: p.System, Weighed: len(s.Net), Advice: a.Text, Pass: a.Report.Pass}
	w.report = a.Report
	if declared > 0 {
		if average {
			rep, l = p.Check(declared, s)
		} else {
			rep, l = weigh.US(declared, s)
		}
		found = append(found, l...)
		w.report = rep
		w.Declared, w.Pass = declared.Format(at.Units), rep.Pass
		w.Checks, w.Figures, w.Lines = rep.Checks, rep.Figures, rep.Lines()
	} else {
		w.Checks, w.Figures, w.Lines = a.Report.Checks, a.Report.Figures, a.Report.Lines()
	}
	if a.Text != "" {
		w.Lines = append(w.Lines, fmt.Sprintf("highest honest declaration: %s (%s)", a.Text, a.Rule))
	}
	return w, found
}

// WeighingRecord is the record of weighing of some batches, as a page to sign
// ("pdf") or a table ("csv"); no file, with the reason, where nothing was weighed.
func (e *Env) WeighingRecord(batches []*Batch, declared unit.Mass, format string) (File, diag.List, error) {
	var sizes []pack.Weighed
	var found diag.List
	var first *Batch
	for _, b := range batches {
		if b.Cooked == nil || b.Kitchen.PlaceUnknown {
			continue
		}
		_, l := e.WeighBatch(b, declared)
		found = append(found, l...)
		for _, j := range b.Cooked.Jars {
			if len(j.Weighed) == 0 {
				continue
			}
			d, text := declared, declared.Format(b.Kitchen.Units)
			if d == 0 {
				d, text = j.Declared, j.DeclText
			}
			w, _ := e.Weigh(b.Kitchen.Place, j.Jar.Description, weigh.Sample{Net: j.Weighed, Lot: j.Count, Metric: b.Kitchen.Units == unit.Metric}, d)
			sizes = append(sizes, pack.Weighed{Product: b.Cooked.Batch.Name, Lot: b.Cooked.Lot, Jar: pack.JarIn(b.Kitchen, j.Jar), Made: b.Cooked.Batch.Made, Net: j.Weighed, Declared: text, Report: w.report})
			if first == nil {
				first = b
			}
		}
	}
	if first == nil || found.HasErrors() {
		return File{}, found, nil
	}
	duty := weigh.RecordUS
	if p, average := e.Book.Packers(first.Kitchen.Place.ID); average {
		duty = p.Record
	}
	list := pack.WeighRecord(first.Kitchen, duty, sizes)
	if format == "csv" {
		return File{Name: "weighing.csv", Data: list.CSV()}, found, nil
	}
	doc, l := list.Doc(e.Faces, first.paper())
	f, err := e.listPDF(doc, "weighing", first, Choices{})
	return f, append(found, l...), err
}

// ParseWeights reads weights given on the command line.
func ParseWeights(args []string) ([]unit.Mass, diag.List) {
	var out []unit.Mass
	var l diag.List
	for _, a := range args {
		m, err := unit.ParseMass(a)
		if err != nil {
			d := l.Errorf("bad-weight", diag.Command, "", "%q: %v", a, err)
			if pe, ok := err.(*unit.ParseError); ok {
				d.Hinted(pe.Hint)
			}
			continue
		}
		out = append(out, m)
	}
	return out, l
}
