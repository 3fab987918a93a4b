package pack

import (
	"strconv"
	"strings"

	"jarmark/internal/kit/csvfile"
	"jarmark/internal/kit/diag"
)

// Entry is one row of a gift list.
type Entry struct {
	To, From, Message, Jar, Occasion, Design, Lot string
	Jam                                           string // the jam wished for: a name, near enough, or a lot
	Allergy                                       string // what the person must not eat
	Jars                                          int    // at least 1
	File, Path                                    string
	Pos                                           diag.Pos // of the row
}

// listForm is the gift list as CSV. Aliases are words people write.
var listForm = csvfile.Form{
	What: "gift list",
	Columns: []csvfile.Column{
		{Name: "to", Also: []string{"name", "names", "recipient", "person", "who", "for", "for whom", "guest", "an", "für", "wer", "empfänger", "pour", "nom", "destinataire"}, Needed: true, What: "who gets it", Example: "Aunt Ida"},
		{Name: "from", Also: []string{"von", "de", "de la part de"}, What: "who gives it", Example: "all of us"},
		{Name: "message", Also: []string{"note", "text", "words", "card", "card says", "nachricht", "gruß", "mot"}, What: "a few words for the tag", Example: "summer in a jar"},
		{Name: "jars", Also: []string{"count", "how many", "quantity", "qty", "anzahl", "gläser", "wie viele", "nombre", "quantité", "pots"}, What: "how many; one when left out", Unit: "jars", Example: "2"},
		{Name: "jar", Also: []string{"size", "jar size", "glas", "größe", "pot", "taille"}, What: "jar size; any when left out", Example: "8 fl oz"},
		{Name: "occasion", Also: []string{"anlass"}, What: "winter, harvest, birthday, wedding, thanks", Example: "winter"},
		{Name: "jam", Also: []string{"product", "kind", "flavour", "flavor", "batch", "which jam", "wish", "marmelade", "konfitüre", "sorte", "wunsch", "confiture", "parfum", "souhait"}, What: "the jam wished for, by name or lot", Example: "plum"},
		{Name: "allergy", Also: []string{"allergies", "allergic", "allergic to", "allergen", "allergens", "avoid", "must not eat", "cannot eat", "can not eat", "intolerance", "intolerances", "diet", "dietary", "allergie", "allergien", "allergene", "unverträglichkeit", "allergique à", "allergènes", "intolérance"}, What: "what the person must not eat", Example: "almonds"},
		{Name: "design", What: "design of the tag", Example: "snow"},
		{Name: "lot", Also: []string{"los", "charge"}, What: "jars of this lot", Example: "L26248-PA"},
	},
	Begin: "to,from,message,jars,jar,occasion", MaxRows: maxJars,
}

// ListColumns are the columns of a gift list; its TOML form has them as keys.
func ListColumns() []csvfile.Column { return listForm.Columns }

// ReadList reads a gift list. A name that ends in .toml is a TOML file of
// [[gift]] tables, all else CSV with the header
// to,from,message,jars,jar,occasion (also jam, allergy, design, lot; any order, "to" alone
// suffices), separated by commas, semicolons or tabs, in UTF-8 with or
// without a byte order mark.
func ReadList(file string, data []byte) ([]Entry, diag.List) {
	if strings.HasSuffix(strings.ToLower(file), ".toml") {
		return readTOML(file, data)
	}
	return readCSV(file, data)
}

func readCSV(file string, data []byte) ([]Entry, diag.List) {
	t, found := csvfile.Read(file, data, listForm)
	if t == nil {
		return nil, found
	}
	r := listReader{file: file, found: found}
	for _, row := range t.Rows {
		r.row(row)
	}
	return r.out, r.found
}

// listReader carries one reading of a CSV list.
type listReader struct {
	file  string
	out   []Entry
	found diag.List
}

// row reads one recipient.
func (r *listReader) row(row csvfile.Row) {
	text := func(column string) string { return row.Cell(column).Text }
	e := Entry{To: text("to"), From: text("from"), Message: text("message"), Jar: text("jar"), Occasion: text("occasion"),
		Design: text("design"), Lot: text("lot"), Jam: text("jam"), Allergy: text("allergy"), File: r.file, Pos: row.Pos}
	n, ok := jarCount(text("jars"))
	if !ok {
		d := r.found.Errorf("bad-count", r.file, "", "%q is not a number of jars", text("jars")).Hinted("write a whole number from 1, or leave it empty for 1")
		d.Pos = row.Cell("jars").Pos
		return
	}
	e.Jars = n
	if e.To == "" {
		d := r.found.Warnf("no-name", r.file, "", "this row names no one: the tag will leave the name to be written by hand")
		d.Pos = row.Pos
	}
	r.out = append(r.out, e)
}

func jarCount(s string) (int, bool) {
	if s == "" {
		return 1, true
	}
	n, err := strconv.Atoi(s)
	return n, err == nil && n >= 1 && n <= maxJars
}
