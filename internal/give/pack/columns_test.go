package pack

import (
	"testing"

	"jarmark/internal/kit/csvfile"
)

// A gift list headed in other words, as its writer keeps it: an allergy under
// any of them is read, and never passed over.
func TestHeadingsInOtherWords(t *testing.T) {
	for _, head := range []string{"to,jam,jars,allergy", "Person,Which jam?,How many,Allergic to", "Name;Marmelade;Gläser;Allergie", "nom\tconfiture\tpots\tallergie",
		"Recipient,Product,Qty,Must not eat", "for_whom,wish,quantity,Allergies:"} {
		sep := string(csvfile.Separator([]byte(head)))
		list, found := ReadList("friends.csv", []byte(head+"\r\nIda"+sep+"plum"+sep+"2"+sep+"nuts\r\n"))
		if len(found) > 0 || len(list) != 1 || list[0].To != "Ida" || list[0].Jam != "plum" || list[0].Jars != 2 || list[0].Allergy != "nuts" {
			t.Errorf("%s: %+v %v", head, list, found)
		}
	}
}
