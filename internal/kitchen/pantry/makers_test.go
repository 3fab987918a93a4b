package pantry

import (
	"strings"
	"testing"
)

// What makers write of what they bought, by row: names and varieties of the
// trade (common practice, no source).
const makersWrite = `
muscadine: muscadines, muscadine grapes, scuppernongs
mayhaw: mayhaws
calamansi: calamansi, calamondins
loquat: loquats
saskatoon: saskatoons, serviceberries, juneberries
aronia: aronia, chokeberries, Aronia berries
chokecherry: chokecherries
pawpaw: pawpaws
jostaberry: jostaberries
cloudberry: cloudberries, bakeapples
haskap: haskaps, honeyberries
lychee: lychees, litchi
jackfruit: jackfruit
tamarind: tamarind, tamarind paste
feijoa: feijoas
dragon_fruit: dragon fruit, pitaya
pluot: pluots
beach_plum: beach plums
pomelo: pomelo, pummelo
bergamot: bergamots
lime_key: key limes
watermelon: watermelon
watermelon_rind: watermelon rind
pear_asian: Asian pears, nashi
nectarine_white: white nectarines
habanero: habanero, habaneros, habanero peppers
serrano: serrano, serrano peppers
poblano: poblano peppers, poblanos
bell_pepper_yellow: yellow bell, yellow bell peppers, orange peppers
ghost_pepper: ghost pepper, ghost peppers
agar: agar, agar-agar, agar powder
gelatin: gelatin, powdered gelatin, leaf gelatine
sugar_gelling_2: gelling sugar 2:1, Gelierzucker 2:1, 2:1 gelling sugar
sugar_gelling_3: gelling sugar 3:1, Gelierzucker 3:1
sugar_gelling: jam sugar, gelling sugar
stevia: stevia
monk_fruit: monk fruit, monk fruit sweetener
sucralose: sucralose
xylitol: xylitol
allulose: allulose
erythritol: erythritol
applesauce: applesauce, unsweetened applesauce, apple sauce
cherry_maraschino: maraschino cherries
ginger_candied: crystallised ginger, crystallized ginger, candied ginger, stem ginger
white_grape_juice_conc: white grape juice concentrate
apple_juice_conc: frozen apple juice concentrate
tea_black: tea, black tea, Earl Grey tea, strong tea
coffee: coffee, strong coffee, brewed coffee
beer: beer, stout
amaretto: amaretto
limoncello: limoncello
coconut_milk: coconut milk, canned coconut milk
olive_oil: olive oil, extra virgin olive oil
fish_sauce: fish sauce
worcestershire: Worcestershire sauce
plum: Santa Rosa plums, Italian prune plums, Victoria plums, fresh ripe plums
apple: Bramley apples, Granny Smith apples, tart apples, windfall apples
lemon_meyer: Meyer lemons, Meyer lemon
cherry_sour: Montmorency cherries, pitted sour cherries, morellos, Schattenmorellen
cherry_sweet: organic Rainier cherries
strawberry: frozen strawberries, fresh ripe strawberries, Gariguette strawberries, hulled and crushed strawberries
fig_fresh: black mission figs, chopped fresh figs
tomato: Roma tomatoes
pear: Bartlett pears, firm Conference pears
milk_powder: powdered milk, dry milk, milk powder
cherry_dried: dry cherries, chopped dry cherries
apricot_dried: dry apricots, dried apricots, chopped dried apricots
ginger_ground: powdered ginger, ground ginger
mustard_seed: dry mustard, mustard powder
wine_white: dry white wine
candied_fruit: mixed peel, candied orange peel
chilli_green: green chillies, green chiles
onion_spring: scallions, green onions
eggplant: aubergines, eggplant
corn_cob: corn cobs, red corn cobs
rutabaga: swede
tomatillo: tomatillos
tomato_dried: sun-dried tomatoes
celery: celery stalks
horseradish: prepared horseradish
dandelion: dandelion petals, dandelion flowers
lilac: lilac flowers
violet: violet petals
hibiscus: dried hibiscus
lemon_verbena: lemon verbena
chestnut: chestnuts
coconut_dried: desiccated coconut, shredded coconut
almond_paste: marzipan
chocolate_white: white chocolate
vanilla_paste: vanilla bean paste
juniper: juniper berries
pink_pepper: pink peppercorns
curry_powder: curry powder
elderflower_cordial: elderflower cordial
creme_cassis: crème de cassis
calvados: calvados
sherry_vinegar: sherry vinegar
rice_vinegar: rice vinegar
lime_peel: lime zest
grape_juice: Concord grape juice
cranberry_juice: cranberry juice
pineapple_canned: canned pineapple, tinned pineapple
cherry_sour_canned: canned tart cherries
tomato_canned: tinned tomatoes
buttermilk: buttermilk
half_and_half: half and half
bacon: smoked bacon
cream_of_tartar: cream of tartar
pectin_powder: classic pectin, low-sugar pectin
`

func TestWhatMakersWrite(t *testing.T) {
	for _, line := range strings.Split(strings.TrimSpace(makersWrite), "\n") {
		key, words, _ := strings.Cut(line, ": ")
		for _, w := range strings.Split(words, ", ") {
			if g, _ := Default().Ingredient(w); g.Key != key {
				t.Errorf("%q finds %q, want %q", w, g.Key, key)
			}
		}
	}
}

// A word that makes another food of it is never dropped.
func TestAnotherFood(t *testing.T) {
	for _, w := range []string{"powdered strawberries", "dried strawberries", "candied strawberries", "smoked sugar"} {
		if g, ok := Default().Ingredient(w); ok {
			t.Errorf("%q is taken for %q", w, g.Key)
		}
	}
}

// Every ordinary jam fruit has a pH range with its source, not from memory
// alone: what is not on file counts as low in acid.
func TestJamFruitHasPH(t *testing.T) {
	for _, key := range strings.Fields(`strawberry raspberry_red blackberry blueberry boysenberry loganberry gooseberry cranberry blackcurrant
		redcurrant whitecurrant elderberry grape grape_slipskin cherry_sour cherry_sweet apricot peach nectarine plum damson apple quince pear
		rhubarb fig_fresh orange lemon lime grapefruit tangerine kumquat pineapple mango passion_fruit kiwi pomegranate banana tomato feijoa
		raisin cranberry_dried apricot_dried prune fig_dried date ginger_fresh coconut_fresh watermelon pear_asian eggplant corn_cob horseradish`) {
		g, _ := Default().Ingredient(key)
		if g.Key != key || g.PHLow <= 0 || g.PHHigh < g.PHLow || g.PHSource == "M" {
			t.Errorf("%s: pH %g-%g from %q", key, g.PHLow, g.PHHigh, g.PHSource)
		}
	}
	for _, c := range []struct {
		key       string
		low, high float64
	}{{"blackcurrant", 2.6, 3.3}, {"guava", 3.4, 5.2}, {"tomato", 4, 4.9}, {"banana", 4.2, 5.2}, {"elderberry", 3.6, 5.19}, {"date", 4.14, 6.3}} {
		if g, _ := Default().Ingredient(c.key); g.PHLow != c.low || g.PHHigh != c.high {
			t.Errorf("%s: pH %g-%g, want %g-%g", c.key, g.PHLow, g.PHHigh, c.low, c.high)
		}
	}
}
