package cook

import "jarmark/internal/kitchen/batch"

// times turns the class into months and days, each with its source.
func (c *calc) times(v *verdict) {
	k := &c.r.Keeping
	k.UnsealedDays = 3
	switch v.class {
	case Shelf:
		k.SealedMonths, k.OpenedDays = 12, 30
		v.because(rule("sealed: best within a year, cool, dark and dry", srcNCHFP))
	case ShelfShort:
		k.SealedMonths, k.OpenedDays = 6, 14
		v.because(rule("sealed: best within 6 months", srcOwn))
	case Freezer:
		k.SealedMonths, k.OpenedDays, k.UnsealedDays = 12, thawed(v), thawed(v)
		v.because(rule("frozen: best within a year; thawed and refrigerated, within "+weeks(thawed(v)), srcFreezer))
		return
	case Refrigerator:
		k.SealedDays, k.OpenedDays, k.UnsealedDays = thawed(v), thawed(v), thawed(v)
		v.because(rule("refrigerated: best within "+weeks(thawed(v)), srcFreezer))
		return
	default:
		c.coldTimes(v)
	}
	v.because(rule("unsealed: refrigerate and eat within 2-3 days, the most cautious published figure; kitchens often say weeks, without a source", srcSeal))
	if k.OpenedDays == 30 {
		v.because(rule("opened: refrigerate, best within a month", srcOpened))
	} else {
		v.because(rule("opened: refrigerate, shorter than full-sugar jam", srcOwn))
	}
}

// coldTimes: a jar that belongs in the refrigerator keeps like an opened one.
func (c *calc) coldTimes(v *verdict) {
	k := &c.r.Keeping
	switch {
	case c.b.Product == batch.Curd && c.tested() && v.processed:
		k.SealedMonths, k.OpenedDays = 3, 14
		v.because(rule("tested curd: best within 3-4 months", srcCurd))
	case v.perishable:
		k.SealedDays, k.OpenedDays = 7, 7
		v.because(rule("refrigerated, low acid or with egg or dairy: within a week", srcOwn))
	case v.full:
		k.SealedDays, k.OpenedDays = 30, 30
		v.because(rule("refrigerated, full sugar: as an opened jar, within a month", srcOpened))
	default:
		k.SealedDays, k.OpenedDays = 14, 14
		v.because(rule("refrigerated, less sugar: within 2 weeks", srcOwn))
	}
}

// thawed is how many days an uncooked or thawed spread keeps in the
// refrigerator: three weeks, and one for what is low in acid, egg or dairy (own
// cautious default).
func thawed(v *verdict) int {
	if v.perishable {
		return 7
	}
	return 21
}

func weeks(days int) string {
	if days == 7 {
		return "a week"
	}
	return "3 weeks"
}
