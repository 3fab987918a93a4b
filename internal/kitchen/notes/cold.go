package notes

// What is kept cold: a jam for the freezer or the refrigerator is never one for the
// shelf (NCHFP, Making Jams and Jellies: uncooked jams are kept in the refrigerator or
// freezer), and of one that is not cooked the time is the pectin's.

var (
	frozen       = pattern(`(?i)\b(?:in(?:to)?|to) (?:the |your |our |my |a )?(?:deep[- ])?freezer\b|\bfreezer (?:\p{L}+ )?(?:jams?|jell(?:y|ies)|spreads?|preserves|containers?|boxes|jars?|bags?)\b|\b(?:stor\p{L}+|keep|keeps|kept|put|goes|went|gone|straight|into|all|jars?)\b[^.;]{0,30}\b(?:in(?:to)? )?(?:the |our |my |a )?(?:deep[- ])?freezer\b|(?:^|[.;(] ?)(?:then )?freeze\b(?:[^.;]{0,40}\b(?:months?|year|weeks?|refrigerat\p{L}+|containers?)\b|[.!]?$)|\b(?:einfrieren|eingefroren|in (?:den|die|der) (?:tiefkühl\p{L}*|gefrier\p{L}*|tk)\b|au congélateur|congeler)`)
	chilled      = pattern(`(?i)^(?:fridge|refrigerator|kühlschrank|frigo|réfrigérateur)\b(?: only$|[^.;]{0,30}\b(?:eat|use|soon|quick\p{L}*|essen|aufbrauchen|verbrauchen|bald|manger|consommer|vite)\b)|\b(?:refrigerator|fridge) (?:\p{L}+ )?(?:jams?|jell(?:y|ies)|spreads?|preserves|marmalades?)\b|(?:\b(?:cover(?:ed)?|then|and)|,) refrigerated?\b[^.;]{0,30}\b(?:(?:up to|for) [^.;]{0,20}(?:days?|weeks?|months?)|until (?:ready|needed|required|serving|using|you))\b|\b(?:store[ds]?|storing|keep|kept) (?:(?:it|them|the|jars?|covered|tightly) )*(?:refrigerated|chilled)\b|\b(?:store[ds]?|storing|keep|keeps|kept|lasts?|straight|eat from|stays?|live[s]?)\b[^.;]{0,40}\b(?:in|into|to) (?:the |a |our |my |your )?(?:fridge|refrigerator)\b|(?:^|[.;(] ?)(?:then )?refrigerate\b[^.;]{0,30}\b(?:up to|for) [^.;]{0,20}(?:days?|weeks?|months?)\b|\b(?:im kühlschrank (?:auf\p{L}*|lager\p{L}*|halt\p{L}*|hält)|au (?:frigo|réfrigérateur) (?:pendant|jusqu|\d)|(?:se conserv\p{L}+|conserv\p{L}+|(?:à |a )?gard(?:er|ez|é\p{L}*)) (?:\p{L}+ ){0,3}au (?:frigo|réfrigérateur))`)
	notCold      = pattern(`(?i)\bfreezer[- ](?:safe|proof)\b|\b(?:saucers?|plates?|assiettes?|soucoupe|teller|untertasse|spoons?|cuillère|löffel|test\p{L}*|tests?|frozen|froze|from the freezer|out of the freezer|open(?:ed|ing)?|once open|geöffnet|anbruch|öffnen|ouvert\p{L}*|ouverture|entamé\p{L}*|overnight|über nacht|nuit|thaw\p{L}*|fruit|berries|juice|peel|pulp|früchte|beeren|saft)\b`)
	ifLine       = pattern(`(?i)^\W*(?:\d+\.? )?(?:if|for|wenn|falls|zum|si|pour) (?:you )?(?:freez\p{L}*|refrigerat\p{L}*|canning|einfrieren|congel\p{L}*)\b`)
	measuredLine = pattern(`^\W*\d[\d/ ½¼¾]*(?: ?- ?\d+)? ?\p{L}`) // of containers, of pectin for it
	unprocessed  = pattern(`(?i)\b(?:not|no|never|without|un|nicht) ?-?(?:water )?(?:process\p{L}*|canned|canner|bath)\b`)
	maybe        = pattern(`(?i)\b(?:if|may|can|could|wenn|falls|kann|si|peut|pouvez)\b`)
	mayBeCold    = pattern(`(?i)^(?:[\p{L}]+ ){0,4}?(?:can|may|could|kann|peut)(?: also)? (?:be )?(?:kept |stored |put )?(?:(?:in(?:to)? )?the )?(?:refrigerat\p{L}+|frozen|fridge|freez\p{L}+|eingefroren|congel\p{L}+)[^.;]{0,40}\b(?:days?|weeks?|months?|years?|monate|jahr|mois|ans?)\b`)
	elseCold     = pattern(`(?i)\b(?:seal\p{L}*|process\p{L}*|can|cellar|cupboard|larder|pantry|dark|cool place)\b[^.;]{0,40}\bor (?:else )?(?:store|keep|refrigerat\p{L}*|freez\p{L}*|put|place|pop)\b`)
	otherWay     = pattern(`(?i)^\W*(?:\d+\.? )?(?:alternatively|or,|otherwise|instead|alternativ\b|oder aber|sinon|autrement)`)
	onShelf      = pattern(`(?i)\b(?:not|never|no need|don'?t|nicht|pas)\b[^.;]{0,20}\b(?:freez|fridge|refrigerat|kühlschrank|congel|frigo)`)
)

// cold writes how a jam is kept where the notes say that it is kept cold and name no
// process, and asks of a time whether the fruit was boiled.
func (r *Reading) cold() {
	at, way, processed, perhaps := -1, "", false, -1
	for i, l := range r.Lines {
		processed = processed || l.find("process.minutes") != nil || process.MatchString(unprocessed.ReplaceAllString(plain(l.Text), ""))
		if ifLine.MatchString(l.Text) || len(l.Ingredients) > 0 || measuredLine.MatchString(l.Text) {
			continue
		}
		for _, c := range clauses(plain(l.Text)) {
			switch {
			case onShelf.MatchString(c):
			case otherWay.MatchString(l.Text) && (frozen.MatchString(c) || chilled.MatchString(c)):
				perhaps = i
			case (mayBeCold.MatchString(c) || elseCold.MatchString(c)) && !notCold.MatchString(c):
				perhaps = i
			case way != "freezer" && frozen.MatchString(c) && !notCold.MatchString(c) && !maybe.MatchString(c):
				at, way = i, "freezer"
			case way == "" && chilled.MatchString(c) && !notCold.MatchString(c) && !maybe.MatchString(c):
				at, way = i, "refrigerator"
			}
		}
	}
	switch {
	case at < 0:
		if perhaps >= 0 && !processed {
			r.Lines[perhaps].unsay()
			r.Lines[perhaps].ask("kept in the freezer or the refrigerator, or on the shelf? If cold, write method = %q or %q, under [process]", "freezer", "refrigerator")
		}
		return
	case processed:
		r.Lines[at].ask("kept in the %s, or from the canner on the shelf? Write method under [process]", way)
		return
	}
	l := &r.Lines[at]
	l.key("process.method", quoted(way))
	l.unsay()
	l.say("kept in the %s, as the notes say: no jam for the shelf", way)
	l.sayMissing()
	if way != "freezer" {
		return
	}
	for i := range r.Lines {
		l := &r.Lines[i]
		if k := l.find("cook.minutes"); k != nil && !k.Asked {
			k.Asked = true
			l.ask("a jam for the freezer: was the fruit boiled %s minutes, or only the pectin in its water? Then take the # off", k.Value)
		}
	}
}
