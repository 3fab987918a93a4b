package press

import (
	"encoding/binary"
	"strings"
	"testing"
)

// madeProfile is an ICC profile of tags alone (ICC.1:2010, 7.2 and 7.3: the size at byte
// 0, the version at 8, the class at 12, the space at 16, "acsp" at 36, the tags at 128).
func madeProfile(class, space string, version byte, tags map[string]string) []byte {
	b := make([]byte, 132+12*len(tags))
	b[8] = version
	copy(b[12:], class+space+"Lab ")
	copy(b[36:], "acsp")
	binary.BigEndian.PutUint32(b[128:], uint32(len(tags)))
	i := 0
	for name, data := range tags {
		e := b[132+12*i:]
		copy(e, name)
		binary.BigEndian.PutUint32(e[4:], uint32(len(b)))
		binary.BigEndian.PutUint32(e[8:], uint32(len(data)))
		b = append(b, data...)
		i++
	}
	binary.BigEndian.PutUint32(b, uint32(len(b)))
	return b
}

func tags() map[string]string {
	return map[string]string{"A2B0": "mft1\x00\x00\x00\x00....", "B2A0": "mft1\x00\x00\x00\x00....",
		"desc": "desc\x00\x00\x00\x00\x00\x00\x00\x10Coated, a trial\x00"}
}

func TestProfileOfAShop(t *testing.T) {
	p, found := Profile("shop.icc", madeProfile("prtr", "CMYK", 2, tags()))
	if len(found) > 0 || p.Name != "Coated, a trial" || p.Inks != 4 {
		t.Errorf("%+v %v", p, found)
	}
	new4 := tags()
	new4["desc"] = "mluc\x00\x00\x00\x00\x00\x00\x00\x01\x00\x00\x00\x0cenUS\x00\x00\x00\x06\x00\x00\x00\x1c\x00F\x00\xe9\x00X"
	if p, found := Profile("shop.icc", madeProfile("prtr", "CMYK", 4, new4)); len(found) > 0 || p.Name != "FX" { // a name of ASCII
		t.Errorf("%+v %v", p, found)
	}
	delete(new4, "desc")
	if p, _ := Profile("shop.icc", madeProfile("prtr", "CMYK", 4, new4)); p == nil || p.Name != "Custom" {
		t.Errorf("%+v", p)
	}
}

// TestProfilesThatAreNone: each is refused with its reason, whole or cut anywhere.
func TestProfilesThatAreNone(t *testing.T) {
	without := func(name string) map[string]string {
		m := tags()
		delete(m, name)
		return m
	}
	good := madeProfile("prtr", "CMYK", 2, tags())
	for want, data := range map[string][]byte{
		"screen":           madeProfile("mntr", "RGB ", 4, tags()),
		"camera":           madeProfile("scnr", "CMYK", 2, tags()),
		"printing press":   madeProfile("abst", "CMYK", 2, tags()),
		"four inks":        madeProfile("prtr", "RGB ", 2, tags()),
		"version":          madeProfile("prtr", "CMYK", 5, tags()),
		"back":             madeProfile("prtr", "CMYK", 2, without("B2A0")),
		"colour and back":  madeProfile("prtr", "CMYK", 2, without("A2B0")),
		"damaged one":      good[:len(good)-1],
		"no ICC profile":   []byte("a letter"),
		"no ICC profile, ": nil,
	} {
		p, found := Profile("shop.icc", data)
		if p != nil || len(found) != 1 || !strings.Contains(found[0].Message, want) || found[0].Hint == "" || found[0].File != "shop.icc" {
			t.Errorf("%s: %v %v", want, p, found)
		}
	}
	for n := range good { // whatever is damaged, nothing breaks
		bad := append([]byte(nil), good...)
		bad[n] ^= 0xFF
		Profile("shop.icc", bad)
		binary.BigEndian.PutUint32(bad, uint32(n))
		Profile("shop.icc", bad[:n])
	}
}
