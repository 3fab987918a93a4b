package pack

import (
	"jarmark/internal/give/table"
	"sort"
	"strconv"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// History is where the jars of one lot went, as far as the files know.
type History struct {
	in   table.Words // the language it is read in; the zero value is English
	told []table.Told

	Lot        string
	Maker      string
	Products   []string // names; several when lots were given twice
	Made       unit.Date
	BestBefore unit.Date
	Count      int
	Sealed     int
	CountHow   cook.How
	Holders    []Holder
	Stock      []Stock // of this lot
	Promised   int     // at home, unless handed over and not noted
	Left       int     // at home, promised to nobody
	Fridge     int
	Lost       int    // eaten, broken or recalled
	Unknown    int    // jars with buyers nobody wrote down
	Because    string // why the lot is in question: "holds pectin of lot 7731"; empty: it was named
	Related    []Related
	Common     []string // ingredients most other lots share by name, which tells nothing
	Units      string
	Unread     []string // files and folders that may hold jars too, and why they were not read
}

// Holder is who has, or was promised, jars of the lot.
type Holder struct {
	Type     StopType
	To       string
	Date     unit.Date
	JarText  string
	Jars     int
	CameHome int    // -1 = not said
	Fate     string // what the ledger says of them; empty: as promised
}

// Sold is how many of a market's jars went to buyers: exact is false when
// nobody noted what came home, and the number is an upper limit.
func (h Holder) Sold() (n int, exact bool) {
	if h.CameHome < 0 {
		return h.Jars, false
	}
	return h.Jars - h.CameHome, true
}

// Related is another lot that shares something with this one.
type Related struct {
	Lot, Name string
	Shares    []string // "plums", "pectin of lot 7731", "made the same day"
}

// Trace answers who has which jars of a lot. Results are all batches known;
// list is a gift list, if there is one. The answer is about the files: what
// nobody wrote down, it cannot know.
func Trace(lot string, results []*cook.Result, o Options) (*History, diag.List) {
	o.Event, o.Gifts = "", false
	p, _ := Build(results, o) // its findings belong to packing
	h := &History{in: p.in, told: p.told, Lot: lot, Maker: p.Maker, Units: p.Units, Unread: o.Unread}
	var mine, others []*cook.Result
	for _, r := range results {
		switch {
		case r == nil || r.Batch == nil:
		case sameName(r.Lot, lot):
			mine = append(mine, r)
		default:
			others = append(others, r)
		}
	}
	var found diag.List
	if strings.TrimSpace(lot) == "" || len(mine) == 0 {
		unknownLot(lot, others, o.Unread, &found)
		return nil, found
	}
	h.fill(mine, p, o)
	h.related(mine, others)
	if len(mine) > 1 {
		found.Warnf("lot-twice", fileName(mine[1]), "lot", "lot %s stands in %d batch files; their jars are counted together", h.Lot, len(mine)).
			Hinted("give each batch its own lot")
	}
	if h.CountHow == cook.Estimated {
		found.Notef("lot-planned", fileName(mine[0]), "fill", "the jars of lot %s are estimated, not counted", h.Lot).Hinted("write count and sealed under [[fill]]")
	}
	return h, found
}

// unknownLot never says that no batch has a lot over files it did not read.
func unknownLot(lot string, all []*cook.Result, unread []string, found *diag.List) {
	var lots []string
	for _, r := range all {
		lots = append(lots, r.Lot)
	}
	lots = unique(lots)
	sort.Strings(lots)
	hint := "no batch files were read"
	if near, ok := diag.DidYouMean(lot, lots); ok {
		hint = "did you mean " + near + "?"
	} else if len(lots) > 0 {
		hint = "lots here: " + table.Join(lots[:min(len(lots), 12)])
	}
	if held := packets(all); len(held) > 0 {
		hint += "; of packets: " + table.Join(held[:min(len(held), 12)])
	}
	if day, _, ok := unit.DayHint(lot); ok {
		hint = day + "; " + hint
	}
	if len(unread) == 0 {
		found.Errorf("unknown-lot", diag.Command, "", "no batch has the lot %q", lot).Hinted(hint)
		return
	}
	found.Errorf("lot-not-found", diag.Command, "", "the answer is incomplete: lot %q is in none of the %s read, but %s not read and may have it",
		lot, files(len(all)), wereNot(len(unread))).Hinted("look into these by hand: " + strings.Join(unread, "; "))
}

func files(n int) string {
	if n == 1 {
		return "1 batch file"
	}
	return strconv.Itoa(n) + " batch files"
}

func wereNot(n int) string {
	if n == 1 {
		return "1 file or folder was"
	}
	return strconv.Itoa(n) + " files or folders were"
}

// Gaps says that the answer is incomplete, and names what was not read.
func (h *History) Gaps() []string {
	if len(h.Unread) == 0 {
		return nil
	}
	n := len(h.Unread)
	return append([]string{h.in.Say(table.Plural(n, "This answer is incomplete: %d file or folder was not read and may hold jars of this lot.", "This answer is incomplete: %d files or folders were not read and may hold jars of this lot."), n)}, h.Unread...)
}

func (h *History) fill(mine []*cook.Result, p *Plan, o Options) {
	h.Lot, h.Made, h.BestBefore, h.CountHow = mine[0].Lot, mine[0].Batch.Made, mine[0].BestBefore, cook.Measured
	for _, r := range mine {
		h.Products = append(h.Products, name(r))
	}
	h.Products = unique(h.Products)
	for _, s := range p.Stock {
		if !sameName(s.Lot, h.Lot) {
			continue
		}
		h.Stock = append(h.Stock, s)
		h.Count += s.Count
		h.Sealed += s.Sealed
		h.Promised += s.Promised
		h.Left += s.Left
		h.Fridge += s.Unsealed
		h.CountHow = weaker(h.CountHow, s.CountHow)
	}
	defer h.handed(p)
	for _, s := range p.Stops {
		for _, l := range s.Lines {
			if !sameName(l.Lot, h.Lot) {
				continue
			}
			k := Holder{Type: s.Type, To: s.To, Date: s.Date, JarText: l.JarText, Jars: l.Count, CameHome: -1}
			switch {
			case s.Type == Market && !o.Today.IsZero() && o.Today.Before(s.Date):
				k.Fate = "still to come"
			case s.Type == Market:
				h.Unknown += l.Count
			}
			h.Holders = append(h.Holders, k)
		}
	}
}

// handed adds those to whom jars of the lot went by the ledger, or by a table
// that says what came home.
func (h *History) handed(p *Plan) {
	for i, s := range p.Stock {
		if !sameName(s.Lot, h.Lot) {
			continue
		}
		h.Lost += s.Lost
		for _, x := range p.Balances[i].Holders {
			if x.Given > 0 {
				h.Holders = append(h.Holders, Holder{Type: Gift, To: x.Who, JarText: s.JarText, Jars: x.Given, CameHome: -1, Fate: "given"})
			}
			for _, d := range x.Days {
				if d.Sold > 0 {
					h.Unknown += d.Sold
					h.Holders = append(h.Holders, Holder{Type: Market, To: x.Who, Date: d.Date, JarText: s.JarText, Jars: d.Sold + d.CameHome, CameHome: d.CameHome})
				}
			}
			if x.Recalled > 0 {
				h.Holders = append(h.Holders, Holder{Type: Gift, To: x.Who, JarText: s.JarText, Jars: x.Recalled, CameHome: -1, Fate: "brought back: recalled"})
			}
		}
	}
}
