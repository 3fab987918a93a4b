package batch

import (
	"slices"

	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

// maxNet is the heaviest jar anyone fills.
const maxNet = 100 * unit.Kilogram

// maxWeights is how many weights of one fill are read.
const maxWeights = 20_000

// maxNetVolume is the largest.
const maxNetVolume = 100 * unit.Litre

func (r *reader) fill(raw rawFill, path string) Fill {
	f := Fill{Path: path,
		Jar:   r.text(raw.Jar, path+".jar"),
		Count: r.count(raw.Count, path+".count", "the count of jars", -1), Sealed: r.count(raw.Sealed, path+".sealed", "the count of sealed jars", -1),
		Headspace: r.headspace(raw.Headspace, path+".headspace"),
		PartJar:   r.mass(raw.PartJar, path+".part_jar"), Price: r.price(raw.Price, path+".price"),
		Sheet: r.text(raw.Sheet, path+".sheet"),
	}
	if r.absent(raw.Jar, path+".jar") {
		r.errorf("missing-jar", path+".jar", "the jar size is missing").Hinted(`add jar = "8 fl oz"; jarmark jars lists the sizes`)
	}
	if s := r.number(raw.Share, path+".share", "share", 0, 1000); s != nil {
		f.Share = *s
	}
	switch {
	case f.Sealed >= 0 && !has(raw.Count):
		r.errorf("sealed-not-counted", path+".sealed", "sealed jars are counted, the filled ones not").Hinted("add count, all jars filled")
		f.Sealed = -1
	case f.Count >= 0 && f.Sealed > f.Count:
		r.errorf("sealed-over-count", path+".sealed", "%d sealed jars are more than the %d filled", f.Sealed, f.Count).Hinted("check both counts")
		f.Sealed = f.Count
	}
	f.Net = r.weights(raw, path)
	if f.Count > 0 && len(f.Net) > f.Count {
		r.l.Warnf("more-weights-than-jars", r.file, path+".net", "%d weights are given for %d jars", len(f.Net), f.Count).Hinted("weigh each jar once")
	}
	f.Declared = r.declared(raw.Declared, path+".declared")
	return f
}

// weights gives the net weights: measured net, or gross less tare.
func (r *reader) weights(raw rawFill, path string) []unit.Mass {
	if len(raw.Net)+len(raw.Gross) > maxWeights || len(raw.Tare) > maxWeights {
		r.errorf("list-too-long", path, "there are more than %d weights", maxWeights).Hinted("a sample of the jars is enough")
		return nil
	}
	net := r.masses(raw.Net, path+".net")
	gross := r.masses(raw.Gross, path+".gross")
	tare := r.masses(raw.Tare, path+".tare")
	switch {
	case len(gross) == 0 && len(tare) > 0:
		r.errorf("tare-alone", path+".tare", "empty jars are weighed, the full ones not").Hinted(`add gross = ["17.1 oz", ...], or net weights`)
	case len(gross) > 0 && len(tare) == 0:
		r.errorf("no-tare", path+".gross", "gross weights need the weight of the empty jar").Hinted(`add tare = "6.8 oz", jar and lid`)
	case len(tare) > 1 && len(tare) != len(gross):
		r.errorf("tare-count", path+".tare", "%d tares for %d gross weights", len(tare), len(gross)).Hinted("give one tare for all, or one each")
	default:
		for i, g := range gross {
			of := min(i, len(tare)-1)
			switch t := tare[of]; {
			case g == 0 || t == 0: // told already
			case t < g:
				net = append(net, g-t)
			default:
				r.errorf("tare-over-gross", source.At(path+".gross", i), "the full jar (%s) weighs no more than the empty one (%s)", raw.Gross[i], raw.Tare[of]).
					Hinted("gross is jar, lid and jam; tare is jar and lid")
			}
		}
	}
	return slices.DeleteFunc(net, func(m unit.Mass) bool { return m == 0 })
}

// masses reads a list of weights; a wrong one is 0.
func (r *reader) masses(in []string, path string) []unit.Mass {
	out := make([]unit.Mass, len(in))
	for i := range in {
		at := source.At(path, i)
		if r.broken[at] || r.broken[path] {
			continue
		}
		if in[i] == "" {
			r.errorf("bad-weight", at, "the weight is empty").Hinted(`write a weight like "10.2 oz"`)
			continue
		}
		out[i] = r.mass(&in[i], at)
		if out[i] > maxNet {
			r.errorf("out-of-range", at, "%s is no jar", in[i]).Hinted("check the number and the unit")
			out[i] = 0
		}
	}
	return out
}

// declared is the net content on the label, a weight or a volume: which of them
// the food is sold by is law, and the rules of the place say it.
func (r *reader) declared(p *string, path string) unit.Quantity {
	s := r.text(p, path)
	if s == "" {
		return unit.Quantity{}
	}
	q, err := unit.ParseQuantity(s)
	switch {
	case err != nil:
		r.wrong("bad-weight", path, err)
	case q.Dim == unit.ByCount:
		r.errorf("bad-weight", path, "%q has no unit of weight or volume", s).Hinted(`write a weight like "10 oz" or "280 g"`)
	case q.Mass > maxNet, q.Volume > maxNetVolume:
		r.errorf("out-of-range", path, "%q is no jar", s).Hinted("check the number and the unit")
	default:
		return q
	}
	return unit.Quantity{}
}
