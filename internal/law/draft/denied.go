package draft

import (
	"slices"
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/place"
)

// takeApart gives texts that deny several things together what they say of each.
func (p *Draft) takeApart(texts []ownText) {
	var things map[string][]string
	joined := place.JoinedWords()
	between := joining(joined)
	for i, o := range texts {
		if !strings.ContainsAny(o.text, ",&+/") && !slices.ContainsFunc(o.words, func(w string) bool { return slices.Contains(between, w) }) {
			continue
		}
		if things == nil {
			things = p.things()
		}
		texts[i].apart = apart(Spaced(o.text), things, between)[1:]
		texts[i].apart = append(texts[i].apart, second(Spaced(o.text), joined)...)
	}
}

// things are what the rows of the set deny, whole words of a list.
func (p *Draft) things() map[string][]string {
	var all []string
	for _, w := range p.Set.Wordings {
		all = append(all, w.Of...)
	}
	if t := p.Set.Nutrition; t != nil {
		all = append(all, t.Nutrients...)
	}
	return indexed(all)
}

// joining are the words between things that are denied together.
func joining(joined []place.Joined) (out []string) {
	for _, j := range joined {
		out = append(append(out, j.Or...), j.And...)
	}
	return out
}

// second gives a text once for each thing behind an "or": "no fuss or pectin" is
// "no pectin". The first is one to three words.
func second(plain string, joined []place.Joined) (out []string) {
	for _, j := range joined {
		for _, head := range j.Heads {
			_, rest, ok := strings.Cut(plain, Spaced(head))
			if !ok {
				continue
			}
			for i, words := 1, strings.Fields(rest); i < min(4, len(words)); i++ {
				if slices.Contains(j.Or, words[i]) {
					out = append(out, Spaced(head+" "+strings.Join(words[i+1:], " ")))
				}
			}
		}
	}
	return out
}

// apart gives a text once for each of the things it denies together: "without
// nuts or milk" is "without nuts" and "without milk". Things are the words and
// phrases that may be denied, by their first word; the text is spaced.
func apart(plain string, things map[string][]string, joined []string) []string {
	out, words := []string{plain}, strings.Fields(plain)
	for from := 0; from < len(words); from++ {
		var named []string
		end, at := from, from
		for at < len(words) {
			thing, n := thingAt(words[at:], things)
			if n == 0 {
				if at == from || !slices.Contains(joined, words[at]) {
					break
				}
				at++
				continue
			}
			named = append(named, thing)
			at += n
			end = at
		}
		if len(named) < 2 {
			continue
		}
		_, n := thingAt(words[end-1:], things)
		rest := strings.TrimPrefix(words[end-1], named[len(named)-1]) // "frei" of "glutenfrei"
		if n == 0 || rest == words[end-1] {
			rest = ""
		}
		for _, thing := range named {
			out = append(out, " "+strings.Join(slices.Concat(words[:from], []string{thing + rest}, words[end:]), " ")+" ")
		}
		from = end // no thing begins with the word behind the last
	}
	return out
}

// compounded are the endings that deny the word they hang on: a thing and one of
// these is the thing.
var compounded = []string{"frei", "freie", "freier", "freies", "freiem", "freien", "free", "los", "vrij", "vrije", "fri", "fritt", "fria", "frie"}

// thingAt gives the longest thing that stands at the beginning of the words, and
// how many words it takes; the last may carry its denial.
func thingAt(words []string, things map[string][]string) (thing string, n int) {
	for _, t := range things[words[0]] {
		k := strings.Count(t, " ") + 1
		if k > n && len(words) >= k && strings.Join(words[:k], " ") == t {
			thing, n = t, k
		}
	}
	if n > 0 {
		return thing, n
	}
	for _, end := range compounded {
		if base, ok := strings.CutSuffix(words[0], end); ok && slices.Contains(things[base], base) {
			return base, 1
		}
	}
	return "", 0
}

// indexed gives things by their first word.
func indexed(things []string) map[string][]string {
	out := map[string][]string{}
	for _, t := range things {
		t = strings.TrimSpace(Spaced(t))
		if first, _, _ := strings.Cut(t, " "); first != "" {
			out[first] = append(out[first], t)
		}
	}
	return out
}

// named reports denials of any allergen by any of its names, "almond free", that
// no other row of the set speaks of.
func (p *Draft) named(w place.WordingRule, texts []ownText, forms []string) {
	for _, o := range texts {
		if !Has(w.In, o.as) {
			continue
		}
		for _, noun := range deniedIn(o.text, forms) {
			if slices.ContainsFunc(p.Set.Wordings, func(other place.WordingRule) bool { return Has(other.Of, noun) }) {
				continue
			}
			for _, f := range cook.Stated([]string{noun}, "").Found {
				if f.Group() {
					continue
				}
				one := w
				one.Beside = []string{f.ID}
				level, text, held := w.Level, w.Text, p.besides(one)
				if held != "" {
					level = "error"
				} else if held = p.mayHold(one); held != "" {
					text = w.Maybe
				}
				if held != "" {
					p.tellWording(w, []ownText{o}, filled(forms, noun), nil, level, text, held)
				}
			}
		}
	}
}

// deniedIn gives what stands where the forms deny a thing, up to three words of it.
func deniedIn(text string, forms []string) (out []string) {
	plain := strings.ToLower(text)
	seen := map[string]bool{}
	put := func(noun string) {
		if noun = strings.TrimSpace(noun); len(noun) > 2 && !seen[noun] {
			seen[noun] = true
			out = append(out, noun)
		}
	}
	plain = Spaced(plain)
	for _, form := range forms {
		before, after, _ := strings.Cut(form, "{x}")
		if !glance(plain, strings.TrimSpace(before+after)) {
			continue
		}
		switch {
		case before != "":
			for rest := plain; ; {
				i := strings.Index(rest, Spaced(before))
				if i < 0 {
					break
				}
				rest = rest[i+len(Spaced(before))-1:]
				for n, ws := 1, strings.Fields(rest); n <= min(3, len(ws)); n++ {
					put(strings.TrimSuffix(strings.Join(ws[:n], " "), after)) // "mandel" of "mandelallergie"
				}
			}
		case before == "" && strings.HasPrefix(after, " "):
			head, _, ok := strings.Cut(plain, Spaced(after))
			for n, ws := 1, strings.Fields(head); ok && n <= min(3, len(ws)); n++ {
				put(strings.Join(ws[len(ws)-n:], " "))
			}
		case before == "":
			for _, word := range strings.Fields(plain) {
				if base, ok := strings.CutSuffix(word, after); ok {
					put(base)
				}
			}
		}
	}
	return out
}
