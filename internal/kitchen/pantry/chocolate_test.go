package pantry

import "testing"

// 21 CFR 101.4(a)(1), the common or usual name: chocolate that names no sort is
// not called dark.
func TestChocolateKeepsItsName(t *testing.T) {
	for _, words := range []string{"chocolate", "dark chocolate", "bittersweet chocolate", "milk chocolate", "white chocolate"} {
		if row, ok := Default().Ingredient(words); !ok || row.Name != words {
			t.Errorf("%q is listed as %q", words, row.Name)
		}
	}
}
