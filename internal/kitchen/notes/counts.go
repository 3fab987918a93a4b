package notes

// countLast reads a line nothing else read as a count of jars, and asks whether they
// were filled; done reports that nothing is left to ask.
func (g *grammar) countLast(l *Line, s string) (done bool) {
	sealed, told := bitForm.ReplaceAllString(s, ""), false
	if at := unsealedForm.FindStringIndex(s); at != nil {
		sealed = butTail.ReplaceAllString(s[:at[0]], "")
	}
	if m := titled.FindStringSubmatch(l.Text); m != nil {
		sealed, told = plain(m[1]), true
	}
	if m := readied.FindStringSubmatch(sealed); m != nil {
		sealed, told = sealed[len(m[0])-len(m[1]):], true
	}
	f, ok := g.count(sealed)
	if !ok || f.Jar == "" && !jarTalk.MatchString(s) || l.Read() || len(l.Asks) > 0 {
		return false
	}
	if f.Low >= 1 && f.High == f.Low && atSign.MatchString(sealed) { // 14 jars @ 220 g
		g.fills(l, s, []Fill{f})
		return true
	}
	if f.Jar != "" && f.Low >= 1 && (told || bareAbout.MatchString(sealed)) { // a recipe speaks so
		f.Planned = true
		l.Fills = append(l.Fills, f)
	}
	said := s
	if told {
		said = sealed
	}
	if f.Jar != "" {
		l.ask("jars that were filled? Then write: got %s", said)
	} else {
		l.ask("jars that were filled? Then write: got %s, and their size", said)
	}
	return false
}

// titled is a heading with its count: "Berry jam | 6 half-pint jars"; readied are
// the jars a recipe has one prepare.
var (
	titledYield = pattern(`(?i)^[^\d|:.]{3,60}(?: --? | - |: |, )((?:makes|yields?|yield:) .*\d.*)$`)
	titled      = pattern(`^[^|\d]{3,60}\| ?(\d[^|]*)$`)
	readied     = pattern(`(?i)^(?:prepare|sterili[sz]e|wash|have ready|have) (\d|one|two|three|four|five|six|seven|eight|nine|ten|twelve)`)
)
