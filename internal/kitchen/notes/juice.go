package notes

// strained tells that juice runs off fruit which was cooked before.
var strained = lazily(`(?i)\b(?:strain(?:ed|ing)?|drip(?:ped|ping|s)?|jelly bag|muslin bag|cheesecloth|through (?:a |the )?(?:sieve|cloth|muslin|colander)|abseihen|abtropfen|ablaufen lassen|durch ein (?:tuch|sieb)|égoutter|filtrer|passer au)\b`)

// beforeStraining drops the times of a pot whose juice is run off in a later
// line, where neither sugar nor a set is spoken of: what follows is the boil.
func (r *Reading) beforeStraining() {
	last := -1
	for i, l := range r.Lines {
		if strained.MatchString(l.Text) && len(l.Ingredients) == 0 {
			last = i
		}
	}
	for i := range max(last, 0) {
		l := &r.Lines[i]
		k := l.find("cook.minutes")
		if k == nil || k.Asked || sugarWord.MatchString(l.Text) || finished.MatchString(l.Text) || strained.MatchString(l.Text) {
			continue
		}
		l.say("%s minutes, taken as what draws the juice and not as the boil, since it is strained later", k.Value)
		l.drop("cook.minutes")
	}
}

// drop takes a key off a line.
func (l *Line) drop(path string) {
	kept := l.Keys[:0]
	for _, k := range l.Keys {
		if k.Path != path {
			kept = append(kept, k)
		}
	}
	l.Keys = kept
}
