package pack

import (
	"regexp"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// stock lists the jar sizes of all batches.
func (b *builder) stock() {
	for i, r := range b.results {
		for k, j := range r.Jars {
			s := stockOf(r, j)
			s.batch, s.row, s.sheet = i, k, r.Batch.Label.Sheet
			if j.Count > maxJars {
				b.found.Errorf("too-many-jars", fileName(r), j.FillPath, "%d jars in one batch cannot be meant", j.Count).Hinted("check the count")
			}
			b.plan.Stock = append(b.plan.Stock, s)
		}
	}
	var jars []pantry.Jar
	for _, s := range b.plan.Stock {
		jars = append(jars, s.Jar)
	}
	for i := range b.plan.Stock {
		b.plan.Stock[i].JarText = jarText(b.plan.Stock[i].Jar, jars)
	}
}

func stockOf(r *cook.Result, j cook.JarPlan) Stock {
	s := Stock{Lot: r.Lot, Name: name(r), Jar: j.Jar, Made: r.Batch.Made, BestBefore: r.BestBefore,
		UseBy: r.Batch.UseBy, Cold: cold(r.Keeping.Class), CountHow: j.How, Checked: j.Checked,
		Declared: max(0, j.Declared), DeclText: j.DeclText, Price: j.Price}
	if q, err := unit.ParseQuantity(j.DeclText); err == nil && j.Declared <= 0 && q.Dim == unit.ByVolume {
		s.Fluid = q.Volume
	}
	if r.Kitchen != nil {
		s.at = r.Kitchen.Place
	}
	s.Count = min(max(j.Count, 0), maxJars)
	s.Sealed = min(max(j.Sealed, 0), s.Count)
	s.Unsealed = s.Count - s.Sealed
	s.Net, s.NetHow = netOf(j)
	tare, how := tareOf(j.Jar)
	s.Gross, s.GrossHow = s.Net+tare, weaker(s.NetHow, how)
	return s
}

// netOf is the mean of the weighed jars, else the computed fill.
func netOf(j cook.JarPlan) (unit.Mass, cook.How) {
	var sum unit.Mass
	n := 0
	for _, w := range j.Weighed {
		if w > 0 && w < unit.Mass(maxJars)*unit.Gram {
			sum, n = sum+w, n+1
		}
	}
	if n > 0 {
		return sum / unit.Mass(n), cook.Measured
	}
	return min(max(j.Fill, 0), 100*unit.Kilogram), cook.Estimated
}

// tareOf is the weight of the empty jar with its lid. Without a measured one
// it is estimated as 75 g + 0.48 g for each ml the jar holds (a line through
// typical 4, 8 and 16 fl oz jars, from memory, unverified): good enough to
// lift a box by, never to declare a weight by.
func tareOf(j pantry.Jar) (unit.Mass, cook.How) {
	if j.TareMass > 0 && j.TareMass < 100*unit.Kilogram {
		return j.TareMass, cook.Measured
	}
	ml := min(max(j.Nominal.ML(), 0), 10_000)
	return unit.Grams(75 + 0.48*ml), cook.Estimated
}

// jarText is the size ("8 fl oz"), with as much more of the description as
// tells the jar from others of the same size.
func jarText(j pantry.Jar, all []pantry.Jar) string {
	for _, f := range []func(pantry.Jar) string{sizeOf, shortJar} {
		text, alone := f(j), true
		for _, o := range all {
			alone = alone && (o.Key == j.Key || f(o) != text)
		}
		if alone {
			return text
		}
	}
	return fullJar(j)
}

var sizeWords = regexp.MustCompile(`^\d[\d./ -]*(fl oz|oz|ml|cl|l)\b`)

func sizeOf(j pantry.Jar) string {
	if s := sizeWords.FindString(fullJar(j)); s != "" {
		return s
	}
	return shortJar(j)
}

func shortJar(j pantry.Jar) string {
	full := fullJar(j)
	if i := strings.IndexAny(full, ",("); i > 0 {
		return strings.TrimSpace(full[:i])
	}
	return full
}

func fullJar(j pantry.Jar) string {
	for _, s := range []string{j.Description, j.Key} {
		if t := strings.TrimSpace(s); t != "" {
			return t
		}
	}
	return "jar"
}

// isJar reports whether a maker's words mean this jar.
func (b *builder) isJar(words string, j pantry.Jar) bool {
	return jarMeant(b.o.Pantry, words, j)
}

func jarMeant(p *pantry.Pantry, words string, j pantry.Jar) bool {
	if sameName(words, j.Key) || sameName(words, j.Description) || sameName(words, shortJar(j)) {
		return true
	}
	got, ok := p.Jar(words)
	return ok && got.Key == j.Key
}
