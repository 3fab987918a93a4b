package pack

import (
	"reflect"
	"testing"

	"jarmark/internal/kit/diag"
)

func TestReadList(t *testing.T) {
	want := []Entry{{To: "Ann", From: "Nell", Message: `a "warm", long hug`, Jars: 2, Jar: "us8", Occasion: "winter"}, {To: "Zoë", Jars: 1}}
	for name, text := range map[string]string{
		"commas":      "to,from,message,jars,jar,occasion\nAnn,Nell,\"a \"\"warm\"\", long hug\",2,us8,winter\nZoë,,,,,\n",
		"semicolons":  "\xef\xbb\xbfTo;From;Message;Jars;Jar;Occasion\r\nAnn;Nell;\"a \"\"warm\"\", long hug\";2;us8;winter\r\n;;;;;\r\nZoë;;;;;\r\n",
		"tabs":        "jars\tto\tjar\tfrom\toccasion\tmessage\n2\tAnn\tus8\tNell\twinter\t\"a \"\"warm\"\", long hug\"\n\n\tZoë\n",
		"other words": "Name,From,Note,How many,Size,Occasion\n Ann , Nell,\"a \"\"warm\"\", long hug\",2,us8,winter\nZoë",
	} {
		got, found := ReadList("friends.csv", []byte(text))
		for i := range got {
			if got[i].Pos.Line < 2 || got[i].File != "friends.csv" {
				t.Errorf("%s: place %+v", name, got[i])
			}
			got[i].Pos, got[i].File = diag.Pos{}, ""
		}
		if len(found) > 0 || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %+v %v", name, got, found)
		}
	}
}

func TestReadListFindings(t *testing.T) {
	for name, c := range map[string]struct {
		text, code string
		line, col  int
	}{
		"empty":            {"", "empty-list", 0, 0},
		"blank":            {"\n ,,\n", "empty-list", 0, 0},
		"no header":        {"Ann,Nell\n", "no-header", 1, 1},
		"count of words":   {"to,jars\nAnn,two\n", "bad-count", 2, 5},
		"count of zero":    {"to,jars\nZoë,0\n", "bad-count", 2, 5},
		"count too large":  {"to,jars\nAnn,100001\n", "bad-count", 2, 5},
		"open quote":       {"to,message\nAnn,\"hello\nZoë,\n", "bad-csv", 2, 5},
		"bare quote":       {"to,message\nZoë,say \"hi\"\n", "bad-csv", 2, 9},
		"comma in message": {"to,message\nAnn,hello, you\n", "extra-field", 2, 11},
		"column twice":     {"to,to\nAnn,Bea\n", "twice", 1, 4},
		"another word for": {"name,to\nAnn,Bea\n", "unknown-column", 1, 1},
		"misspelt column":  {"to,mesage\nAnn,hello\n", "unknown-column", 1, 4},
		"no one":           {"to,jars\n,2\n", "no-name", 2, 1},
		"not text":         {"\xff\xfet\x00o\x00", "bad-encoding", 0, 0},
		"latin 1":          {"to\nZo\xeb\n", "bad-encoding", 0, 0},
	} {
		_, found := ReadList("friends.csv", []byte(c.text))
		ok := false
		for _, d := range found {
			ok = ok || d.Code == c.code && d.Pos.Line == c.line && d.Pos.Column == c.col && d.File == "friends.csv"
		}
		if !ok {
			t.Errorf("%s: %+v", name, found)
		}
	}
}

func TestReadTOMLList(t *testing.T) {
	got, found := ReadList("friends.toml", []byte("# ours\n[[gift]]\nto = \"Ann\"\njars = 2\n\n[[gift]]\nto = \"Zoë\"\nlot = \"L1\"\n"))
	if len(found) > 0 || len(got) != 2 || got[0].Jars != 2 || got[1].Jars != 1 || got[1].Lot != "L1" || got[1].Pos.Line != 6 {
		t.Errorf("%+v %v", got, found)
	}
	for text, line := range map[string]int{"[[gift]]\nto = \"Ann\"\njars = 0\n": 3, "[[gift]]\nfor = \"Ann\"\n": 2, "x = \n": 1} {
		if _, found := ReadList("friends.toml", []byte(text)); len(found) == 0 || !found.HasErrors() || found[0].Pos.Line != line {
			t.Errorf("%q: %+v", text, found)
		}
	}
	if _, found := ReadList("friends.TOML", nil); !found.HasErrors() {
		t.Error("an empty list")
	}
}

func FuzzReadList(f *testing.F) {
	f.Add([]byte("to,jars\nAnn,2\n"))
	f.Add([]byte("\"to\n;\xc3\",\n\"\""))
	f.Fuzz(func(t *testing.T, data []byte) {
		list, found := ReadList("f.csv", data)
		for _, e := range list {
			if e.Jars < 1 || e.Pos.Line < 2 {
				t.Errorf("%+v", e)
			}
		}
		if len(list) == 0 && len(found) == 0 && len(data) == 0 {
			t.Error("silence about an empty list")
		}
	})
}
