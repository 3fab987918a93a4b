package notes

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// What the verb beside a time does, in every form a cook writes it in; our own
// sentences. Behind => the minutes of the boil, "bath" and those of the jars, or "-"
// where nothing is boiled.
const byVerb = `die Marmelade 8 Minuten kochen => 8
die Marmelade 8 Minuten lang kochen lassen => 8
koche die Marmelade 8 Minuten => 8
kochen Sie die Marmelade 8 Minuten => 8
lass die Marmelade 8 Minuten köcheln => 8
lassen Sie das Gelee 8 Minuten sprudelnd kochen => 8
ich koche die Masse 8 Minuten => 8
die Masse kocht 8 Minuten => 8
die Masse kochte 8 Minuten => 8
die Masse 8 Minuten weiterköcheln => 8
die Masse wird 8 Minuten gekocht => 8
die Masse 8 Minuten eingekocht => 8
die Masse ist 8 Minuten zu kochen => 8
die Marmelade 8 Minuten wallen lassen => 8
die Marmelade 8 Minuten brodeln lassen => 8
die Marmelade 8 Minuten ziehen lassen => -
die Marmelade aufkochen und 8 Minuten ziehen lassen => -
die Marmelade aufkochen, 8 Minuten ruhen lassen => -
die Marmelade zieht 8 Minuten => -
die heißen Gläser 8 Minuten auf den Kopf stellen => -
die Gläser kopfüber 8 Minuten stehen lassen => -
stell die Gläser 8 Minuten auf den Deckel => -
die Marmelade kochen, die Gläser 8 Minuten auskochen => -
die Marmelade aufkochen und 8 Minuten abkühlen lassen => -
aufkochen, Vanille 8 Minuten mitziehen => -
8 Minuten pürieren, dann die Marmelade 5 Minuten kochen => 5
die Marmelade 5 Minuten kochen, dann 8 Minuten abtropfen => 5
die vollen Gläser 30 Minuten einkochen => bath 30
die Gläser 30 Minuten im Wasserbad einwecken => bath 30
die Masse 30 Minuten bei kleiner Hitze einkochen => 30
cuire la confiture 8 minutes => 8
cuisez la confiture 8 minutes => 8
faire bouillir le sirop de sucre 8 minutes => 8
laissez mijoter la confiture 8 minutes => 8
la confiture bout, laisser frémir 8 minutes => 8
8 minutes de cuisson à feu vif => 8
mélanger, 8 minutes à gros bouillons => 8
porter la confiture à ébullition, laisser reposer 8 minutes => -
cuire la confiture puis laisser refroidir 8 minutes => -
retourner les pots de confiture 8 minutes => -
laisser macérer 12 h puis cuire la confiture 8 minutes => 8
cuire la confiture 8 minutes puis la laisser reposer 20 minutes => 8
faire infuser 8 minutes dans l'eau bouillante => -`

func TestVerbsBesideTimes(t *testing.T) {
	p := pantry.Default()
	for _, s := range strings.Split(byVerb, "\n") {
		line, want, _ := strings.Cut(s, " => ")
		l := Read(line, p).Lines[0]
		got := "-"
		if k := l.find("cook.minutes"); k != nil {
			got = k.Value + map[bool]string{true: "?"}[k.Asked]
		} else if k := l.find("process.minutes"); k != nil {
			got = "bath " + k.Value
		}
		if got != want {
			t.Errorf("%q: %s, want %s\n%s", line, got, want, summary(l))
		}
	}
}
