package cook

// shares fills in percentages and the main fruit.
func (c *calc) shares() {
	r := c.r
	for i := range r.Lines {
		ln := &r.Lines[i]
		if r.Input > 0 {
			ln.Percent = 100 * ln.Mass.Grams() / r.Input.Grams()
		}
		if r.Yield.Mass > 0 {
			ln.PercentFin = 100 * ln.Mass.Grams() / r.Yield.Mass.Grams()
		}
	}
	r.MainFruit = mainFruit(r.Lines)
}

// mainFruit is the heaviest fruit; without one, the heaviest vegetable, citrus
// juice or honey gives a batch its character.
func mainFruit(lines []Line) string {
	fruit := func(ln Line) bool { return ln.IsFruit }
	other := func(ln Line) bool {
		return ln.Row.Class == "vegetable" || ln.Key == "lemon_juice" || ln.Key == "lemon_juice_bottled" || ln.Key == "lime_juice" || ln.Key == "honey"
	}
	for _, is := range []func(Line) bool{fruit, other} {
		best := -1
		for i, ln := range lines {
			if is(ln) && ln.Key != "" && (best < 0 || ln.Mass > lines[best].Mass) {
				best = i
			}
		}
		if best >= 0 {
			return lines[best].Key
		}
	}
	return ""
}
