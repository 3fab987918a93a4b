package job_test

import "fmt"

// The kitchen sink: one batch with everything that makes a label hard. Names
// are long, two ingredients are compounds, nine allergens occur (the major
// allergens of 21 U.S.C. 321(qq)), one of them is honey's caution, and there
// are gifts, a market and two jar sizes. Everything in it is invented.
const sinkBatch = `name = "Roasted apricot, honey & five-nut conserve with toasted sesame"
kind = "conserve"
made = 2026-09-12
serve = "With a firm cheese."

[[ingredient]]
name = "apricots"
amount = "2 kg"
form = "halved"

[[ingredient]]
name = "sugar"
amount = "1.6 kg"

[[ingredient]]
name = "honey"
amount = "300 g"

[[ingredient]]
name = "walnuts"
amount = "120 g"

[[ingredient]]
name = "almond and praline paste"
amount = "80 g"
contains = ["almonds", "hazelnuts", "sugar", { name = "soy lecithin", allergen = "soy" }, { name = "milk powder", allergen = "milk" }]
allergens = ["almonds", "hazelnuts"]

[[ingredient]]
name = "fifteen-spice seasoning"
amount = "40 g"
contains = [
  "mustard seed",
  { name = "wheat flour", allergen = "wheat" },
  { name = "sesame seed", allergen = "sesame" },
  { name = "dried shrimp", allergen = "crustacean shellfish (shrimp)" },
  { name = "anchovy powder", allergen = "fish (anchovy)" },
  { name = "egg white powder", allergen = "egg" },
  { name = "peanut flour", allergen = "peanut" },
]

[[ingredient]]
name = "bottled lemon juice"
amount = "1/4 cup"
contains = ["water", "lemon juice concentrate", { name = "sulfur dioxide", percent = 0.02 }]

[cook]
method = "long boil"
minutes = 35
set_test = "cold plate"
brix = 66

[process]
method = "boiling water"
minutes = 15
headspace = "1/4 in"

[[fill]]
jar = "8 fl oz"
count = 9
sealed = 8
net = ["10.3 oz", "10.4 oz", "10.3 oz"]
declared = "10 oz"
price = "12.50"

[[fill]]
jar = "16 fl oz"
count = 3
sealed = 3
net = ["20.8 oz", "20.9 oz", "20.7 oz"]
declared = "20 oz"
price = "22.00"

[[gift]]
to = "Philippa Featherstonehaugh-Warrender & all the family"
from = "Bartholomew and Wilhelmina"
message = "With our warmest thanks for the ladder, the pears, the loan of the copper pan and the company."
jars = 2
occasion = "winter"

[[market]]
event = "Millbrook Winter Fair"
date = 2026-12-05
jars = 4
price = "12.50"

[label]
season = "autumn 2026"
`

// sinkKitchen is a maker with a long name and address, in any place.
func sinkKitchen(place string) string {
	return fmt.Sprintf(`name = "The Thornfield Lane Preserving Company of Upper Millbrook"
address = ["Unit 14b, The Old Brewhouse, Thornfield Lane", "Millbrook, OR 97000"]
phone = "+1 555 0114"
email = "jam@thornfield.example"
permit = "HK-2026-004711"
county = "Benton County"
place = %q
record_url = "https://thornfield.example/jam"
also_handles = ["pecans", "milk", "wheat", "sesame"]
altitude = "260 ft"
pets = "dog"
`, place)
}
