package notes

// The words beside a food: its brackets, its choices, how it was cut.
var (
	brackets   = lazily(`\([^()]*\)`)
	stalksOf   = lazily(`(?i)^(?:(?:red|pink|young|fresh|trimmed|rote[rn]?|junge[rn]?|belles?|grosses?) )?(?:stalks?|sticks?|ribs?|stems?|stangen?|tiges?|branches) (?:of|de|d') ?(rhu?barbe?|rhabarber|celery|céleri|[^ ]+sellerie|stangensellerie)\b`)
	trailing   = lazily(`(?i)[ ,;-]*\b(?:if desired|if (?:you )?(?:like|wish)|optional|to taste|divided|as needed|if necessary|if needed|approximately|about|or to taste|facultatif|nach belieben|wer mag)\b\.?[ ]*$`)
	optional   = lazily(`(?i)\b(?:if desired|if (?:you )?(?:like|wish)|optional|facultatif|nach belieben|wer mag)\b`)
	sentence   = lazily(`(?i)\b(?:is|are|was|were|until|then|stir|stirring|boil|bring|cook|simmer|remove|pour|let|stand|mix|combine|measure|place|heat|fill|wash|should|will|it|we|they|i)\b`)
	frenchOf   = lazily(`(?i)^[\d/., ]+ ?[\p{L}. ]{0,20}?(?:de |d'|à soupe|à café)`)
	noName     = lazily(`(?i)^(?:on|at|for|to|after|until|till|by|from|with|without|per) `)
	upTo       = lazily(`(?i)\((?:or|to|up to) (` + num + `)( ?[\p{L}. ]+)?[,)]`)
	cutForm    = lazily(` -+ |; |, | - `)
	afterIng   = lazily(`(?i) (cut (?:from|off) .*|(?:mixed|blended|dissolved|slaked|stirred|angerührt|délayée?s?) (?:to|with|in|into|mit|dans) .*|(?:for|für|pour) (?:about |ca\.? |etwa |env\.? |environ )?\d.*|(?:at (?:the )?(?:very )?(?:end|start|beginning)|later|am Ende|à la fin)$|(?:after|when|once|before) [\p{L}]+(?:ing|ed)\b.*|en pleine maturité|bien mûr\p{L}*|à maturité|nach möglichkeit .*|je nach .*|in (?:half|halves|two|quarters|thirds)|from (?:the|my|our|\p{L}+'s) .*|(?:ohne|sans|without) .*|for (?:the|dissolving|cooking) .*|(?:less|minus|w/o) (?:the )?(?:stones?|pits?|stalks?|stems?|cores?|peel|skins?)\b.*|to (?:boil|cook|dissolve|dilute|mix|soak|start|begin|finish|thin|make|loosen|deglaze|poach|steep)\b.*|(?:tied|wrapped|put)(?: up)? in .*|(?:du|de (?:mon|notre|votre)) jardin|aus (?:dem|(?:dem )?eigenem|unserem) Garten|(?:cut )?in(?:to)? .*(?:pieces|slices|chunks|cubes|strips|wedges|rounds|halves|quarters|eighths|lengths|sticks|matchsticks|dice|bits|shreds|segments|rings)|(?:with |the )*(?:stems?|stalks?|skins?|seeds?|stones?|pits?|cores?|ends?|peel|pith|hulls?|tops?|leaves|membranes?)(?:,? (?:and|&) [\p{L}]+)? (?:removed|discarded|trimmed(?: off)?|cut off|taken (?:off|out)|on|off|out|intact|left on|attached|reserved).*|(?:[\p{L}]+é?e?s? )?(?:et )?(?:coup\p{L}+ )?en (?:tronçons|morceaux|dés|cubes|lamelles|rondelles|quartiers|tranches)\b.*|in (?:\p{L}+ )?(?:Stücken?|Würfeln?|Scheiben|Streifen|Spalten)\b.*)$`)
	orList     = lazily(`(?i),.* (?:or|oder|ou) `)
	orFood     = lazily(`(?i)^\((?:or|oder|ou|bzw\.|and/or) ([\p{L}][\p{L}, -]+)\)$`)
	prepared   = lazily(`(?i)\((` + num + `)( ?(?:kg|g|lbs?|oz|pounds?|ounces?)\.?)? (?:after|when|once|net|netto|prepared|prepped|prep|cleaned|hulled|pitted|peeled|nach|geputzt|entsteint|geschält|vorbereitet|parés?|nettoyée?s?|dénoyautée?s?)\b`)
	orEnd      = lazily(`(?i),? (?:or|oder|ou)$`)
	cutSize    = lazily(`(?i)` + num + `(?:[- ]?(?:inch(?:es)?|in|"|cm|mm)\b| ?%| ?percent| ?prozent)`)
	sugarRatio = lazily(`(?i)\b(gelierzucker|sucre gélifiant|gelling sugar|jam sugar) \(?(\d) ?(?:plus|zu|auf|\+|/|:) ?(\d)\b\)?`)
	plusRatio  = lazily(`(?i)^(\d) ?(?:plus|zu|auf|\+) ?(\d)$`)
	ratioSay   = lazily(`(?i)^(?:(?:im )?verhältnis|ratio|proportions?) `)
)
