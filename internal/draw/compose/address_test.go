package compose

import (
	"strings"
	"testing"
)

// A house number stays with its street, and a postal code with its town or
// state (common practice, no source). "~" stands for the space that does not
// break.
func TestNumbersOfAnAddressStayWithTheirWord(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"7 Brook Road, Fernham, WA 98000, No. HK-11", "7~Brook Road, Fernham,~WA~98000, No.~HK-11"},
		{"Gartenweg 12, 10999 Hainstadt", "Gartenweg~12, 10999~Hainstadt"},
		{"3 rue du Puits, 69000 Vallon-sur-Ance", "3~rue du Puits, 69000 Vallon-sur-Ance"}, // too long to be one word
		{"Orchard House, Nether Welling, GL7 9ZZ", "Orchard House, Nether Welling,~GL7~9ZZ"},
		{"Hill Farm, Long Compton Marsh, OR 97000", "Hill Farm, Long Compton Marsh, OR~97000"}, // the town is long
		{"Made by Ada", "Made by Ada"},
		{"", ""},
	} {
		if got := strings.ReplaceAll(bindNumbers(c.in), "\u00a0", "~"); got != c.want {
			t.Errorf("%q: %q, want %q", c.in, got, c.want)
		}
	}
}
