package notes

// The words of steps: how long, in what, of what.
var (
	duration   = pattern(`(?i)(` + num + `)(?: ?(?:-|to|or|bis|à|oder|ou) ?(` + num + `))?[- ]?(?:full |whole |more |weitere )?(minutes?|mins?|minuten|mn|hours?|hrs?|h|stunden?|std|heures?)\b\.?`)
	bathTail   = pattern(`(?i)\b(?:bwb|wb|wbc|water ?bath(?:ed)?|bath|steam(?:ed)?(?: canner)?|wasserbad|bain-marie)\b[ :,]*(?:for )?(\d{1,3})$`)
	process    = pattern(`(?i)\b(?:proc(?:ess(?:ed|ing(?: time)?)?|d)?|pasteuri[sz]\w*|canner|bath|waterbath(?:ed)?|bwb|wbc|wb|canned (?:for )?\d+|einkochen|einzukochen|eingekocht|atmospheric steam|wecken|geweckt|einweck(?:en|t)|eingeweckt|einzuwecken|pasteurisier\w*|einkoch(?:topf|er|automat\w*)|weck(?:topf|automat)|wasserbad|stérilis(?:er?|ez|ons|é|ation|ateur|ant)|bain-marie)\b`)
	bath       = pattern(`(?i)\b(?:wb|boiling[- ]water|water[- ]?bath(?:ed)?|hot water bath|bath|bwb|wasserbad|bain-marie)\b`)
	shortened  = pattern(`(?i)\b(ca|approx|env|inkl|zzgl)\. `) // a full stop that ends nothing
	shortMin   = pattern(`\b([Mm]ins?|[Ss]td|hrs?)\. (\p{Ll})`)
	unstirred  = pattern(`(?i)(?:,? (?:without|ohne(?: zu)?|sans)) (?:stirring|rühren|umzurühren|remuer)`)
	lidOn      = pattern(`(?i)\bcover(?:ed)?,? and (?:simmer|cook)|\bsimmer,? covered`) // and no word of what is softened
	slashTime  = pattern(`(?i)\b([1-9]\d)/([1-9]\d) ?(minutes?|mins?|minuten|mn)\b`)    // 30/45 minutes
	orSoMany   = pattern(`(?i)\b(\d{1,3})(?: or so|[- ]odd) (minutes?|mins?|hours?)\b`)
	asBefore   = pattern(`(?i)\b(?:(?:repeat|continue|start|finish|complete|through|during|of|in) (?:the|this|that) (?:whole |entire |same |cooking |testing )?|(?:whole|entire|same|this|cooking|canning|testing) )process\b`)
	notBoiled  = pattern(`(?i)\bsans (?:la |le |les |l')?(?:faire |laisser |porter à )*(?:bouillir|ébullition|l'ébullition)\b|\bne (?:doit |doivent |faut )?(?:pas|jamais) [^.;,]{0,20}bouillir\b|\bohne (?:zu |dass (?:es|sie) )?(?:auf)?(?:koch|sied)\w*|\bnicht (?:mehr )?(?:auf)?(?:koch|sied)\w*|,? ?\b(?:but )?(?:(?:without|not|never|before) (?:letting it |allowing it to )?(?:to )?(?:boil(?:ing)?|simmer(?:ing)?)|(?:do not|don'?t|must not) (?:let it |allow (?:it )?to )?(?:boil|simmer))\b`)
	heatDown   = pattern(`(?i)\b(?:reduc(?:e|ing) (?:the |to (?:a )?)?|(?:réduis\p{L}*|rédui(?:re|t)) le )((?:low |medium |gentle )?(?:heat|flame|temperature|simmer(?:ing)?|feu)\b)`) // and nothing boils away
	stirFor    = pattern(`(?i)\b((?:boil|cook|simmer|bubbl)\p{L}*(?: \p{L}+){0,4}?),?(?: and| while| whilst)? (?:constantly |continuously |frequently |still |often )*stirring(?: constantly| continuously| frequently| often| all the time| occasionally)?,? (for (?:about |a further |another )?\d)`)
	andStir    = pattern(`(?i)\b((?:boil|cook|simmer|bubbl)\p{L}*(?: (?:\p{L}+ly|hard|fast))?)(?:,? (?:and|&|while|whilst)|,) (?:(?:constantly|continuously|still|then) )?stir(?:ring)?\b`)
	labelParts = pattern(` - (\p{Lu}\p{L}+ ?:)`)             // Repos : 24 h - Cuisson : 35 min
	primeMin   = pattern(`(\d)' ?( |$)`)                     // 10' in the canner
	boilDown   = pattern(`(?i)\beinkochen (?:lassen|bis)\b`) // and no canning
	canner     = pattern(`(?i)\b(?:boiling[- ]water (?:bath|canner)|water[- ]?bath|wasserbad|bain-marie)`)
	steam      = pattern(`(?i)\bsteam(?:ed|er)?\b`)
	cooking    = pattern(`(?i)\b(?:boil(?:ed|ing|s)?|[hf]?rb|fb|bld|cook(?:ed|ing|s)?|simmer(?:ed|ing|s)?|stew(?:ed|ing)?|rolling|bubbl(?:e|es|ed|ing)|(?:auf|ein|weiter|mit|durch|ver)?(?:ge)?koch(?:en|t|te|st|zeit)|kochenlassen|(?:ein|weiter)?(?:ge)?köchel\w*|sprudel\w*|wallend|blubber\w*|sieden|cui(?:re|t|te|s|sez|sons|sent|sson)|bouill\w*|ébullition|frémi\w*|mijot\w*)\b`)
	notThis    = pattern(`(?i)\b(?:if not|if it(?: is|'s)?(?: not| still| too|n't)|if it (?:isn't|doesn't|does not|hasn't|has not|won't|seems)|if (?:still|too|needed|necessary)|otherwise|falls nicht|wenn nicht|ansonsten|sinon|last|final|letzten|dernières|stand|soak|leave|left|wait|rest|cool(?:ed)?|chill|steep|sterili[sz]\w*|presterili[sz]\w*|lids?|preheat|drain|stir(?:ring)? (?:for|\d)|every|the whole (?:thing|process|lot|job)|altogether|all told|from start to finish|macération|total|ready|infuse|macerat\w*|blanch\w*|refrigerate|freeze\w*|soften|deckel|couvercles?|bagues|caoutchoucs|gummiringe?|ziehen|ruhen|ruhezeit|stehen|abkühlen|macérer|reposer|repos|refroidir|tremper|trempage|four|backofen|ofen|oven|microwave)\b`)
	prepHead   = pattern(`(?i)\b(?:prep|préparation|vorbereitung\p{L}*|zubereitung\p{L}*)(?: time)? ?[:=-]? ?(?:(?:about|environ|ca\.?|approx\.?) )?$`) // Préparation : 20 min
	leftTo     = pattern(`(?i)\bleav(?:e|ing) (?:it |them |this |the jam )?(?:(?:on|over|in) the (?:heat|stove|hob|pan|pot) )?(?:to|on|at) (?:a )?(?:[\p{L}]+ )?(?:boil|simmer|cook|bubble)\b`)
	softened   = pattern(`(?i)^(?:the )?(?:peel|rind|zest|skins?|fruit|shreds?)\b.*\b(?:soft|tender)\b|^this (?:may|will|can|should) take\b`)
	aside      = pattern(`(?i)^(?:the )?(?:peels?|rinds?|skins?|shreds|zest) \d|\b(?:(?:simmer|boil|cook|stew)(?:ed|ing)? (?:the |with )?(?:peels?|rinds?|skins?|shreds|zest)|pectin (?:in|and|with) (?:the )?water|pépins|with (?:the |their )?(?:pips|cores|skins and cores)|cover(?:ed)?,? and (?:simmer|cook)|simmer,? covered|water and pectin|juice from|extract juice|(?:until|till|or until) (?:[\p{L}]+ ){0,6}?(?:softe?n?e?d?|tender|pulpy|mushy|broken down|burst|pop|split|cooked through)\b|(?:without|before adding|except|all but|omitting|leaving out|but not) (?:for )?(?:the |any )?sugar|(?:außer|sauf|excepté) (?:den |dem |le )?(?:\p{L}*zucker|sucre)|ohne (?:den )?Zucker|sans (?:le )?sucre|until (?:the )?(?:peel|rind|skins?|liquid|fruit|peaches|apples|pears|plums|berries|cranberries)|bis (?:[\p{L}]+,? ){0,8}?(?:\p{L}*weich|zerfall\w*|gar|platz\w*|aufplatz\w*|geplatzt|aufgeplatzt|aufgesprungen|aufspring\w*|zerkoch\w*|verkoch\w*|musig|breiig|zart|glasig|saft (?:zieh\w*|lass\w*|läuft|austritt|gezogen))|\p{L}*weich ?(?:zu)?(?:kochen|gekocht|dünsten|gedünstet|köcheln|garen|gegart)|zu (?:einem )?(?:brei|mus|kompott) (?:ver|zer|ein)?kochen|glasig|jusqu'à (?:ce qu\p{L}* )?(?:[\p{L}']+ ){0,9}?(?:mou\b|mous\b|tendre\w*|molle?s?|ramollis?\w*|éclat\w*|fond(?:us?|ues?|ent)\b|compot\w*|écras\w*|défont|défass\w*|attendri\w*|cuits?\b|cuites?\b)|(?:à|en) (?:l'état de )?compote)\b`)
	jarsFor    = pattern(`(?i)\bjars? for\b`)
	jarSizes   = pattern(`(?i)\b(?:half[- ]pints?|pints?|quarts?)\b`)
	finished   = pattern(`(?i)\b(?:translucides?|transparente?s?|andick\w*|eindick\w*|clear|translucent|transparent|thick(?:ens|ened)?|set|sets|gels?|jells?|syrupy|geliert\w*|gelieren|fest|dick\w*|dickflüssig|épais\w*|prend|prise|nappe\w*|sirupeu\w*)\b`)
	jarTalk    = pattern(`(?i)(?:\b(?:jars?|hps?|half-pints?|pints?|quarts?|glas|bocaux|pots)|gläser[n]?|gläschen|\p{L}glas)(?:\W|$)`)
	height     = pattern(`(?i)\b(?:altitudes?|above|elevations?|1,?00[01]|6,?00[01]) ?(?:of|ft|feet|-)`)
	feet       = pattern(`(?i)\d ?(?:ft|feet|m above|meters above|metres above)\b`)
	clause     = pattern(`[.;!] |[.;!]$`)
)

// slashMinutes are minutes from and to: 7/10 minutes. Half a minute is no range.
var slashMinutes = pattern(`(?i)\b([2-9]|[1-9]\d)/(\d{1,2}) ?(min(?:ute[ns]?|s)?|mn)\b`)

var hoursAnd = pattern(`(?i)\b(\d{1,2}) ?(?:hours?|hrs?|h|stunden?|std|heures?)\.?(?: and| und| et|,)? (\d{1,2}) ?(?:minutes?|mins?|minuten|mn)\b(?:\.(?: |$))?|\b([1-9]|1\d) ?(?:h|hrs?|hours?|stunden?|std|heures?)\.? ?([0-5]\d)(?:$|[^\d\p{L}.,/:°])`)
