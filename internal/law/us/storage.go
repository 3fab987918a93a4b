package us

import (
	"strconv"
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

const citeKeep = "FDA guidance, 62 FR 8248 (24 Feb 1997); National Center for Home Food Preservation"

// storagePhrases: every class has its words in every language.
var storagePhrases = []string{"us.keep.shelf", "us.keep.shelf-short", "us.keep.refrigerated", "us.keep.freezer", "us.keep.refrigerator-jam",
	"us.group-a", "us.group-b", "us.unsealed", "us.month", "us.months", "us.week", "us.weeks", "us.days", "us.day", "us.cautious"}

// storage words how to keep a sealed jar, an opened one, and one that did not
// seal. Nothing known takes the cautious words.
func storage(p *pass) {
	k := p.R.Keeping
	class := k.Class
	key, ok := p.Set.Storage.Words[string(class)]
	if !ok {
		class, key = cook.Cold, p.Set.Storage.Words[string(cook.Cold)]
	}
	opened := p.span(k.OpenedDays)
	text := p.Say.Say(key, "opened", opened)
	runs := place.Starred(text)
	if fixed := p.Set.Storage.Fixed[string(class)]; fixed != "" {
		runs = append([]label.Run{{Text: p.Say.Say(fixed), Bold: true}, {Text: " "}}, runs...)
	}
	p.add(label.Block{Kind: label.Storage, Runs: runs, Cite: citeKeep, Verified: p.Set.Storage.Confidence, Path: "process"})
	p.C.Keep = label.Keep{Sealed: draft.PlainStars(text), Opened: p.Say.Say("us.opened", "opened", opened), Unsealed: p.Say.Say("us.unsealed", "days", p.span(k.UnsealedDays))}
	p.reasons(class, k)
}

// reasons says why the words are stricter than for plain shelf keeping. What the
// maker can do about it, the findings of the cooking have said.
func (p *pass) reasons(class cook.Class, k cook.Keeping) {
	if class == cook.Shelf {
		return
	}
	var texts, cites []string
	for _, r := range k.Reasons {
		if r.Fact != "" && len(texts) < 4 {
			texts = append(texts, r.Fact)
		}
		if r.Source != "" && !draft.Has(cites, r.Source) && len(cites) < 3 {
			cites = append(cites, r.Source)
		}
	}
	if len(texts) == 0 {
		texts = []string{"nothing shows that it keeps on a shelf"}
	}
	p.L.Notef("keeping", p.BatchFile(), "process", "the storage words are for %s, by what is known: %s", classWords[class], strings.Join(texts, "; ")).
		Cited(strings.Join(append(cites, citeKeep), "; "))
}

var classWords = map[cook.Class]string{cook.ShelfShort: "a jar that keeps a shorter time", cook.Cold: "a jar that must stay cold",
	cook.Freezer: "the freezer", cook.Refrigerator: "the refrigerator"}

// span words a number of days: "a month", "a week", "3 weeks", "5 days".
func (p *pass) span(days int) string {
	switch {
	case days <= 0:
		return p.Say.Say("us.cautious")
	case days == 1:
		return p.Say.Say("us.day")
	case days >= 28 && days <= 31:
		return p.Say.Say("us.month")
	case days >= 60:
		return p.Say.Say("us.months", "n", strconv.Itoa(days/30))
	case days == 7:
		return p.Say.Say("us.week")
	case days%7 == 0:
		return p.Say.Say("us.weeks", "n", strconv.Itoa(days/7))
	}
	return p.Say.Say("us.days", "n", strconv.Itoa(days))
}
